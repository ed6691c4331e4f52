// What a published source expects of a plan: the words of expected.yaml, read strictly, and where
// the numbers of `show` answer them. The sums of a session over its items are made here, because
// the contract gives volumes by item and by week. Which folders there are is the runner's business.
import { parse } from 'yaml';
import type { showData } from '../support/show-data.ts';

type ShowData = ReturnType<typeof showData>;
type Week = ShowData['weeks'][number];
type Session = Week['sessions'][number];
type Interval = readonly [number, number];

/** One number that the source states, or that we worked out by hand from its scheme. */
export interface Expectation {
  readonly what: string;
  /** `authors` printed this number; `us`: it follows from their scheme by arithmetic. */
  readonly stated: 'authors' | 'us';
  /** Only where this number is known in another way than the whole source. */
  readonly how?: string;
  readonly quantity: string;
  /** The practitioner's unit; without it seconds stay seconds. */
  readonly unit?: 'minutes';
  readonly side?: 'left' | 'right' | 'middle';
  readonly muscle?: string;
  /** One go of this session; without it the whole week. */
  readonly session?: string;
  readonly part?: string;
  readonly item?: string;
  /** A week's number; `all`: so in every week; `each`: one of `values` a week; `sum`: all added. */
  readonly week: number | 'all' | 'each' | 'sum';
  readonly value?: number;
  readonly low?: number;
  readonly high?: number;
  readonly values?: readonly number[];
}

/** A source, how it is known, and what its plans should come to. */
export interface Source {
  readonly source: string;
  readonly how: string;
  readonly checked: string;
  readonly stated_by_us: readonly string[];
  readonly plans: Readonly<Record<string, readonly Expectation[]>>;
}

const rule = 'common practice, no source';
const waysOfKnowing = ['found', 'secondary', 'from memory', 'definition', rule];
const volumes = ['sets', 'reps', 'hold_seconds', 'work_seconds', 'volume_kg'] as const;
const quantities = [...volumes, 'seconds', 'sessions', 'muscle_sets'];
const expectationKeys =
  'what stated how quantity unit side muscle session part item week value low high values'.split(
    ' ',
  );

/** The source that a folder's expected.yaml tells of; anything unclear in it is refused. */
export function parseSource(text: string, file: string): Source {
  const source = parse(text) as Source;
  const refuse = (why: string): never => {
    throw new Error(`${file}: ${why}`);
  };
  const known = ['source', 'how', 'checked', 'stated_by_us', 'plans'];
  for (const key of known) if (!(key in source)) refuse(`${key} is missing`);
  for (const key of Object.keys(source)) if (!known.includes(key)) refuse(`unknown key ${key}`);
  if (!waysOfKnowing.includes(source.how)) refuse(`unknown how: ${source.how}`);
  for (const [plan, rows] of Object.entries(source.plans)) {
    if (!Array.isArray(rows) || rows.length === 0) refuse(`${plan} expects nothing`);
    for (const row of rows) {
      const flaw = expectationFlaw(row);
      if (flaw !== undefined) refuse(`${plan}, ${row.what ?? 'no what'}: ${flaw}`);
    }
  }
  return source;
}

/** What is wrong with an expectation, so that a slip of the pen never passes as a green test. */
function expectationFlaw(row: Expectation): string | undefined {
  const unknown = Object.keys(row).find((key) => !expectationKeys.includes(key));
  if (unknown !== undefined) return `unknown key ${unknown}`;
  if (!row.what) return 'what is missing';
  if (row.stated !== 'authors' && row.stated !== 'us') return 'stated is authors or us';
  if (row.how !== undefined && !waysOfKnowing.includes(row.how)) return `unknown how: ${row.how}`;
  if (!quantities.includes(row.quantity)) return `unknown quantity ${row.quantity}`;
  if (row.unit !== undefined && (row.unit !== 'minutes' || !row.quantity.endsWith('seconds'))) {
    return 'unit is minutes, of a quantity of seconds';
  }
  const needsSide = row.quantity !== 'seconds' && row.quantity !== 'sessions';
  if (needsSide !== ['left', 'right', 'middle'].includes(row.side ?? '')) {
    return needsSide ? 'side is missing' : 'this quantity has no side';
  }
  if ((row.quantity === 'muscle_sets') !== (row.muscle !== undefined)) {
    return 'muscle_sets and muscle go together';
  }
  if (row.quantity === 'sessions' && row.session === undefined) return 'which session?';
  if (row.muscle !== undefined && row.session !== undefined) return 'muscles are counted by week';
  if (row.session === undefined && (row.part ?? row.item) !== undefined) return 'which session?';
  return weekFlaw(row) ?? numberFlaw(row);
}

