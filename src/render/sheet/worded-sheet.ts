// A plan with its numbers as the finished words of its sheet, in the week of the last visit.
// The sections have files of their own; here they come together in the order of the contract.
import type { PlanNumbers } from '../../compute/numbers.ts';
import type { Plan } from '../../model/plan.ts';
import { type Person, type Practice, practiceIn } from '../../model/practice.ts';
import { closed } from '../words/amounts.ts';
import { fullDayText, plainDayText } from '../words/date-words.ts';
import { kitTexts, laterKitTexts } from '../words/kit-words.ts';
import { raised, type Words } from '../words/words.ts';
import { sessionView } from './days-view.ts';
import { exerciseSessions } from './exercise-groups.ts';
import { numbered, type Slot, slotsOf } from './exercise-slots.ts';
import { growthView } from './growth-view.ts';
import type { LastTime } from './news-input.ts';
import { newsOf } from './news-view.ts';
import { painOf, safetyView } from './safety-view.ts';
import type { HeadView, PutReadyView, SentencesView, SheetView } from './sheet-view.ts';
import { type Shown, shownOf } from './shown-week.ts';
import { tickView } from './tick-view.ts';

export interface SheetInput {
  readonly practice: Practice;
  readonly plan: Plan;
  readonly numbers: PlanNumbers;
  /** Null where people.yaml does not have the plan's person. */
  readonly person: Person | null;
  readonly words: Words;
  /** What the sheet before was made from; null or left out where none is known. */
  readonly last?: LastTime | null;
}

/** The sheet of a plan in the week of its last visit. */
export function sheetView(input: SheetInput): SheetView {
  const { plan, numbers, person, words, last = null } = input;
  const practice = practiceIn(input.practice, words.language);
  const shown = shownOf(numbers);
  const slotsByWeek = new Map(
    numbers.weeks.map((week) => [week.week, slotsOf(week, plan, words)] as const),
  );
  const slots = slotsByWeek.get(shown.week.week) ?? [];
  const numbering = numbered(slots, (slot) => futureOf(slot, shown, slotsByWeek));
  const laterSlots = shown.later.flatMap((one) => slotsByWeek.get(one.week) ?? []);
  const pain = painOf(plan, practice);
  const news = last && newsOf({ words, practice, numbers, shown, slots, numbering, last });
  const { week, later, from } = shown;
  return {
    language: words.language,
    direction: words.direction,
    plan: plan.id,
    head: headView(words, practice, plan, person, shown),
    goals: sentencesView(
      words,
      'sheet.goals',
      plan.goals.map((goal) => closed(words, goal)),
    ),
    news: news?.view ?? null,
    safety: safetyView(words, plan, practice),
    days: {
      heading: words.say('sheet.days'),
      sessions: week.sessions.map((session) => {
        const own = slots.filter((slot) => slot.session === session);
        const list = own.map(({ id }) => numbering.bySlot.get(id) as number);
        return sessionView(words, { plan, session, numbers: list, from });
      }),
    },
    putReady: putReadyView(words, plan, slots, laterSlots),
    exercises: {
      heading: words.say('sheet.exercises-heading'),
      sessions: exerciseSessions({
        words,
        plan,
        pain,
        slots,
        numbering,
        from,
        marks: news?.marks ?? new Map(),
      }),
    },
    normal: {
      heading: words.say('sheet.normal'),
      sentences: [
        words.say('sheet.normal-tired'),
        words.say(isOnceADay(numbers) ? 'sheet.normal-missed' : 'sheet.normal-missed-one'),
        words.say('sheet.normal-missed-week'),
      ],
    },
    growth: growthView({
      words,
      practice,
      numbers,
      shown: week,
      later,
      slotsByWeek,
      numbering,
    }),
    tick: tickView(words, numbers, shown),
    caution: [words.say('sheet.caution-person'), words.say('sheet.caution-advice')],
    footer: { contact: practice.contact, visitDate: plainDayText(words, shown.visit) },
  };
}

/** Whether no session ever comes more than once a day, so that a day is what can be missed. */
function isOnceADay({ weeks }: PlanNumbers): boolean {
  return weeks.every(({ sessions }) => sessions.every(({ timesADay }) => timesADay[1] === 1));
}

function headView(
  words: Words,
  practice: Practice,
  plan: Plan,
  person: Person | null,
  shown: Shown,
): HeadView {
  const practitioner = plan.by === null ? null : (practice.practitioners.get(plan.by) ?? null);
  const from = fullDayText(words, shown.from);
  return {
    unreviewed: words.unreviewed,
    practice: practice.name,
    contact: practice.contact,
    practitioner: practitioner === null ? null : words.say('sheet.practitioner', { practitioner }),
    person: person?.name ? words.say('sheet.person', { person: person.name }) : null,
    title: plan.title,
    dates:
      shown.from < shown.to
        ? words.say('sheet.dates', { from, to: fullDayText(words, shown.to) })
        : words.say('sheet.date', { from }),
    nextVisit:
      plan.nextVisit === null
        ? null
        : words.say('sheet.next-visit', { date: fullDayText(words, plan.nextVisit) }),
  };
}

function putReadyView(
  words: Words,
  plan: Plan,
  slots: readonly Slot[],
  laterSlots: readonly Slot[],
): PutReadyView | null {
  const things = kitTexts(words, slots, plan).map(raised);
  const later = laterKitTexts(words, slots, laterSlots, plan).map(raised);
  const precautions = sentencesView(
    words,
    'sheet.take-care',
    plan.precautions.map((precaution) => closed(words, precaution)),
  );
  const kit =
    things.length + later.length === 0
      ? null
      : {
          heading: words.say('sheet.put-ready'),
          things,
          later:
            later.length === 0
              ? null
              : { lead: words.say('sheet.put-ready-later'), reasons: later },
        };
  return kit === null && precautions === null ? null : { kit, precautions };
}

function sentencesView(
  words: Words,
  key: string,
  sentences: readonly string[],
): SentencesView | null {
  return sentences.length === 0 ? null : { heading: words.say(key), sentences };
}

/** What a slot holds in the weeks after the one shown, and when it may, as one text to compare by. */
function futureOf(
  slot: Slot,
  { week, later }: Shown,
  slotsByWeek: ReadonlyMap<number, readonly Slot[]>,
): string {
  const weeks = [week, ...later].map((one) => {
    const now = slotsByWeek.get(one.week)?.find(({ id }) => id === slot.id);
    if (!now) return null;
    const { place: _, ...gate } = now.item.moveOnWhen ?? { place: null };
    return [now.identity, now.item.advance, gate];
  });
  return JSON.stringify(weeks);
}
