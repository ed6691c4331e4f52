// The clinic copy as finished words: the same plan as the sheet, with found and why, all the numbers,
// and the findings. For the record, so it speaks the trade's words; its looks are the template's.
import type { PlanNumbers } from '../../compute/numbers.ts';
import type { Finding } from '../../finding/finding.ts';
import { positionOf } from '../../finding/place.ts';
import type { Plan } from '../../model/plan.ts';
import type { Practice } from '../../model/practice.ts';
import type { TextGrade } from '../../readability/text-grade.ts';
import { type ChartView, muscleCharts, weekCharts } from '../charts/clinic-charts.ts';
import type { SentencesView, SheetView } from '../sheet/sheet-view.ts';
import { commaText } from '../words/amounts.ts';
import type { WordValues } from '../words/pattern.ts';
import { minutesOf, NOTHING, plainNumber, plainRange } from '../words/plain-number.ts';
import type { Words } from '../words/words.ts';
import {
  musclesTable,
  type SessionNumbersView,
  sessionNumbers,
  weeksTable,
  workTable,
} from './clinic-numbers.ts';
import { sheetInShort } from './sheet-in-short.ts';
import type { TableView } from './table-view.ts';

export interface ClinicView {
  readonly language: string;
  readonly direction: 'ltr' | 'rtl';
  readonly paper: 'a4' | 'letter';
  readonly practice: string;
  readonly contact: string;
  /** "Clinic copy: Ankle, back to hill walking". */
  readonly title: string;
  /** Plan, person, side, weeks, limits: a line each. */
  readonly facts: readonly string[];
  readonly visits: TableView;
  readonly sheetHeading: string;
  /** What the sheet says, in its own headings and sentences. */
  readonly sheet: readonly SentencesView[];
  /** Minutes a week and work by side, to look at. */
  readonly weekCharts: readonly ChartView[];
  readonly weeks: TableView;
  readonly work: TableView;
  readonly itemsHeading: string;
  /** What the numbers of the items are of: one session. */
  readonly itemsLead: string;
  readonly sessions: readonly SessionNumbersView[];
  /** One, or none where there is nothing to draw. */
  readonly muscleCharts: readonly ChartView[];
  readonly muscles: TableView;
  readonly openFindings: TableView;
  readonly acceptedFindings: TableView;
  /** At the foot of every page. */
  readonly foot: string;
}

export interface ClinicInput {
  readonly practice: Practice;
  readonly plan: Plan;
  readonly numbers: PlanNumbers;
  /** All of this plan, accepted ones too. */
  readonly findings: readonly Finding[];
  /** As it reads in the practice's language. */
  readonly sheet: SheetView;
  /** What the sheet itself is worded with. */
  readonly sheetWords: Words;
  readonly shortDay: SentencesView | null;
  readonly sheetNumber: string;
  /** How the sheet reads as handed out; null where it is not in English. */
  readonly reading: TextGrade | null;
  readonly words: Words;
}

export function clinicView(input: ClinicInput): ClinicView {
  const { practice, plan, numbers, findings, words } = input;
  const visit = plan.visits.at(-1)?.date ?? NOTHING;
  return {
    language: words.language,
    direction: words.direction,
    paper: practice.paper,
    practice: practice.name,
    contact: practice.contact,
    title: words.say('clinic.title', { title: plan.title }),
    facts: facts(input),
    visits: visitsTable(plan, words),
    sheetHeading: words.say('clinic.sheet-heading'),
    sheet: sheetInShort(input.sheet, input.shortDay),
    weekCharts: weekCharts(numbers, words),
    weeks: weeksTable(numbers, words),
    work: workTable(numbers, words),
    itemsHeading: words.say('clinic.items-heading'),
    itemsLead: words.say('clinic.items-lead'),
    sessions: sessionNumbers(numbers, words),
    muscleCharts: muscleCharts(numbers, words),
    muscles: musclesTable(numbers, words),
    openFindings: findingsTable(
      'open',
      findings.filter((one) => !one.accepted),
      words,
    ),
    acceptedFindings: findingsTable(
      'accepted',
      findings.filter((one) => one.accepted),
      words,
    ),
    foot: words.say('clinic.foot', { plan: plan.id, number: input.sheetNumber, visit }),
  };
}

