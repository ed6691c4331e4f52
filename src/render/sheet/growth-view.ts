// How it grows, as the sheet prints it: lines under the numbers of the week shown, then the exercises
// and levels that come later with their steps, then what changes about the days.
import type { PlanNumbers, WeekNumbers } from '../../compute/numbers.ts';
import type { Practice } from '../../model/practice.ts';
import { commaText, listText, numberText, rangeText, sentencesText } from '../words/amounts.ts';
import { dayText } from '../words/date-words.ts';
import { togetherSentence } from '../words/dose-sentence.ts';
import { kitTexts } from '../words/kit-words.ts';
import type { Words } from '../words/words.ts';
import { sessionName } from './days-view.ts';
import type { Numbering, Slot } from './exercise-slots.ts';
import { exerciseName, exerciseView } from './exercise-view.ts';
import { growthSteps } from './growth-steps.ts';
import type { GrowthSteps, LaterExercise, StepLine } from './growth-walk.ts';
import { painOf } from './safety-view.ts';
import { sessionChanges } from './session-changes.ts';
import type { ChangesView, GrowthView, LaterExerciseView } from './sheet-view.ts';
import { firstDayOf } from './shown-week.ts';

export interface GrowthSettings {
  readonly words: Words;
  readonly practice: Practice;
  readonly numbers: PlanNumbers;
  readonly shown: WeekNumbers;
  readonly later: readonly WeekNumbers[];
  readonly slotsByWeek: ReadonlyMap<number, readonly Slot[]>;
  readonly numbering: Numbering;
  readonly year: string;
}

export function growthView(settings: GrowthSettings): GrowthView | null {
  const { words, practice, numbers, shown, later, year } = settings;
  const { plan } = numbers;
  const steps = growthSteps(settings);
  const changes = shownChanges(settings, steps);
  const laterViews = steps.later.map((one) => laterView(settings, steps, one));
  const days = sessionChanges({ words, plan, shown, later, numberIn: steps.numberIn, year });
  if (changes.length + laterViews.length + days.length === 0) return null;
  const pain = rangeText(words, painOf(plan, practice).carryOn);
  return {
    heading: words.say('growth.heading'),
    lead: words.say('growth.lead', { pain }),
    changes,
    later: laterViews,
    days,
  };
}

function shownChanges(settings: GrowthSettings, steps: GrowthSteps): readonly ChangesView[] {
  const { words, numbering } = settings;
  const numbers = Array.from({ length: numbering.last }, (_, at) => at + 1);
  return numbers.flatMap((number) => {
    const lines = linesOf(settings, steps, number);
    const slot = steps.carriers.get(number)?.[0];
    if (lines.length === 0 || !slot) return [];
    const name = exerciseName(words, slot.item.level);
    return [
      { heading: words.say('growth.block', { number: numberText(words, number), name }), lines },
    ];
  });
}

function linesOf(settings: GrowthSettings, steps: GrowthSteps, number: number): readonly string[] {
  const carriers = steps.carriers.get(number) ?? [];
  const lines = [...(steps.lines.get(number) ?? [])].sort((a, b) => a.week - b.week);
  return lines.map((line) => lineText(settings, line, carriers));
}

/** A line that holds in one of several sessions says in which. */
function lineText(
  { words, numbers }: GrowthSettings,
  line: StepLine,
  carriers: readonly Slot[],
): string {
  const names = (slots: readonly Slot[]) => [
    ...new Set(slots.map(({ session }) => sessionName(words, numbers.plan, session))),
  ];
  const here = names(line.slots);
  if (here.length === names(carriers).length) return line.text;
  return words.say('growth.in-session', { session: listText(words, here, 'and'), text: line.text });
}

function laterView(
  settings: GrowthSettings,
  steps: GrowthSteps,
  later: LaterExercise,
): LaterExerciseView {
  const { words, numbers } = settings;
  const { slot, number } = later;
  const shown = settings.slotsByWeek.get(settings.shown.week) ?? [];
  const named = kitTexts(words, shown, numbers.plan);
  const kit = kitTexts(words, [...shown, slot], numbers.plan).filter(
    (text) => !named.includes(text),
  );
  return {
    ...exerciseView(words, slot, number),
    when: whenText(settings, later),
    together: togetherText(settings, steps, later),
    ready: kit.length === 0 ? null : words.say('growth.put-ready', { kit: commaText(words, kit) }),
    lines: linesOf(settings, steps, number),
  };
}

/** Date and condition, then where it stands: in place of another, or after it. */
function whenText({ words, numbers, year }: GrowthSettings, later: LaterExercise): string {
  const { plan } = numbers;
  const from = words.say('growth.from', {
    date: dayText(words, firstDayOf(plan, later.week), year),
  });
  const { condition } = later;
  const when =
    condition === null
      ? words.say('growth.when-alone', { from })
      : words.say('growth.when', { from, condition });
  if (later.replaces !== null) {
    const number = numberText(words, later.replaces);
    return sentencesText(words, [when, words.say('growth.in-place', { number })]);
  }
  const places = later.places.flatMap(({ slot, after, isNewSession }) => {
    if (isNewSession) return [];
    const text =
      after === null
        ? words.say('growth.comes-first')
        : words.say('growth.comes-after', { number: numberText(words, after) });
    if (plan.sessions.length === 1) return [text];
    return [
      words.say('growth.in-session', { session: sessionName(words, plan, slot.session), text }),
    ];
  });
  return sentencesText(words, [when, ...places]);
}

function togetherText(
  { words }: GrowthSettings,
  steps: GrowthSteps,
  { slot, week }: LaterExercise,
): string | null {
  const { rounds, restBetweenRoundsMs, items } = slot.part;
  if (rounds === null) return null;
  const session = slot.session.session.id;
  const numbers = items.flatMap(({ item }) => steps.numberIn(`${session}/${item.id}`, week) ?? []);
  return togetherSentence(words, numbers, rounds, restBetweenRoundsMs);
}
