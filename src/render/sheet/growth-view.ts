// How it grows, as the sheet prints it: what changes about the days, lines under the numbers of the
// week shown, easy weeks, then the exercises and levels that come later with their steps.
import type { Plan } from '../../model/plan.ts';
import { commaText, numberText, orderText, rangeText, sentencesText } from '../words/amounts.ts';
import { conditionText } from '../words/condition-words.ts';
import { dayText } from '../words/date-words.ts';
import { togetherSentence } from '../words/dose-sentence.ts';
import { kitTexts } from '../words/kit-words.ts';
import type { Words } from '../words/words.ts';
import { sessionName } from './days-view.ts';
import { easyWeekViews } from './easy-week-view.ts';
import type { Slot } from './exercise-slots.ts';
import { exerciseName, exerciseView } from './exercise-view.ts';
import { growthSteps } from './growth-steps.ts';
import type { GrowthInput, GrowthSteps, LaterExercise, StepLine } from './growth-walk.ts';
import { painOf } from './safety-view.ts';
import { sessionChanges } from './session-changes.ts';
import type { ChangesView, GrowthView, LaterExerciseView, LineView } from './sheet-view.ts';
import { firstDayOf } from './shown-week.ts';

export function growthView(input: GrowthInput): GrowthView | null {
  const { words, practice, numbers, shown, later } = input;
  const { plan } = numbers;
  const steps = growthSteps(input);
  const changes = shownChanges(input, steps);
  const exercises = steps.later.map((one) => laterView(input, steps, one));
  const sessions = sessionChanges({ words, plan, shown, later, numberIn: steps.numberIn });
  const easyLines = [...sessions.easy, ...easyLinesOf(input, steps)];
  const easyWeeks = easyWeekViews(words, plan, later, easyLines);
  const parts = [changes, exercises, sessions.changes, easyWeeks];
  if (parts.every(({ length }) => length === 0)) return null;
  const pain = rangeText(words, painOf(plan, practice).carryOn);
  return {
    heading: words.say('growth.heading'),
    lead: [
      words.say('growth.lead'),
      words.say('growth.lead-condition', { pain }),
      words.say('growth.lead-too-much'),
    ],
    days: sessions.changes,
    changes,
    easyWeeks,
    later: exercises.length === 0 ? null : { heading: words.say('growth.later'), exercises },
  };
}

function shownChanges(input: GrowthInput, steps: GrowthSteps): readonly ChangesView[] {
  const { words, numbering } = input;
  const numbers = Array.from({ length: numbering.last }, (_, at) => at + 1);
  return numbers.flatMap((number) => {
    const lines = linesOf(input, steps, number);
    const slot = steps.carriers.get(number)?.[0];
    if (lines.length === 0 || !slot) return [];
    const name = exerciseName(words, slot.item.level);
    return [
      { heading: words.say('growth.block', { number: numberText(words, number), name }), lines },
    ];
  });
}

function linesOf(input: GrowthInput, steps: GrowthSteps, number: number): readonly LineView[] {
  const lines = [...(steps.lines.get(number) ?? [])].sort((a, b) => a.week - b.week);
  return lines.map((line) => lineView(input, steps, line, number));
}

/** Lines of easy weeks in the order of their numbers. */
function easyLinesOf(input: GrowthInput, steps: GrowthSteps) {
  const numbers = [...steps.easy.keys()].sort((a, b) => a - b);
  return numbers.flatMap((number) =>
    (steps.easy.get(number) ?? []).map((line) => ({
      week: line.week,
      ...lineView(input, steps, line, number),
    })),
  );
}

/** A line that holds in one of several sessions says in which; one that is placed, after which. */
function lineView(
  { words, numbers }: GrowthInput,
  steps: GrowthSteps,
  line: StepLine,
  number: number,
): LineView {
  const names = (slots: readonly Slot[]) => [
    ...new Set(slots.map(({ session }) => sessionName(words, numbers.plan, session))),
  ];
  const here = names(line.slots);
  const isOfAll = here.length === names(steps.carriers.get(number) ?? []).length;
  const session = commaText(words, here);
  const text = isOfAll ? line.text : words.say('growth.in-session', { session, text: line.text });
  if (!line.isPlaced) return { lead: line.lead, text };
  const [slot] = line.slots;
  const order = slot ? orderSentence(words, numbers.plan, steps, slot, line.week) : '';
  return { lead: line.lead, text: sentencesText(words, [text, order]) };
}

/** "In Strong legs the order is then: 1 to 5, then 9." */
function orderSentence(
  words: Words,
  plan: Plan,
  steps: GrowthSteps,
  { session }: Slot,
  week: number,
): string {
  const order = orderText(words, steps.orderIn(session.session.id, week));
  return plan.sessions.length === 1
    ? words.say('growth.order', { order })
    : words.say('growth.order-in', { session: sessionName(words, plan, session), order });
}

function laterView(
  input: GrowthInput,
  steps: GrowthSteps,
  later: LaterExercise,
): LaterExerciseView {
  const { words, practice, numbers } = input;
  const { slot, number } = later;
  const shown = input.slotsByWeek.get(input.shown.week) ?? [];
  const named = kitTexts(words, shown, numbers.plan);
  const kit = kitTexts(words, [...shown, slot], numbers.plan).filter(
    (text) => !named.includes(text),
  );
  return {
    ...exerciseView(words, slot, number, painOf(numbers.plan, practice)),
    when: whenText(input, steps, later),
    together: togetherText(input, steps, later),
    ready: kit.length === 0 ? null : words.say('growth.put-ready', { kit: commaText(words, kit) }),
    lines: linesOf(input, steps, number),
  };
}

/** Date and condition, then where it stands: in place of another, or in which order. */
function whenText(
  { words, numbers: { plan } }: GrowthInput,
  steps: GrowthSteps,
  { week, condition, replaces, places }: LaterExercise,
): string {
  const from = words.say('growth.from', { date: dayText(words, firstDayOf(plan, week)) });
  const when = words.say('growth.when', { from, condition: conditionText(words, condition) });
  if (replaces !== null) {
    const number = numberText(words, replaces);
    return sentencesText(words, [when, words.say('growth.in-place', { number })]);
  }
  const orders = places.flatMap(({ slot, isNewSession }) =>
    isNewSession ? [] : [orderSentence(words, plan, steps, slot, week)],
  );
  return sentencesText(words, [when, ...orders]);
}

function togetherText(
  { words }: GrowthInput,
  steps: GrowthSteps,
  { slot, week }: LaterExercise,
): string | null {
  const { rounds, restBetweenRoundsMs, items } = slot.part;
  if (rounds === null) return null;
  const session = slot.session.session.id;
  const numbers = items.flatMap(({ item }) => steps.numberIn(`${session}/${item.id}`, week) ?? []);
  return togetherSentence(words, numbers, rounds, restBetweenRoundsMs);
}