function weekFlaw(row: Expectation): string | undefined {
  const named = row.week === 'all' || row.week === 'each' || row.week === 'sum';
  return named || Number.isInteger(row.week) ? undefined : 'week is a number, all, each or sum';
}

function numberFlaw(row: Expectation): string | undefined {
  const isRange = row.low !== undefined && row.high !== undefined;
  const forms = [row.value !== undefined, isRange, row.values !== undefined];
  if (forms.filter(Boolean).length !== 1) return 'one of value, low and high, or values';
  if ((row.low === undefined) !== (row.high === undefined)) return 'low and high go together';
  if ((row.week === 'each') !== (row.values !== undefined)) return 'each and values go together';
  const numbers = [row.value, row.low, row.high, ...(row.values ?? [])];
  const allNumbers = numbers.every((n) => n === undefined || typeof n === 'number');
  return allNumbers ? undefined : 'a number is expected';
}

/** The intervals that the source expects, one for each that `measuredIntervals` gives. */
export function expectedIntervals(row: Expectation, weeks: number): readonly Interval[] {
  const scale = row.unit === 'minutes' ? 60 : 1;
  const scaled = (low: number, high: number): Interval => [low * scale, high * scale];
  if (row.values !== undefined) return row.values.map((n) => scaled(n, n));
  const one = scaled(row.low ?? row.value ?? Number.NaN, row.high ?? row.value ?? Number.NaN);
  return row.week === 'all' ? Array.from({ length: weeks }, () => one) : [one];
}

/** The intervals that `show` gives for an expectation: of one week, of every week, or added up. */
export function measuredIntervals(data: ShowData, row: Expectation): readonly Interval[] {
  const weeks = typeof row.week === 'number' ? [weekNumbered(data, row.week)] : data.weeks;
  const found = weeks.map((week) => weekInterval(week, row));
  return row.week === 'sum' ? [sum(found)] : found;
}

function weekNumbered(data: ShowData, number: number): Week {
  const numbered = data.weeks.filter((week) => week.week === number);
  return only(numbered, `week ${number}`);
}

function weekInterval(week: Week, row: Expectation): Interval {
  if (row.session !== undefined) {
    const named = week.sessions.filter((session) => session.session === row.session);
    return sessionInterval(only(named, `session ${row.session} in week ${week.week}`), row);
  }
  if (row.quantity === 'seconds') return week.seconds;
  const side = row.side ?? 'middle';
  if (row.muscle === undefined) return week[side][volumeKey(row)];
  const muscle = week.muscles[row.muscle];
  if (muscle === undefined) throw new Error(`no muscle ${row.muscle} in week ${week.week}`);
  return muscle[side];
}

function sessionInterval(session: Session, row: Expectation): Interval {
  if (row.quantity === 'sessions') return session.per_week;
  const parts = chosen(session.parts, row.part, (part) => part.part);
  const items = chosen(
    parts.flatMap((part) => part.items),
    row.item,
    (item) => item.as,
  );
  if (row.quantity !== 'seconds') {
    const side = row.side ?? 'middle';
    return sum(items.map((item) => item[side]?.[volumeKey(row)] ?? [0, 0]));
  }
  if (row.item !== undefined) return sum(items.map((item) => item.seconds));
  return row.part === undefined ? session.seconds : sum(parts.map((part) => part.seconds));
}

/** All of them, or the one that is named; a name that fits none or two is an error. */
function chosen<T>(all: readonly T[], name: string | undefined, nameOf: (one: T) => string) {
  if (name === undefined) return all;
  const named = all.filter((one) => nameOf(one) === name);
  return [only(named, name)];
}

function volumeKey(row: Expectation): (typeof volumes)[number] {
  const key = volumes.find((volume) => volume === row.quantity);
  if (key === undefined) throw new Error(`${row.quantity} is no volume of a side`);
  return key;
}

function only<T>(found: readonly T[], what: string): T {
  const [first] = found;
  if (first === undefined || found.length > 1)
    throw new Error(`${found.length} found of ${what}, one is wanted`);
  return first;
}

function sum(intervals: readonly Interval[]): Interval {
  return intervals.reduce<Interval>(([low, high], [l, h]) => [low + l, high + h], [0, 0]);
}
