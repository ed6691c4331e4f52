// The list of all handouts as finished words: where each plan stands today, and the way to its pages.
// The one page that knows today's date; which sheets there are, and why one is not, is the build's.
import type { PlanNumbers, WeekNumbers } from '../../compute/numbers.ts';
import { compareText, type Finding } from '../../finding/finding.ts';
import type { Plan } from '../../model/plan.ts';
import type { Practice } from '../../model/practice.ts';
import { addDays, type Day, weekOf } from '../../units/day.ts';
import { minutesText } from '../words/amounts.ts';
import type { Words } from '../words/words.ts';

export interface IndexView {
  readonly language: string;
  readonly direction: 'ltr' | 'rtl';
  readonly paper: 'a4' | 'letter';
  readonly practice: string;
  readonly title: string;
  /** "As of 2026-10-20." */
  readonly asOf: string;
  readonly plansHeading: string;
  readonly columns: readonly string[];
  readonly ordersLabel: string;
  /** The same plans in several orders, of which the page shows one: sorting without a script. */
  readonly orders: readonly IndexOrderView[];
  readonly noPlans: string;
  readonly withoutHeading: string;
  readonly without: readonly PlanWithoutSheetView[];
  readonly foot: string;
}

export interface IndexOrderView {
  /** The anchor that shows it. */
  readonly id: string;
  readonly name: string;
  readonly plans: readonly IndexedPlanView[];
}

export interface IndexedPlanView {
  /** "M-0412: Ankle, back to hill walking". */
  readonly name: string;
  /** In pieces that are not broken over two lines: "Week 3 of 8," and "2026-10-06 to 2026-11-30". */
  readonly weeks: readonly string[];
  readonly nextVisit: string;
  /** The day of the last change. */
  readonly lastVisit: string;
  readonly minutes: string;
  readonly findings: string;
  readonly sheetNumber: string;
  readonly links: readonly { readonly file: string; readonly name: string }[];
}

export interface PlanWithoutSheetView {
  readonly name: string;
  readonly why: string;
}

export interface IndexedPlan {
  readonly plan: Plan;
  readonly numbers: PlanNumbers;
  readonly findings: readonly Finding[];
  readonly sheetNumber: string;
}

export interface PlanWithoutSheet {
  readonly plan: string;
  readonly title: string | null;
  /** One sentence. */
  readonly why: string;
}

export interface IndexInput {
  readonly practice: Practice;
  readonly plans: readonly IndexedPlan[];
  readonly without: readonly PlanWithoutSheet[];
  readonly today: Day;
  readonly words: Words;
}

const COLUMNS = [
  'plan',
  'weeks',
  'next-visit',
  'last-visit',
  'minutes',
  'findings',
  'number',
  'pages',
] as const;

export function indexView({ practice, plans, without, today, words }: IndexInput): IndexView {
  const title = words.say('index.title', { practice: practice.name });
  return {
    language: words.language,
    direction: words.direction,
    paper: practice.paper,
    practice: practice.name,
    title,
    asOf: words.say('index.as-of', { date: today }),
    plansHeading: words.say('index.plans'),
    columns: COLUMNS.map((column) => words.say(`index.columns.${column}`)),
    ordersLabel: words.say('index.orders.label'),
    orders: plans.length === 0 ? [] : ORDERS.map((order) => orderView(order, plans, today, words)),
    noPlans: words.say('index.no-plans'),
    withoutHeading: words.say('index.without'),
    without: [...without]
      .sort((a, b) => compareText(a.plan, b.plan))
      .map(({ plan, title: name, why }) => ({
        name: name === null ? plan : `${plan}: ${name}`,
        why,
      })),
    foot: title,
  };
}

interface Order {
  readonly id: 'code' | 'next-visit' | 'last-visit' | 'findings';
  /** Smaller comes first; equals by code. */
  readonly key: (one: IndexedPlan) => string;
}

/** A plan without a next visit comes after those with one. */
const LAST = '9999-99-99';

const ORDERS: readonly Order[] = [
  { id: 'code', key: () => '' },
  { id: 'next-visit', key: ({ plan }) => plan.nextVisit ?? LAST },
  { id: 'last-visit', key: ({ plan }) => plan.visits.at(-1)?.date ?? LAST },
  { id: 'findings', key: ({ findings }) => (openOf(findings).length > 0 ? 'a' : 'b') },
];

function orderView(
  order: Order,
  plans: readonly IndexedPlan[],
  today: Day,
  words: Words,
): IndexOrderView {
  const sorted = [...plans].sort(
    (a, b) => compareText(order.key(a), order.key(b)) || compareText(a.plan.id, b.plan.id),
  );
  return {
    id: `by-${order.id}`,
    name: words.say(`index.orders.${order.id}`),
    plans: sorted.map((one) => indexedPlan(one, today, words)),
  };
}

function openOf(findings: readonly Finding[]): readonly Finding[] {
  return findings.filter((one) => !one.accepted);
}

function indexedPlan(
  { plan, numbers, findings, sheetNumber }: IndexedPlan,
  today: Day,
  words: Words,
): IndexedPlanView {
  const now = Math.min(Math.max(weekOf(plan.starts, today), 1), plan.weeks);
  const week = numbers.weeks.find((one) => one.week === now);
  return {
    name: `${plan.id}: ${plan.title}`,
    weeks: weeksShown(plan, today, words).split(/(?<=[,;،؛])\s+/),
    nextVisit: nextVisitShown(plan, today, words),
    lastVisit: plan.visits.at(-1)?.date ?? '',
    minutes: week ? minutesShown(week, words) : '',
    findings: findingsShown(findings, words),
    sheetNumber,
    links: [
      { file: `${plan.id}.html`, name: words.say('index.links.sheet') },
      { file: `${plan.id}.md`, name: words.say('index.links.markdown') },
      { file: `${plan.id}.clinic.html`, name: words.say('index.links.clinic') },
    ],
  };
}

function weeksShown(plan: Plan, today: Day, words: Words): string {
  const week = weekOf(plan.starts, today);
  const key = week < 1 ? 'before' : week > plan.weeks ? 'over' : 'now';
  return words.say(`index.weeks.${key}`, {
    n: plan.weeks,
    week: String(week),
    weeks: String(plan.weeks),
    from: plan.starts,
    to: addDays(plan.starts, 7 * plan.weeks - 1),
  });
}

function nextVisitShown({ nextVisit }: Plan, today: Day, words: Words): string {
  if (nextVisit === null) return words.say('index.next-visit.none');
  const key = nextVisit < today ? 'past' : nextVisit === today ? 'today' : 'ahead';
  return words.say(`index.next-visit.${key}`, { date: nextVisit });
}

function minutesShown(week: WeekNumbers, words: Words): string {
  const sessions = week.sessions.map(({ session, name, ms }) =>
    words.say('index.minutes.session', {
      session: name ?? session.name ?? session.id,
      minutes: minutesText(words, ms),
    }),
  );
  return [
    ...sessions,
    words.say('index.minutes.week', { minutes: minutesText(words, week.ms) }),
  ].join(' ');
}

function findingsShown(findings: readonly Finding[], words: Words): string {
  const open = openOf(findings);
  const counts = (['error', 'warning', 'note'] as const).flatMap((severity) => {
    const n = open.filter((one) => one.severity === severity).length;
    return n > 0 ? [words.say(`index.findings.${severity}`, { n, count: String(n) })] : [];
  });
  return counts.length > 0 ? counts.join(', ') : words.say('index.findings.none');
}