function facts(input: ClinicInput): string[] {
  const { practice, plan, words, sheetNumber, reading } = input;
  const say = (key: string, values: WordValues) => words.say(`clinic.facts.${key}`, values);
  const { timeMs, kit, positionsToAvoid, concerns } = plan.limits;
  const named = (kind: 'kit' | 'positions' | 'concerns', ids: readonly string[]) =>
    commaText(
      words,
      ids.map((id) => words.look(kind, id) ?? id),
    );
  const by = plan.by === null ? undefined : practice.practitioners.get(plan.by);
  const profile = [plan.profile.ageBand, plan.profile.training].filter((one) => one !== null);
  return [
    plan.person === plan.id
      ? say('plan', { plan: plan.id, number: sheetNumber })
      : say('plan-of-person', { plan: plan.id, person: plan.person, number: sheetNumber }),
    ...languageFact(input),
    ...(by ? [say('by', { by })] : []),
    say('weeks', { n: plan.weeks, weeks: String(plan.weeks), starts: plan.starts }),
    say('next-visit', { date: plan.nextVisit ?? NOTHING }),
    say('affected', { side: words.say(`clinic.affected.${plan.affected}`) }),
    ...(profile.length > 0 ? [say('profile', { profile: commaText(words, profile) })] : []),
    ...(concerns.length > 0 ? [say('concerns', { concerns: named('concerns', concerns) })] : []),
    ...(timeMs === null
      ? []
      : [say('time', { minutes: plainRange(minutesOf([timeMs, timeMs]), 1, words) })]),
    ...(kit === null ? [] : [say('kit', { kit: named('kit', kit) || NOTHING })]),
    ...(positionsToAvoid.length > 0
      ? [say('positions', { positions: named('positions', positionsToAvoid) })]
      : []),
    reading === null
      ? words.say('clinic.facts.reading-english-only')
      : say('reading', {
          flesch_kincaid: plainNumber(reading.fleschKincaid, 1, words),
          smog: plainNumber(reading.smog, 1, words),
        }),
  ];
}

/** Said where the sheet is in another language than its record. */
function languageFact({ words, sheetWords }: ClinicInput): readonly string[] {
  const { language, reviewedBy } = sheetWords;
  if (language === words.language) return [];
  return reviewedBy === null
    ? [words.say('clinic.facts.language-unreviewed', { language })]
    : [words.say('clinic.facts.language', { language, by: reviewedBy })];
}

function visitsTable(plan: Plan, words: Words): TableView {
  return {
    heading: words.say('clinic.visits.heading'),
    columns: ['date', 'found', 'why'].map((column) => words.say(`clinic.visits.${column}`)),
    rows: plan.visits.map(({ date, found, why }) => ({
      head: date,
      cells: [found ?? NOTHING, why ?? NOTHING],
    })),
    none: '',
  };
}

function findingsTable(
  kind: 'open' | 'accepted',
  findings: readonly Finding[],
  words: Words,
): TableView {
  const isAccepted = kind === 'accepted';
  const columns = ['place', 'severity', 'check', 'message', ...(isAccepted ? ['reason'] : [])];
  return {
    heading: words.say(`clinic.findings.${kind}`),
    columns: columns.map((column) => words.say(`clinic.findings.${column}`)),
    rows: findings.map(({ place, severity, check, message, accepted }) => ({
      head: `${place.source.file}:${positionOf(place).line}`,
      cells: [
        words.say(`clinic.severity.${severity}`),
        check,
        message,
        ...(accepted ? [accepted.why] : []),
      ],
    })),
    none: words.say(`clinic.findings.none-${kind}`),
  };
}
