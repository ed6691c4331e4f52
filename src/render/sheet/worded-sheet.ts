// A plan with its numbers as the finished words of its sheet, in the week of the last visit.
// The sections have files of their own; here they come together in the order of the contract.
import type { PlanNumbers } from '../../compute/numbers.ts';
import type { Plan } from '../../model/plan.ts';
import type { Person, Practice } from '../../model/practice.ts';
import { closed, commaText } from '../words/amounts.ts';
import { fullDayText, plainDayText, yearOf } from '../words/date-words.ts';
import { kitTexts, laterKitTexts } from '../words/kit-words.ts';
import { raised, type Words } from '../words/words.ts';
import { sessionView } from './days-view.ts';
import { exerciseGroups } from './exercise-groups.ts';
import { numbered, type Slot, slotsOf } from './exercise-slots.ts';
import { growthView } from './growth-view.ts';
import { safetyView } from './safety-view.ts';
import type { HeadView, SentencesView, SheetView } from './sheet-view.ts';
import { type Shown, shownOf } from './shown-week.ts';
import { tickView } from './tick-view.ts';

export interface SheetInput {
  readonly practice: Practice;
  readonly plan: Plan;
  readonly numbers: PlanNumbers;
  /** Null where people.yaml does not have the plan's person. */
  readonly person: Person | null;
  readonly words: Words;
}

/** The sheet of a plan in the week of its last visit. */
export function sheetView({ practice, plan, numbers, person, words }: SheetInput): SheetView {
  const shown = shownOf(numbers);
  const year = yearOf(shown.from);
  const slotsByWeek = new Map(
    numbers.weeks.map((week) => [week.week, slotsOf(week, plan, words)] as const),
  );
  const slots = slotsByWeek.get(shown.week.week) ?? [];
  const numbering = numbered(slots, (slot) => futureOf(slot, shown, slotsByWeek));
  const kit = kitTexts(words, slots, plan);
  const laterSlots = shown.later.flatMap((one) => slotsByWeek.get(one.week) ?? []);
  const laterKit = laterKitTexts(words, slots, laterSlots, plan);
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
    safety: safetyView(words, plan, practice),
    days: {
      heading: words.say('sheet.days'),
      sessions: week.sessions.map((session) => {
        const own = slots.filter((slot) => slot.session === session);
        const list = own.map(({ id }) => numbering.bySlot.get(id) as number);
        return sessionView(words, { plan, session, numbers: list, from, year });
      }),
    },
    putReady: sentencesView(words, 'sheet.put-ready', [
      ...(kit.length > 0 ? [raised(closed(words, commaText(words, kit)))] : []),
      ...(laterKit.length > 0
        ? [words.say('sheet.later-kit', { kit: commaText(words, laterKit) })]
        : []),
      ...plan.precautions.map((precaution) => closed(words, precaution)),
    ]),
    exercises: {
      heading: words.say('sheet.exercises-heading'),
      groups: exerciseGroups(words, slots, numbering),
    },
    normal: {
      heading: words.say('sheet.normal'),
      sentences: [
        words.say('sheet.normal-tired'),
        words.say(isOnceADay(numbers) ? 'sheet.normal-missed' : 'sheet.normal-missed-one'),
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
      year,
    }),
    tick: tickView(words, plan, shown, year),
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
