// What is wrong with a template before it is ever filled: signs that don't fit together, a partial or
// helper that isn't there, unescaped output. Filling it with a view is the template's own file.
import Handlebars from 'handlebars';

/** Line and column count from 1. */
export interface TemplateMistake {
  readonly line: number;
  readonly column: number;
  readonly message: string;
}

const HELPERS: ReadonlySet<string> = new Set(['if', 'unless', 'each', 'with', 'counted']);

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
  const search = new MistakeSearch(partials);
  search.accept(program);
  return search.mistakes[0];
}

/** Two kinds of complaint: about blocks, with a position of its own, and about signs, with a line. */
function misparsed(error: Partial<Handlebars.Exception>, text: string): TemplateMistake {
  const message = error.message ?? '';
  if (error.lineNumber !== undefined) {
    const mismatch = /^(.*) doesn't match (.*?) - /.exec(message);
    return {
      line: error.lineNumber,
      column: (error.column ?? 0) + 1,
      message: mismatch
        ? `The block {{#${mismatch[1]}}} is closed by {{/${mismatch[2]}}}.`
        : `The template can't be read: ${message.replace(/ - \d+:\d+$/, '')}.`,
    };
  }
  const line = Number(/on line (\d+)/.exec(message)?.[1] ?? 1);
  const got = /got '(\w+)'/.exec(message)?.[1];
  return {
    line,
    column: 1,
    message:
      got === 'EOF'
        ? 'A block is opened and never closed.'
        : `The signs in or near ${lineShown(text, line)} don't fit together.`,
  };
}

function lineShown(text: string, line: number): string {
  return `"${(text.split('\n')[line - 1] ?? '').trim().slice(0, 60)}"`;
}

/** Walks through a template; the walker of Handlebars is a class to extend. */
class MistakeSearch extends Handlebars.Visitor {
  readonly mistakes: TemplateMistake[] = [];
  readonly #partials: ReadonlySet<string>;

  constructor(partials: ReadonlySet<string>) {
    super();
    this.#partials = partials;
  }

  override MustacheStatement(mustache: hbs.AST.MustacheStatement): void {
    if (!mustache.escaped) {
      this.#add(mustache, 'Three braces or & would print text unescaped; use two braces.');
    }
    if (mustache.params.length > 0) this.#needHelper(mustache.path, mustache);
    super.MustacheStatement(mustache);
  }

  override BlockStatement(block: hbs.AST.BlockStatement): void {
    this.#needHelper(block.path, block);
    super.BlockStatement(block);
  }

  override PartialStatement(partial: hbs.AST.PartialStatement): void {
    const name = 'original' in partial.name ? String(partial.name.original) : undefined;
    if (name === undefined) this.#add(partial, 'A partial needs its name written out.');
    else if (!this.#partials.has(name)) this.#add(partial, `There is no partial ${name}.`);
    super.PartialStatement(partial);
  }

  override PartialBlockStatement(partial: hbs.AST.PartialBlockStatement): void {
    this.#add(partial, 'A partial with a block of its own is not used here.');
  }

  override Decorator(decorator: hbs.AST.Decorator): void {
    this.#add(decorator, 'Decorators are not used here.');
  }

  override DecoratorBlock(block: hbs.AST.DecoratorBlock): void {
    this.#add(block, 'Inline partials are not used here; make a file of it in partials/.');
  }

  override SubExpression(expression: hbs.AST.SubExpression): void {
    this.#needHelper(expression.path, expression);
    super.SubExpression(expression);
  }

  #needHelper(path: hbs.AST.Expression, at: hbs.AST.Node): void {
    const name = 'original' in path ? String(path.original) : '';
    if (!HELPERS.has(name)) this.#add(at, `There is no helper ${name}.`);
  }

  #add(node: hbs.AST.Node, message: string): void {
    this.mistakes.push({ line: node.loc.start.line, column: node.loc.start.column + 1, message });
  }
}
