// What is wrong with one value, in a practitioner's words: its kind, its word, its number or its id.
import type { ErrorObject } from 'ajv';
import type { Node } from 'yaml';
import type { CheckName } from '../finding/checks.ts';
import { parseCount } from '../units/number.ts';
import { withSoundForm } from '../units/reading.ts';
import { nearest } from './did-you-mean.ts';
import { ENTRY } from './prose-scanning.ts';
import { quoted } from './quoted-sentence.ts';
import { kindOfNode } from './yaml-file.ts';

/** A place of a file that the validator speaks of. */
export interface Spot {
  readonly node: unknown;
  /** The key's own node, for a value of a map. */
  readonly key: Node | null;
  /** Keys as written, and `*` for entries. */
  readonly path: readonly string[];
}

interface Mistake {
  readonly check: CheckName;
  readonly message: string;
  readonly hints?: readonly string[];
}

/** What is wrong with a value; `form` is one right form, `written` is what stands there. */
export function valueMistake(
  name: string,
  error: ErrorObject,
  spot: Spot,
  form: string,
  written: string,
): Mistake {
  const data = typeof error.data === 'object' ? '' : String(error.data);
  switch (error.keyword) {
    case 'enum':
      return unknownWord(name, data, error.params.allowedValues as readonly string[]);
    case 'const':
      return {
        check: 'unknown-word',
        message: `"${name}" takes only "${String(error.params.allowedValue)}"; write "${name}: ${String(error.params.allowedValue)}".`,
      };
    case 'pattern':
      return patternMistake(name, data, error, form);
    case 'minimum':
    case 'maximum': {
      const { minimum, maximum } = error.parentSchema as { minimum?: number; maximum?: number };
      const limits =
        maximum === undefined
          ? `${minimum} or more`
          : `a whole number from ${minimum} to ${maximum}`;
      return {
        check: 'out-of-range',
        message: `"${name}" says ${data}, but is ${limits}; write ${form}.`,
      };
    }
    case 'uniqueItems':
      return {
        check: 'duplicate-key',
        message: `"${name}" has "${(error.data as readonly unknown[])[Number(error.params.i)]}" twice; delete one.`,
      };
    case 'maxProperties':
      return {
        check: 'dial-unclear',
        message:
          'Each step of a climb is one dial under a dash of its own; write "- reps: {by: 2, to: 14}".',
      };
    case 'type':
      return typeMistake(name, error, spot, form, written);
    default:
      return {
        check: 'wrong-kind',
        message: `"${name}" is not written in a form that is read here; write ${form}.`,
      };
  }
}

function unknownWord(name: string, word: string, known: readonly string[]): Mistake {
  const near = nearest(word, known);
  return {
    check: 'unknown-word',
    message: `"${name}" says "${word}", but takes one of ${known.join(', ')}.`,
    hints: near === undefined ? [] : [`Did you mean "${near}"?`],
  };
}

function patternMistake(name: string, data: string, error: ErrorObject, form: string): Mistake {
  const schema = error.parentSchema as { items?: { enum?: readonly string[] }; pattern: string };
  const words = /^\^\(([a-z|-]+)\)\$$/.exec(schema.pattern)?.[1]?.split('|');
  if (schema.items?.enum) {
    const { enum: known } = schema.items;
    const listed = data.split(/[\s,]+/);
    if (listed.every((one) => known.includes(one))) {
      return {
        check: 'wrong-kind',
        message: `"${name}" takes a list here; write "${name}: [${listed.join(', ')}]".`,
      };
    }
    const single = words ?? (schema.pattern === '^daily$' ? ['daily'] : []);
    return single.length > 1
      ? unknownWord(name, data, single)
      : {
          ...unknownWord(name, data, [...single, ...known]),
          message: `"${name}" says "${data}"; write "daily" or a list such as [mon, wed, fri].`,
        };
  }
  if (words) return unknownWord(name, data, words);
  if (name === 'picture') {
    return {
      check: 'picture-unusable',
      message: `"picture" says "${data}"; a picture lies in pictures/ and is a svg, png, jpg or webp: "picture: pictures/heel-raise.svg".`,
    };
  }
  if (schema.pattern.includes('A-Z')) {
    return {
      check: 'bad-id',
      message: `"${data}" cannot be a code; a code has letters, digits and hyphens, and is never a name: write ${form}.`,
    };
  }
  const id = idFrom(data);
  return {
    check: 'bad-id',
    message: `"${data}" cannot be an id; an id has small letters, digits and hyphens: write ${id === '' ? form : `"${name}: ${id}"`}.`,
  };
}

const SIDE_WORDS: ReadonlySet<string> = new Set(['each', 'both', 'middle']);

/** Keys that were meant as one sentence, in quotes; nothing where they go over lines. */
function asSentence(written: string): string {
  const text = written.trim().replace(/^\{(.*)\}$/, '$1');
  return text.includes('\n') ? '' : `: ${quoted(text)}`;
}

function typeMistake(
  name: string,
  error: ErrorObject,
  spot: Spot,
  form: string,
  written: string,
): Mistake {
  const types = [error.params.type].flat() as readonly string[];
  const kind = kindOfNode(spot.node);
  if (kind === 'value' && types.includes('integer')) {
    const reading = withSoundForm(parseCount(String(error.data)), parseCount);
    if (!reading.ok) {
      const { check, says, write } = reading.misread;
      return {
        check,
        message: `"${name}" ${says}; write ${write === undefined ? form : `"${name}: ${write}"`}.`,
      };
    }
    return {
      check: 'wrong-kind',
      message: `"${name}" is a number without quotes; write "${name}: ${String(error.data)}".`,
    };
  }
  if (name === 'sides' && kind === 'value' && SIDE_WORDS.has(String(error.data))) {
    const message = `"sides: ${String(error.data)}" is not said here: the level of the exercise decides that; choose another "level", or write what differs between the sides, such as ${form}.`;
    return { check: 'sides-not-each', message };
  }
  if (kind === 'keys' && types.includes('string') && error.parentSchema?.quantity === undefined) {
    return {
      check: 'wrong-kind',
      message: `"${name}" takes words, but a key with a colon stands here; if it is one sentence, put quotes round it${asSentence(written)}.`,
    };
  }
  if (spot.path.length === 0) {
    return {
      check: 'wrong-kind',
      message: `This file begins with ${kind === 'list' ? 'a list' : 'a sentence'}, but it takes keys with a colon, such as ${form}.`,
    };
  }
  if (types.includes('boolean') && types.length === 1)
    return {
      check: 'unknown-word',
      message: `"${name}" says "${written}", but takes only true; write ${form}.`,
    };
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
  return {
    check: 'wrong-kind',
    message: `${subject} takes ${wanted}, but ${found} here; write ${form}.`,
  };
}

/** The id that a word was meant as; empty where it has no letters or digits for one. */
export function idFrom(word: string): string {
  return word
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-|-$/g, '')
    .slice(0, 63);
}
