// A template filled with a view, or the reason why it can't be: Handlebars, strict, so that a name
// which the view lacks is a problem with a line and never an empty place on a sheet.
// What the views hold is theirs; which template makes which page is the pages'.
import Handlebars from 'handlebars';
import { BLOCKS, type TemplateMistake, templateMistake } from './template-mistake.ts';

/** Texts by name as under templates/: `sheet.html.hbs`, `partials/box.html.hbs`, `sheet.css`. */
export type Templates = ReadonlyMap<string, string>;

export interface TemplateProblem extends TemplateMistake {
  readonly template: string;
}

export type Page =
  | { readonly ok: true; readonly text: string }
  | { readonly ok: false; readonly problem: TemplateProblem };

export type Escaping = 'html' | 'none';

/** Carries a problem out of nested partials; never leaves this file. */
class Mistake extends Error {
  readonly problem: TemplateProblem;
  constructor(problem: TemplateProblem) {
    super(problem.message);
    this.problem = problem;
  }
}

/** A name that a block or a helper was given and the view does not have. */
class UnknownName extends Error {
  readonly position: Position;
  constructor(position: Position) {
    super('a name that the view does not have');
    this.position = position;
  }
}

/** As Handlebars gives it: lines from 1, columns from 0. */
interface Position {
  readonly line: number;
  readonly column: number;
}

interface HelperOptions extends Handlebars.HelperOptions {
  readonly loc: { readonly start: Position };
}

type House = typeof Handlebars;
type Fill = (view: unknown, options?: Handlebars.RuntimeOptions) => string;

/** The page that a template and its partials make of a view. Same view, same bytes. */
export function filled(
  name: string,
  view: unknown,
  templates: Templates,
  escaping: Escaping,
): Page {
  try {
    const text = keptHouse(templates, escaping).fill(name)(view);
    return { ok: true, text: tidied(text) };
  } catch (error) {
    if (error instanceof Mistake) return { ok: false, problem: error.problem };
    throw error;
  }
}

interface KeptHouse {
  readonly fill: (name: string) => Fill;
}

const kept = new WeakMap<Templates, Map<Escaping, KeptHouse>>();

/** Templates are compiled once for all the pages of a build: that is most of a page's time. */
function keptHouse(templates: Templates, escaping: Escaping): KeptHouse {
  const byEscaping = kept.get(templates) ?? new Map<Escaping, KeptHouse>();
  kept.set(templates, byEscaping);
  const known = byEscaping.get(escaping);
  if (known) return known;
  const house = houseOf(templates, escaping);
  const fills = new Map<string, Fill>();
  const made: KeptHouse = {
    fill: (name) => {
      const fill = fills.get(name) ?? compiled(house, name, templates, escaping);
      fills.set(name, fill);
      return fill;
    },
  };
  byEscaping.set(escaping, made);
  return made;
}

/** A Handlebars of its own for each set of templates, so that no other's partials are seen. */
function houseOf(templates: Templates, escaping: Escaping): House {
  const house = Handlebars.create();
  for (const block of BLOCKS) refuseUnknownNames(house, block);
  // An ordered list counts from 1, Handlebars from 0.
  house.registerHelper('counted', (index: unknown, options: HelperOptions) => {
    if (typeof index !== 'number') throw new UnknownName(options.loc.start);
    return index + 1;
  });
  for (const name of templates.keys()) {
    let ready: Fill | undefined;
    const fill: Fill = (view, options) => {
      ready ??= compiled(house, name, templates, escaping);
      return ready(view, options);
    };
    house.registerPartial(partialName(name), fill);
  }
  return house;
}

/** `{{> partials/box.html}}` is the file partials/box.html.hbs; a style keeps its whole name. */
function partialName(file: string): string {
  return file.endsWith('.hbs') ? file.slice(0, -'.hbs'.length) : file;
}

/** Strictness as Handlebars has it stops at blocks: there an unknown name would count as false. */
function refuseUnknownNames(house: House, block: string): void {
  const inner = house.helpers[block] as Handlebars.HelperDelegate;
  house.registerHelper(block, function (this: unknown, value: unknown, options: HelperOptions) {
    if (value === undefined) throw new UnknownName(options.loc.start);
    return inner.call(this, value, options);
  });
}

function compiled(house: House, name: string, templates: Templates, escaping: Escaping): Fill {
  const text = templates.get(name);
  if (text === undefined) throw mistake(name, 1, 0, 'There is no template of this name.');
  const wrong = templateMistake(text, new Set([...templates.keys()].map(partialName)));
  if (wrong) throw new Mistake({ template: name, ...wrong });
  const template = house.compile(text, {
    strict: true,
    noEscape: escaping === 'none',
    knownHelpersOnly: true,
    knownHelpers: { counted: true },
    preventIndent: true,
  });
  return (view, options) => {
    try {
      const page = template(view, options);
      if (page.includes('[object Object]')) throw mistake(name, 1, 0, WHOLE_GROUP);
      return page;
    } catch (error) {
      throw asMistake(error, name, text);
    }
  };
}

const WHOLE_GROUP = 'The template prints a whole group of values where one text belongs.';

function mistake(template: string, line: number, column: number, message: string): Mistake {
  return new Mistake({ template, line, column: column + 1, message });
}

function asMistake(error: unknown, template: string, text: string): unknown {
  if (error instanceof Mistake) return error;
  if (error instanceof UnknownName) return unknownName(template, text, error.position);
  // Only a partial that calls itself can go that deep.
  if (error instanceof RangeError) {
    return mistake(template, 1, 0, 'The template or a partial of it calls itself without end.');
  }
  const { message = '', lineNumber: line, column = 0 } = error as Partial<Handlebars.Exception>;
  if (line === undefined) return error;
  if (/not defined in/.test(message)) return unknownName(template, text, { line, column });
  const plain = message.replace(/ - \d+:\d+$/, '');
  return mistake(template, line, column, `The template can't be filled in: ${plain}.`);
}

function unknownName(template: string, text: string, { line, column }: Position): Mistake {
  const at = text.split('\n')[line - 1]?.slice(column) ?? '';
  const tag = /^\{\{.*?\}\}/.exec(at)?.[0] ?? /^[^\s{}]+/.exec(at)?.[0] ?? at;
  return mistake(template, line, column, `${tag} names something that is not there to be printed.`);
}

/** Line ends as LF, no blanks before them, one empty line at the most, one line end at the end. */
function tidied(text: string): string {
  const plain = text.replace(/\r\n?/g, '\n').replace(/(?<![ \t])[ \t]+\n/g, '\n');
  return `${plain.replace(/\n{3,}/g, '\n\n').trim()}\n`;
}
