// What is wrong with one value, in a practitioner's words: its kind, its word, its number or its id.
import type { ErrorObject } from 'ajv';
import { parsePainRange } from '../units/measure.ts';
import { parseCount } from '../units/number.ts';
import { type Reading, withSoundForm } from '../units/reading.ts';
import { type WordMistake as Mistake, unknownWord } from './closed-words.ts';
import type { Spot } from './key-findings.ts';
import { daysForm } from './own-days.ts';
import { idFrom } from './own-form.ts';
import { ENTRY } from './prose-scanning.ts';
import { quoted } from './quoted-sentence.ts';
import { kindOfNode } from './yaml-file.ts';

/** A value that the validator refused. */
export interface Refused {
  readonly name: string;
  readonly error: ErrorObject;
  readonly spot: Spot;
  /** What follows "write": what stands there in its right form, or what belongs there. */
  readonly form: string;
  /** What stands there. */
  readonly written: string;
  /** What stands there in its right form; undefined where nothing can be made of it. */
  readonly own: string | undefined;
}

/** What is wrong with a value. Without hints of its own, those of what belongs there may stand. */
export function valueMistake(refused: Refused): Mistake {
  const { name, error, form, spot } = refused;
  const isEntry = spot.path.at(-1) === ENTRY;
  const data = typeof error.data === 'object' ? '' : String(error.data);
  switch (error.keyword) {
    case 'enum':
      return unknownWord(name, data, error.params.allowedValues as readonly string[], isEntry);
    case 'const':
      return {
        check: 'unknown-word',
        message: `"${name}" takes only "${String(error.params.allowedValue)}"; write "${name}: ${String(error.params.allowedValue)}".`,
        hints: [],
      };
    case 'pattern':
      return patternMistake(refused, data);
    case 'maxLength':
      return linkTooLong(error, data);
    case 'minimum':
    case 'maximum':
      return rangeMistake(refused, data);
    case 'uniqueItems':
      return {
        check: 'duplicate-key',
        message: `"${name}" has "${(error.data as readonly unknown[])[Number(error.params.i)]}" twice; delete one.`,
        hints: [],
      };
    case 'maxProperties': {
      const dials = Object.keys(error.data as object).map((key) => `"- ${key}: …"`);
      return {
        check: 'dial-unclear',
        message: `Each step of a climb is one dial under a dash of its own; write ${dials.join(' and below it ')}.`,
        hints: [],
      };
    }
    case 'type':
      return typeMistake(refused);
    default:
      return {
        check: 'wrong-kind',
        message: `"${name}" is not written in a form that is read here; write ${form}.`,
      };
  }
}

/** Where an entry for week 1 stands, by the key that its list is in. */
const WEEK_ONE: Readonly<Record<string, string>> = {
  sessions: 'session',
  parts: 'part',
  items: 'exercise',
};

function rangeMistake({ name, error, spot }: Refused, data: string): Mistake {
  const owner = spot.path.at(-5) ?? '';
  if (name === 'week' && /^[01]$/.test(data) && Object.hasOwn(WEEK_ONE, owner)) {
    const what = WEEK_ONE[owner];
    return {
      check: 'out-of-range',
      message: `"week" says ${data}, but "from_week" begins with week 2; what holds from week 1 stands in the ${what} itself, so write it there and delete this entry.`,
      hints: [],
    };
  }
  const { minimum, maximum } = error.parentSchema as { minimum?: number; maximum?: number };
  const limits =
    maximum === undefined ? `${minimum} or more` : `a whole number from ${minimum} to ${maximum}`;
  return { check: 'out-of-range', message: `"${name}" says ${data}, but is ${limits}.`, hints: [] };
}

function patternMistake({ name, error, form, own }: Refused, data: string): Mistake {
  const schema = error.parentSchema as { items?: { enum?: readonly string[] }; pattern: string };
  const words = /^\^\(([a-z|-]+)\)\$$/.exec(schema.pattern)?.[1]?.split('|');
  if (schema.items?.enum) {
    const { enum: known } = schema.items;
    const listed = data.split(/[\s,]+/);
    if (listed.every((one) => known.includes(one))) {
      return {
        check: 'wrong-kind',
        message: `"${name}" takes a list here; write "${name}: [${listed.join(', ')}]".`,
        hints: [],
      };
    }
    if (words && words.length > 1) return unknownWord(name, data, words);
    const right = daysForm(data) ?? '"daily" or a list such as [mon, wed, fri]';
    return {
      check: 'unknown-word',
      message: `"${name}" says "${data}"; write ${right}.`,
      hints: [],
    };
  }
  if (words) return unknownWord(name, data, words);
  if (name === 'picture') return pictureMistake(data);
  if (name === 'link') return linkMistake(data, form);
  if (schema.pattern.includes('A-Z')) {
    return {
      check: 'bad-id',
      message: `"${data}" cannot be a code; a code has letters, digits and hyphens, and is never a name: write ${form}.`,
    };
  }
  const id = idFrom(data);
  const right = id === '' ? form : `"${name}: ${id}"`;
  return {
    check: 'bad-id',
    message: `"${data}" cannot be an id; an id has small letters, digits and hyphens: write ${own ?? right}.`,
  };
}

