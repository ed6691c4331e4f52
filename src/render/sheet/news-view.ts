// What is new since the sheet that the person has: the rules of stopping, exercises that came, changed or
// went, days. Held against what the old sheet asks for on the same day, so that a step which that sheet
// had announced is no news.
import type { SessionWeek } from '../../compute/numbers.ts';
import { type MatchedPlan, matchPlans } from '../../diff/match.ts';
import { practiceIn } from '../../model/practice.ts';
import { type Day, weekOf } from '../../units/day.ts';
import { closed } from '../words/amounts.ts';
import { plainDayText } from '../words/date-words.ts';
import { scheduleText } from '../words/schedule-words.ts';
import type { Words } from '../words/words.ts';
import { sessionName } from './days-view.ts';
import { type ExerciseNews, exerciseNews, forebears } from './exercise-news.ts';
import { type Numbering, type Slot, slotsOf } from './exercise-slots.ts';
import { exerciseName } from './exercise-view.ts';
import type { NewsInput } from './news-input.ts';
import { safetyView } from './safety-view.ts';
import type { ReasonsView, SafetyView, SentencesView } from './sheet-view.ts';

export interface News {
  readonly view: SentencesView;
  /** By number: what stands at the exercise. */
  readonly marks: ReadonlyMap<number, 'new' | 'changed'>;
}

export function newsOf(all: NewsInput): News {
  const input = {
    ...all,
    last: { ...all.last, practice: practiceIn(all.last.practice, all.words.language) },
  };
  const { words, numbers, slots, last } = input;
  const matched = matchPlans(last.numbers.plan, numbers.plan, new Map());
  const before = oldSlots(input);
  const lines = exerciseNews(input, before, matched);
  const sentences = [
    ...ruleSentences(input),
    ...onceEach(lines),
    ...goneSentences(words, slots, before, matched),
    ...daySentences(input, matched),
  ];
  return {
    view: {
      heading: words.say('news.heading'),
      sentences: [
        words.say('news.since', { date: plainDayText(words, last.date) }),
        ...(sentences.length > 0 ? sentences : [words.say('news.nothing')]),
      ],
    },
    marks: marksOf(lines, slots, input.numbering),
  };
}

/** The week of the old version on the first day of the new sheet; its last, where that is over. */
function oldWeek({ shown, last: { numbers } }: NewsInput) {
  const { plan, weeks } = numbers;
  const at = Math.min(Math.max(weekOf(plan.starts, shown.from), 1), plan.weeks);
  return weeks.find((one) => one.week === at);
}

function oldSlots(input: NewsInput): readonly Slot[] {
  const week = oldWeek(input);
  return week ? slotsOf(week, input.last.numbers.plan, input.words) : [];
}

/** An exercise of two sessions is told of once. */
function onceEach(lines: readonly ExerciseNews[]): readonly string[] {
  return [...new Set([...lines].sort((a, b) => a.number - b.number).map(({ text }) => text))];
}

/** New only where it is new wherever it stands. */
function marksOf(
  lines: readonly ExerciseNews[],
  slots: readonly Slot[],
  { bySlot }: Numbering,
): ReadonlyMap<number, 'new' | 'changed'> {
  const marks = new Map<number, 'new' | 'changed'>();
  for (const { number } of lines) {
    const all = slots.filter(({ id }) => bySlot.get(id) === number).length;
    const fresh = lines.filter((one) => one.number === number && one.kind === 'new').length;
    marks.set(number, fresh === all ? 'new' : 'changed');
  }
  return marks;
}

/** Exercises of the old version that no exercise of the sheet goes on from. */
function goneSentences(
  words: Words,
  slots: readonly Slot[],
  before: readonly Slot[],
  matched: MatchedPlan,
): readonly string[] {
  const from = forebears(matched);
  const isGoneOn = ({ item: { item } }: Slot) =>
    slots.some(
      (slot) =>
        slot.item.item.exercise.id === item.exercise.id &&
        from(slot.item.item).some((one) => one.item === item),
    );
  const nameOf = ({ item }: Slot) => exerciseName(words, item.level);
  const gone = new Set(before.filter((slot) => !isGoneOn(slot)).map(nameOf));
  return [...gone]
    .filter((name) => !slots.some((slot) => nameOf(slot) === name))
    .map((name) => words.say('news.gone', { name }));
}

