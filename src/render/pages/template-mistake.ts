// What is wrong with a template before it is ever filled: signs that don't fit together, a partial or
// helper that isn't there, unescaped output. Filling it with a view is the template's own file.
import Handlebars from 'handlebars';

/** Line and column count from 1; the message is one sentence. */
export interface TemplateMistake {
  readonly line: number;
  readonly column: number;
  readonly message: string;
}

/** What a template can do beside printing; each takes one name. */
export const BLOCKS = ['if', 'unless', 'each', 'with'] as const;
const HELPERS: ReadonlySet<string> = new Set([...BLOCKS, 'counted']);

/** The first mistake of a template; undefined where there is none. */
export function templateMistake(
  text: string,
  partials: ReadonlySet<string>,
): TemplateMistake | undefined {
  let program: hbs.AST.Program;
  try {
    program = Handlebars.parse(text);
  } catch (error) {
    return misparsed(error as Partial<Handlebars.Exception>, text);
  }
  for (const node of nodesOf(program)) {
    const message = mistakeAt(node, partials);
    if (message) {
      return { line: node.loc.start.line, column: node.loc.start.column + 1, message };
    }
  }
  return undefined;
}

/** Two kinds of complaint: about blocks, with a position of its own, and about signs, with a line. */
function misparsed(error: Partial<Handlebars.Exception>, text: string): TemplateMistake {
  const message = error.message ?? '';
  if (error.lineNumber !== undefined) {
    const mismatch = /^(.*) doesn't match (.*?)(?: - |$)/.exec(message);
    const plain = mismatch
      ? `The block {{#${mismatch[1]}}} is closed by {{/${mismatch[2]}}}.`
      : `The template can't be read: ${message.replace(/ - \d+:\d+$/, '')}.`;
    return { line: error.lineNumber, column: (error.column ?? 0) + 1, message: plain };
  }
  const line = Number(/on line (\d+)/.exec(message)?.[1] ?? 1);
  const shown = (text.split('\n')[line - 1] ?? '').trim().slice(0, 60);
  const plain = /got 'EOF'/.test(message)
    ? 'A block is opened and never closed.'
    : `The braces in or near "${shown}" don't fit together.`;
  return { line, column: 1, message: plain };
}

/** A node and all below it, in the order written. */
function* nodesOf(node: hbs.AST.Node): Generator<hbs.AST.Node> {
  yield node;
  for (const value of Object.values(node)) {
    for (const child of Array.isArray(value) ? value : [value]) {
      if (isNode(child)) yield* nodesOf(child);
    }
  }
}

function isNode(value: unknown): value is hbs.AST.Node {
  return typeof value === 'object' && value !== null && 'type' in value && 'loc' in value;
}

function mistakeAt(node: hbs.AST.Node, partials: ReadonlySet<string>): string | undefined {
  switch (node.type) {
    case 'MustacheStatement':
      return mustacheMistake(node as hbs.AST.MustacheStatement);
    case 'BlockStatement':
      return callMistake(node as hbs.AST.BlockStatement);
    case 'PartialStatement':
      return partialMistake(node as hbs.AST.PartialStatement, partials);
    case 'SubExpression':
    case 'PartialBlockStatement':
    case 'Decorator':
    case 'DecoratorBlock':
      return 'Calls in brackets, blocks of partials and inline partials are not used here.';
    default:
      return undefined;
  }
}

function mustacheMistake(mustache: hbs.AST.MustacheStatement): string | undefined {
  if (!mustache.escaped) return 'Three braces, or &, print text unescaped; use two braces.';
  const isCall = mustache.params.length > 0 || HELPERS.has(nameOf(mustache.path) ?? '');
  return isCall ? callMistake(mustache) : undefined;
}

function callMistake(call: hbs.AST.MustacheStatement | hbs.AST.BlockStatement): string | undefined {
  const name = nameOf(call.path) ?? '';
  const isBlock = call.type === 'BlockStatement';
  if (!HELPERS.has(name) || isBlock === (name === 'counted')) {
    return `There is no {{${isBlock ? '#' : ''}${name} …}}; known are #if, #unless, #each, #with and counted.`;
  }
  return call.params.length === 1
    ? undefined
    : `{{${isBlock ? '#' : ''}${name} …}} takes one name.`;
}

function partialMistake(
  partial: hbs.AST.PartialStatement,
  partials: ReadonlySet<string>,
): string | undefined {
  const name = nameOf(partial.name);
  if (name === undefined) return 'A partial needs its name written out.';
  return partials.has(name) ? undefined : `There is no partial ${name}.`;
}

function nameOf(expression: object): string | undefined {
  return 'original' in expression ? String(expression.original) : undefined;
}