function pictureMistake(data: string): Mistake {
  const file = data.slice(data.replaceAll('\\', '/').lastIndexOf('/') + 1);
  const write = /\.(svg|png|jpg|webp)$/.test(file) ? `; write "picture: pictures/${file}"` : '';
  return {
    check: 'picture-unusable',
    message: `"picture" says "${data}", but a picture lies in pictures/ and is a svg, png, jpg or webp${write}.`,
    hints: [],
  };
}

function linkMistake(data: string, form: string): Mistake {
  const why = /^http:/i.test(data)
    ? 'only addresses that begin with https:// are printed'
    : 'it takes a web address that begins with https:// and has no spaces, accents or brackets in it';
  return {
    check: 'link-unusable',
    message: `"link" says "${data}", but ${why}; write ${form}.`,
    hints: [],
  };
}

/** The one value with a longest form: an address is typed by hand where there is no camera. */
function linkTooLong({ params }: ErrorObject, data: string): Mistake {
  return {
    check: 'link-unusable',
    message: `"link" has ${data.length} signs, but an address on paper has ${Number(params.limit)} at the most; use a shorter one.`,
    hints: [],
  };
}

const SIDE_WORDS: ReadonlySet<string> = new Set(['each', 'both', 'middle']);

/** Keys that were meant as one sentence, in quotes; nothing where they go over lines. */
function asSentence(written: string): string {
  const text = written.trim().replace(/^\{(.*)\}$/, '$1');
  return text.includes('\n') ? '' : `: ${quoted(text)}`;
}

/** A whole number, or a score of 0 to 10, out of text that is none. */
function parserOf(schema: unknown): (text: string) => Reading<unknown> {
  const { minimum, maximum } = schema as { minimum?: number; maximum?: number };
  return minimum === 0 && maximum === 10 ? parsePainRange : parseCount;
}

function numberMistake({ name, error, form }: Refused): Mistake {
  const parse = parserOf(error.parentSchema);
  const reading = withSoundForm(parse(String(error.data)), parse);
  if (!reading.ok) {
    const { check, says, write, orWrite } = reading.misread;
    const forms = [write, orWrite].flatMap((one) => (one === undefined ? [] : `"${name}: ${one}"`));
    const right = forms.length > 0 ? forms.join(' or ') : form;
    return { check, message: `"${name}" ${says}; write ${right}.`, hints: [] };
  }
  const range = /^\s*(\d+)\s*[-–]\s*(\d+)\s*$/.exec(String(error.data));
  if (range)
    return {
      check: 'not-understood',
      message: `"${name}" says ${String(error.data)}, but takes one number, not a range; write "${name}: ${range[1]}" or "${name}: ${range[2]}".`,
      hints: [],
    };
  return {
    check: 'wrong-kind',
    message: `"${name}" is a number without quotes; write "${name}: ${String(error.data)}".`,
    hints: [],
  };
}

function typeMistake(refused: Refused): Mistake {
  const { name, error, spot, form, written } = refused;
  const types = [error.params.type].flat() as readonly string[];
  const kind = kindOfNode(spot.node);
  if (kind === 'value' && types.includes('integer')) return numberMistake(refused);
  if (name === 'sides' && kind === 'value' && SIDE_WORDS.has(String(error.data))) {
    const message = `"sides: ${String(error.data)}" is not said here: the level of the exercise decides that; choose another "level", or write what differs between the sides, ${form}.`;
    return { check: 'sides-not-each', message, hints: [] };
  }
  if (kind === 'keys' && types.includes('string') && error.parentSchema?.quantity === undefined) {
    return {
      check: 'wrong-kind',
      message: `"${name}" takes words, but a key with a colon stands here; if it is one sentence, put quotes round it${asSentence(written)}.`,
      hints: [],
    };
  }
  if (spot.path.length === 0) {
    return {
      check: 'wrong-kind',
      message: `This file begins with ${kind === 'list' ? 'a list' : 'a sentence'}, but it takes keys with a colon, such as ${form}.`,
      hints: [],
    };
  }
  if (types.includes('boolean') && types.length === 1)
    return {
      check: 'unknown-word',
      message: `"${name}" says "${written}", but takes only true; write ${form}.`,
      hints: [],
    };
  if (name === 'days' && kind === 'value' && refused.own !== undefined)
    return {
      check: 'wrong-kind',
      message: `"days" says which days, not how many; write ${form}.`,
      hints: [],
    };
  return { check: 'wrong-kind', message: kindSentence(refused, types, kind) };
}

function kindSentence(
  { name, error, spot, form }: Refused,
  types: readonly string[],
  kind: 'list' | 'keys' | 'value',
): string {
  const wanted = types.includes('array')
    ? types.length > 1
      ? 'one value or a list'
      : 'a list'
    : types.includes('object')
      ? 'keys of its own'
      : 'one value';
  const found =
    kind === 'list'
      ? 'a list stands'
      : kind === 'keys'
        ? 'keys stand'
        : `"${String(error.data)}" stands`;
  const subject = spot.path.at(-1) === ENTRY ? `An entry of "${name}"` : `"${name}"`;
  return `${subject} takes ${wanted}, but ${found} here; write ${form}.`;
}
