// What `new` asks for, and what it takes for an answer: the same words, dates and counts that the files
// take, so that nothing is written that `check` would refuse at once.
import { nearest } from '../load/did-you-mean.ts';
import { LIMBS, PURPOSES } from '../model/exercise.ts';
import type { Practice } from '../model/practice.ts';
import { parseDay } from '../units/day.ts';
import { parseCount } from '../units/number.ts';
import type { Reading } from '../units/reading.ts';

export interface NewOptions {
  readonly from?: string;
  readonly title?: string;
  readonly by?: string;
  readonly date?: string;
  readonly starts?: string;
  readonly next?: string;
  readonly weeks?: string;
  readonly affected?: string;
  readonly goal?: string;
  readonly name?: string;
  readonly purpose?: string;
  readonly position?: string;
  readonly sides?: string;
  readonly limb?: string;
  readonly in?: string;
}

export interface Question {
  readonly key: keyof NewOptions;
  /** With its choices, or the form that is wanted. */
  readonly asks: string;
  /** What is wrong with an answer, after "--weeks" or "This"; null where nothing is. */
  readonly problem: (answer: string) => string | null;
}

export const AFFECTED = ['left', 'right', 'both', 'none'] as const;
export const SIDES_WORDS = ['each', 'both', 'middle'] as const;
const MOST_WEEKS = 52;

/** In order; each is an option too. */
export function questionsFor(what: 'plan' | 'exercise', practice: Practice): readonly Question[] {
  return what === 'plan' ? planQuestions(practice) : exerciseQuestions(practice);
}

function planQuestions({ practitioners }: Practice): readonly Question[] {
  return [
    text('title', 'Title on the sheet'),
    choice('by', 'Who signs it', [...practitioners.keys()]),
    quantity('date', 'Date of the visit (year-month-day)', parseDay),
    quantity('starts', 'First day of week 1 (year-month-day)', parseDay),
    quantity('next', 'Next visit (year-month-day)', parseDay),
    quantity('weeks', `How many weeks (1 to ${MOST_WEEKS})`, (one) => parseCount(one, MOST_WEEKS)),
    choice('affected', 'Affected side', AFFECTED),
    text('goal', "Goal, in the person's own words"),
  ];
}

function exerciseQuestions({ vocabulary }: Practice): readonly Question[] {
  return [
    text('name', 'Name on the sheet'),
    choice('purpose', 'Purpose', PURPOSES),
    choice('position', 'Starting position', [...vocabulary.positions]),
    choice('sides', 'Sides: each (one at a time), both (at once) or middle', SIDES_WORDS, false),
    choice('limb', 'What a side is called', LIMBS),
  ];
}

function text(key: keyof NewOptions, asks: string): Question {
  return { key, asks, problem: () => null };
}

function choice(
  key: keyof NewOptions,
  asks: string,
  choices: readonly string[],
  isListed = true,
): Question {
  const all = choices.join(', ');
  return {
    key,
    asks: isListed ? `${asks} (${all})` : asks,
    problem: (answer) => {
      if (choices.includes(answer)) return null;
      const near = nearest(answer, choices);
      const hint = near === undefined ? '' : ` Did you mean "${near}"?`;
      return choices.length === 0
        ? `says "${answer}", but practice.yaml has nobody under "practitioners".`
        : `says "${answer}", but takes one of ${all}.${hint}`;
    },
  };
}

function quantity(
  key: keyof NewOptions,
  asks: string,
  parse: (answer: string) => Reading<unknown>,
): Question {
  return {
    key,
    asks,
    problem: (answer) => {
      const reading = parse(answer);
      if (reading.ok) return null;
      const { says, write, orWrite } = reading.misread;
      const form = [write, orWrite].filter((one) => one !== undefined).join(' or ');
      return `${says}${form === '' ? '' : `; write ${form}`}.`;
    },
  };
}
