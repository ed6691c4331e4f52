// All that differs between two versions of a plan, in the words of the trade: settings, plan, sessions,
// items, exercises, then whatever the sheets still differ in. Each says whether it shows on the sheet.
import type { PlanNumbers } from '../../compute/numbers.ts';
import { type MatchedPlan, matchPlans } from '../../diff/match.ts';
import type { Plan, Session } from '../../model/plan.ts';
import type { Practice } from '../../model/practice.ts';
import { painOf } from '../sheet/safety-view.ts';
import type { SheetView } from '../sheet/sheet-view.ts';
import { shownOf } from '../sheet/shown-week.ts';
import type { Words } from '../words/words.ts';
import type { Change, JudgedChange, Subject } from './change.ts';
import { compareFacts } from './compare-facts.ts';
import { exerciseChanges } from './exercise-changes.ts';
import { type Fact, whole } from './fact.ts';
import { itemChanges } from './item-changes.ts';
import { measures, without } from './number-facts.ts';
import { DATED, planFacts } from './plan-facts.ts';
import { practiceFacts } from './practice-facts.ts';
import { type FactSetting, firstSchedule, partFacts, sessionFacts } from './session-facts.ts';
import { differingSections, sentencesOf } from './sheet-sections.ts';

/** A plan in one version, with the settings and the sheet of that version. */
export interface PlanVersion {
  readonly practice: Practice;
  readonly plan: Plan;
  /** Null where an error leaves it without numbers. */
  readonly numbers: PlanNumbers | null;
  /** Null where it gets no sheet. */
  readonly sheet: SheetView | null;
}

export interface PlanChanges {
  readonly changes: readonly JudgedChange[];
  /** Numbers by week; empty where a version has none. */
  readonly effect: readonly Change[];
  /** Of the longer version. */
  readonly weeks: number;
  /** The week that the later sheet shows: what lies before it is over. */
  readonly firstWeek: number;
}

export interface Comparing {
  /** The practice's words; both versions are told in them, so that other words are no change. */
  readonly words: Words;
  /** Exercises whose file was renamed: old id to new. */
  readonly renamed: ReadonlyMap<string, string>;
}

export function planChanges(
  before: PlanVersion,
  after: PlanVersion,
  comparing: Comparing,
): PlanChanges {
  const { words, renamed } = comparing;
  const matched = matchPlans(before.plan, after.plan, renamed);
  const hasNumbers = before.numbers !== null && after.numbers !== null;
  const setting = (
    { plan, numbers }: PlanVersion,
    idNow: FactSetting['idNow'],
    placeNow: FactSetting['placeNow'],
  ): FactSetting => ({
    plan,
    placeNow,
    // Both are told the same way, or nothing could be compared.
    numbers: hasNumbers ? numbers : null,
    words,
    idNow,
  });
  const then = setting(before, (id) => renamed.get(id) ?? id, placesNow(matched));
  const now = setting(
    after,
    (id) => id,
    (place) => place,
  );
  const changes = [
    ...compareFacts(
      subjectOf(
        'practice',
        named('practice', before.practice.name),
        named('practice', after.practice.name),
      ),
      practiceFacts(before.practice, words),
      practiceFacts(after.practice, words),
    ),
    ...compareFacts(
      subjectOf('plan', planName(before.plan), planName(after.plan)),
      [
        ...planFacts(before.plan, painOf(before.plan, before.practice), words),
        ...(hasNumbers ? weekShown(before, words) : []),
      ],
      [
        ...planFacts(after.plan, painOf(after.plan, after.practice), words),
        ...(hasNumbers ? weekShown(after, words) : []),
      ],
    ),
    ...sessionChanges(matched, then, now),
    ...itemChanges(matched, then, now),
    ...exerciseChanges(matched, then, now),
  ];
  const judged = judge(changes, before, after);
  return {
    changes: [...judged, ...untold(judged, before, after, words)],
    effect: hasNumbers ? effectOf(before, after, matched, words) : [],
    weeks: Math.max(before.plan.weeks, after.plan.weeks),
    firstWeek: after.numbers ? shownOf(after.numbers).week.week : 1,
  };
}

/** Session and part as the later version has them, so that a new name alone is no move. */
function placesNow({ sessions, parts }: MatchedPlan): FactSetting['placeNow'] {
  const session = new Map(sessions.pairs.map((pair) => [pair.before, pair.after] as const));
  const part = new Map(parts.pairs.map((pair) => [pair.before.part, pair.after.part] as const));
  return (place) => ({
    session: session.get(place.session) ?? place.session,
    part: part.get(place.part) ?? place.part,
  });
}

/** The same changes, as the way back has them. */
export function mirrored<T extends Change>(changes: readonly T[]): readonly T[] {
  return changes.map((change) => ({
    ...change,
    subject: { ...change.subject, before: change.subject.after, after: change.subject.before },
    steps: change.steps.map(({ weeks, before, after }) => ({
      weeks,
      before: after,
      after: before,
    })),
  }));
}