function daySentences(input: NewsInput, { sessions, items }: MatchedPlan): readonly string[] {
  const { words, numbers, shown, last } = input;
  const old = oldWeek(input)?.sessions ?? [];
  const before = (now: SessionWeek) => {
    const pair = sessions.pairs.find(({ after }) => after === now.session);
    return pair && old.find(({ session }) => session === pair.before);
  };
  const days = ({ schedule, timesADay }: SessionWeek, starts: Day) =>
    closed(words, scheduleText(words, { schedule, timesADay, starts, from: shown.from }));
  const changed = shown.week.sessions.flatMap((session) => {
    const was = before(session);
    const name = sessionName(words, numbers.plan, session);
    const now = days(session, numbers.plan.starts);
    if (!was) return [words.say('news.session-new', { name, days: now })];
    const oldName = sessionName(words, last.numbers.plan, was);
    return [
      ...(oldName === name ? [] : [words.say('news.session-renamed', { old: oldName, name })]),
      ...(days(was, last.numbers.plan.starts) === now
        ? []
        : [words.say('news.days', { name, days: now })]),
      ...(isReordered(was, session, items) ? [words.say('news.order', { name })] : []),
    ];
  });
  const gone = old.filter(
    ({ session }) => !shown.week.sessions.some((one) => before(one)?.session === session),
  );
  const goneNames = gone.map((session) => sessionName(words, last.numbers.plan, session));
  return [...changed, ...goneNames.map((name) => words.say('news.session-gone', { name }))];
}

/** Whether what both versions of a session have is done in another order. */
function isReordered(was: SessionWeek, now: SessionWeek, items: MatchedPlan['items']): boolean {
  const done = ({ parts }: SessionWeek) =>
    parts.flatMap((part) => part.items.map(({ item }) => item));
  const [old, fresh] = [done(was), done(now)];
  const common = items.pairs.filter(
    ({ before, after }) => old.includes(before.item) && fresh.includes(after.item),
  );
  const inOrder = [...common].sort(
    (a, b) => old.indexOf(a.before.item) - old.indexOf(b.before.item),
  );
  return inOrder.some(
    ({ after }, at) =>
      at > 0 &&
      fresh.indexOf(after.item) < fresh.indexOf(inOrder[at - 1]?.after.item ?? after.item),
  );
}

/** When to stop, whom to call, what to take care of: first that it changed, then what is new. */
function ruleSentences({ words, practice, numbers: { plan }, last }: NewsInput): readonly string[] {
  const [then, now] = [
    boxLines(safetyView(words, last.numbers.plan, last.practice)),
    boxLines(safetyView(words, plan, practice)),
  ];
  const care = last.numbers.plan.precautions;
  const isSame = (a: readonly string[], b: readonly string[]) => a.join('\n') === b.join('\n');
  const fresh = (a: readonly string[], b: readonly string[]) => b.filter((one) => !a.includes(one));
  return [
    ...(isSame(then, now) ? [] : [words.say('news.safety')]),
    ...fresh(then, now).map((text) => words.say('news.rule', { text: closed(words, text) })),
    ...(isSame(care, plan.precautions) ? [] : [words.say('news.care')]),
    ...fresh(care, plan.precautions).map((text) =>
      words.say('news.rule', { text: closed(words, text) }),
    ),
  ];
}

/** Each line of the box as it can be read alone. */
function boxLines({
  pain,
  stopIf,
  getInTouchIf,
  contact,
  emergencyIf,
}: SafetyView): readonly string[] {
  const reasons = ({ lead, reasons: all }: ReasonsView) => all.map((reason) => `${lead} ${reason}`);
  return [
    ...pain,
    ...reasons(stopIf),
    contact,
    ...(getInTouchIf ? reasons(getInTouchIf) : []),
    ...reasons(emergencyIf),
  ];
}
