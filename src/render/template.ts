// A template filled with a view, or the reason why it can't be: Handlebars, strict, so that a name
// which the view lacks is a problem with a line and never an empty place on a sheet.
// What the views hold is theirs; which template makes which page is the pages'.
import Handlebars from 'handlebars';
import { templateMistake } from './template-mistake.ts';

/** Texts by name as under templates/: `sheet.html.hbs`, `partials/box.html.hbs`, `sheet.css`. */
export type Templates = ReadonlyMap<string, string>;

/** Line and column count from 1; the message is one sentence in plain words. */
export interface TemplateProblem {
  readonly template: string;
  readonly line: number;
  readonly column: number;
  readonly message: string;
}

export type Page =
  | { readonly ok: true; readonly text: string }
  | { readonly ok: false; readonly problem: TemplateProblem };

export type Escaping = 'html' | 'none';

/** Thrown inside this floor's own walls only: it carries a problem out of nested partials. */
class Mistake extends Error {
  readonly problem: TemplateProblem;
  constructor(problem: TemplateProblem) {
    super(problem.message);
    this.problem = problem;
  }
}

interface Position {
  readonly line: number;
  readonly column: number;
}

/** The page that a template and its partials make of a view. Same view, same bytes. */
export function filled(
  name: string,
  view: unknown,
  templates: Templates,
  escaping: Escaping,
): Page {
  try {
    const house = houseOf(templates, escaping);
    return { ok: true, text: tidied(compiled(house, name, templates, escaping)(view)) };
  } catch (error) {
    if (error instanceof Mistake) return { ok: false, problem: error.problem };
    throw error;
  }
}

type House = typeof Handlebars;

/** A Handlebars of its own for each page, so that nothing is left over from the one before. */
function houseOf(templates: Templates, escaping: Escaping): House {
  const house = Handlebars.create();
  house.unregisterHelper('log');
  house.unregisterHelper('lookup');
  for (const block of ['if', 'unless', 'each', 'with']) refuseUnknownNames(house, block);
  // An ordered list counts from 1, a template from 0.
  house.registerHelper('counted', (index: number) => index + 1);
  for (const name of templates.keys()) {
    house.registerPartial(partialName(name), (...given: unknown[]) => {
      const [view, options] = given;
      return compiled(house, name, templates, escaping)(view, options as Handlebars.RuntimeOptions);
    });
  }
  return house;
}

/** `{{> partials/box.html}}` is the file partials/box.html.hbs; a style keeps its whole name. */
export function partialName(file: string): string {
  return file.endsWith('.hbs') ? file.slice(0, -'.hbs'.length) : file;
}

/** Strictness as Handlebars has it stops at blocks: there an unknown name would count as false. */
function refuseUnknownNames(house: House, block: string): void {
  const inner = house.helpers[block] as Handlebars.HelperDelegate;
  house.registerHelper(block, function (this: unknown, value: unknown, options: BlockOptions) {
    if (value === undefined) {
      throw new UnknownName(options.loc.start);
    }
    return inner.call(this, value, options);
  });
}

interface BlockOptions extends Handlebars.HelperOptions {
  readonly loc: { readonly start: Position };
}

class UnknownName extends Error {
  readonly position: Position;
  constructor(position: Position) {
    super('a name that the view does not have');
    this.position = position;
  }
}

function compiled(house: House, name: string, templates: Templates, escaping: Escaping) {
  const text = templates.get(name);
  if (text === undefined) {
    throw new Mistake({ template: name, line: 1, column: 1, message: 'The template is not there.' });
  }
  const mistake = templateMistake(text, new Set([...templates.keys()].map(partialName)));
  if (mistake) throw new Mistake({ template: name, ...mistake });
  const template = house.compile(text, {
    strict: true,
    noEscape: escaping === 'none',
    knownHelpersOnly: true,
    knownHelpers: { if: true, unless: true, each: true, with: true, counted: true, lookup: false, log: false },
    preventIndent: true,
  });
  return (view: unknown, options?: Handlebars.RuntimeOptions): string => {
    try {
      return template(view, options);
    } catch (error) {
      throw asMistake(error, name, text);
    }
  };
}

function asMistake(error: unknown, template: string, text: string): unknown {
  if (error instanceof Mistake) return error;
  if (error instanceof UnknownName) return unknownName(template, text, error.position);
  const { message, lineNumber, column } = error as Partial<Handlebars.Exception>;
  if (message === undefined || lineNumber === undefined) return error;
  const position = { line: lineNumber, column: column ?? 0 };
  if (/not defined in/.test(message)) return unknownName(template, text, position);
  const plain = message.replace(/ - \d+:\d+$/, '');
  return new Mistake({
    template,
    line: lineNumber,
    column: position.column + 1,
    message: `The template can't be filled in: ${plain}.`,
  });
}

/** Handlebars gives columns from 0. */
function unknownName(template: string, text: string, { line, column }: Position): Mistake {
  const at = text.split('\n')[line - 1]?.slice(column) ?? '';
  const tag = /^\{\{.*?\}\}/.exec(at)?.[0] ?? /^[^\s{}]+/.exec(at)?.[0] ?? at;
  return new Mistake({
    template,
    line,
    column: column + 1,
    message: `${tag} names something that this page does not have at this place.`,
  });
}

/** Line ends as LF, no blanks before them, one empty line at the most, one line end at the end. */
function tidied(text: string): string {
  return `${text
    .replace(/\r\n?/g, '\n')
    .replace(/[ \t]+\n/g, '\n')
    .replace(/\n{3,}/g, '\n\n')
    .trim()}\n`;
}