function subjectOf(
  kind: Subject['kind'],
  before: Subject['before'],
  after: Subject['after'],
): Subject {
  return { kind, before, after };
}

function named(id: string, name: string): Subject['before'] {
  return { id, name };
}

function planName({ id, title }: Plan): Subject['before'] {
  return { id, name: title };
}

/** Which week's doses the sheet shows in bold: the last visit settles it. */
function weekShown({ numbers }: PlanVersion, words: Words): readonly Fact[] {
  if (!numbers) return [];
  return [
    whole(
      'week-shown',
      words.say('changes.week', { week: String(shownOf(numbers).week.week) }),
      DATED,
    ),
  ];
}

function sessionChanges(
  { sessions, parts }: MatchedPlan,
  then: FactSetting,
  now: FactSetting,
): readonly Change[] {
  const sessionNamed = ({ id, name }: Session) => named(id, name ?? id);
  const came = (session: Session, isThere: boolean): Change => {
    const name = sessionNamed(session);
    const lines = [firstSchedule(session, isThere ? now : then)];
    return {
      subject: subjectOf('session', isThere ? null : name, isThere ? name : null),
      aspect: 'presence',
      side: null,
      steps: [{ weeks: null, before: isThere ? [] : lines, after: isThere ? lines : [] }],
      shows: DATED,
    };
  };
  return [
    ...sessions.removed.map((one) => came(one, false)),
    ...sessions.added.map((one) => came(one, true)),
    ...sessions.pairs.flatMap(({ before, after }) =>
      compareFacts(
        subjectOf('session', sessionNamed(before), sessionNamed(after)),
        [...sessionFacts(before, then), whole('id', before.id, [])],
        [...sessionFacts(after, now), whole('id', after.id, [])],
      ),
    ),
    ...parts.pairs.flatMap(({ before, after }) => {
      const partNamed = ({ session, part }: typeof before) =>
        named(
          `${session.id}/${part.kind}`,
          `${session.name ?? session.id}, ${part.name ?? part.kind}`,
        );
      return compareFacts(
        subjectOf('part', partNamed(before), partNamed(after)),
        partFacts(before.part, then),
        partFacts(after.part, now),
      );
    }),
  ];
}

/** A change shows if a section that it can show in differs, and not only in weeks that no sheet shows any more. */
function judge(
  changes: readonly Change[],
  before: PlanVersion,
  after: PlanVersion,
): readonly JudgedChange[] {
  const { sheet: then } = before;
  const { sheet: now } = after;
  if (!then || !now) return changes.map((change) => ({ ...change, isOnSheet: null }));
  const differing = differingSections(then, now);
  const firstShown = Math.min(
    ...[before, after].map(({ numbers }) => (numbers ? shownOf(numbers).week.week : 1)),
  );
  return changes.map((change) => ({
    ...change,
    isOnSheet:
      change.shows.some((section) => differing.includes(section)) &&
      change.steps.some(({ weeks }) => weeks === null || weeks[1] >= firstShown),
  }));
}

/** Sections that differ though no change says so, as after other words of the practice's own pack. */
function untold(
  told: readonly JudgedChange[],
  before: PlanVersion,
  after: PlanVersion,
  words: Words,
): readonly JudgedChange[] {
  if (!before.sheet || !after.sheet) return [];
  const [then, now] = [before.sheet, after.sheet];
  const shown = told.filter(({ isOnSheet }) => isOnSheet).flatMap(({ shows }) => shows);
  return differingSections(then, now)
    .filter((section) => !shown.includes(section))
    .flatMap((section) => {
      const name = named(section, words.say(`changes.sections.${section}`));
      const changes = compareFacts(
        subjectOf('sheet', name, name),
        [whole('sheet-words', sentencesOf(then, section), [section])],
        [whole('sheet-words', sentencesOf(now, section), [section])],
      );
      return changes.map((change) => ({ ...change, isOnSheet: true }));
    });
}

function effectOf(
  before: PlanVersion,
  after: PlanVersion,
  { sessions }: MatchedPlan,
  words: Words,
): readonly Change[] {
  if (!before.numbers || !after.numbers) return [];
  const idNow = new Map(sessions.pairs.map((pair) => [pair.before, pair.after.id] as const));
  const weeks = Math.max(before.plan.weeks, after.plan.weeks);
  const then = measures(before.numbers, {
    words,
    weeks,
    sessionId: (one) => idNow.get(one) ?? one.id,
  });
  const now = measures(after.numbers, { words, weeks, sessionId: ({ id }) => id });
  const ids = [...new Set([...now, ...then].map(({ id }) => id))];
  return ids.flatMap((id) => {
    const [one, two] = [then.find((each) => each.id === id), now.find((each) => each.id === id)];
    const known = two ?? one;
    if (!known) return [];
    const name = { id, name: known.name };
    return compareFacts(
      subjectOf('plan', name, name),
      (one ?? without(known)).facts,
      (two ?? without(known)).facts,
    );
  });
}
