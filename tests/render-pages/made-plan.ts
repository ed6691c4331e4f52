// A plan and its numbers made up by hand for three weeks: the contract's worked example (318 to 446
// seconds), one more set on the left from week 2, and an easy week 3.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'yaml';
import type {
  ItemWeek,
  PlanNumbers,
  SessionWeek,
  SideWork,
  Volume,
  WeekNumbers,
} from '../../src/compute/numbers.ts';
import { type Finding, finding } from '../../src/finding/finding.ts';
import type { Place } from '../../src/finding/place.ts';
import type { Dose } from '../../src/model/dose.ts';
import type { Exercise, Level } from '../../src/model/exercise.ts';
import type { Item, Part, Plan, Session } from '../../src/model/plan.ts';
import type { Practice } from '../../src/model/practice.ts';
import { type Words, wordsFrom } from '../../src/render/words/words.ts';
import { exactly, type Interval, ZERO } from '../../src/units/interval.ts';

const text = 'plan: M-0412\nperson: M-0412\n';
const place: Place = { source: { file: 'plans/M-0412.yaml', text }, start: 13, end: 19 };
const unsaid = { place, keyPlaces: new Map() };

export function englishWords(): Words {
  const pack: unknown = parse(
    readFileSync(join(import.meta.dirname, '../../templates/words/en.yaml'), 'utf8'),
  );
  const reading = wordsFrom(pack, { language: 'en', shipped: pack });
  if (!reading.ok) throw new Error(reading.problems.map((one) => one.message).join('\n'));
  return reading.words;
}

const level: Level = {
  id: 'one-foot',
  name: 'One foot',
  place,
  exerciseName: 'Heel raise',
  purposes: ['strength'],
  position: 'standing',
  sides: 'each',
  limb: 'leg',
  limbPlace: null,
  order: null,
  tempoWords: 'down-up',
  muscles: { prime: ['soleus'], assist: [] },
  kit: [],
  demands: [],
  tags: [],
  setup: [],
  steps: ['Rise'],
  feel: null,
  avoid: [],
  easier: null,
  harder: null,
  picture: null,
  figure: null,
  link: null,
  exerciseDose: null,
  levelDose: null,
  bounds: null,
  moveOnWhen: null,
  translations: new Map(),
};
const exercise: Exercise = {
  id: 'heel-raise',
  name: 'Heel raise',
  source: place.source,
  place,
  levels: [level],
  printed: [],
};

const item: Item = {
  ...unsaid,
  extent: place,
  id: 'heel-raise',
  exercise,
  level,
  windows: null,
  startWhen: null,
  fromWeek: [],
  accepts: [],
  dose: undefined,
  sides: undefined,
  only: undefined,
  order: undefined,
  climb: undefined,
  climbEvery: undefined,
  note: undefined,
  priority: undefined,
  moveOnWhen: undefined,
  advance: undefined,
};
const part: Part = {
  kind: 'strength',
  items: [item],
  windows: null,
  fromWeek: [],
  accepts: [],
  name: undefined,
  rounds: undefined,
  restBetweenRoundsMs: undefined,
  betweenItemsMs: undefined,
  place,
};
const session: Session = {
  id: 'strength-days',
  name: 'Strong ankle',
  schedule: { kind: 'days', days: ['mon', 'wed', 'fri'] },
  timesADay: undefined,
  betweenItemsMs: undefined,
  parts: [part],
  windows: null,
  fromWeek: [],
  accepts: [],
  place,
};

export const plan: Plan = {
  id: 'M-0412',
  source: place.source,
  place,
  person: 'M-0412',
  title: 'Ankle, back to <hill> walking',
  handoutLanguage: null,
  by: 'rk',
  visits: [
    { date: '2026-09-21', found: 'Limps & favours the right', why: null },
    { date: '2026-10-05', found: 'Walks without a limp', why: 'Ready for strength' },
  ],
  starts: '2026-10-06',
  nextVisit: '2026-11-16',
  weeks: 3,
  affected: 'left',
  print: 'normal',
  goals: ['Walk the coast path'],
  profile: { ageBand: '18-64', training: 'new' },
  limits: {
    timeMs: 1_500_000,
    kit: ['chair', 'step'],
    positionsToAvoid: ['kneeling'],
    concerns: ['osteoporosis'],
  },
  precautions: [],
  pain: null,
  stopIfAlso: [],
  easyWeeks: null,
  shortDayMs: null,
  betweenItemsMs: null,
  oneRepMax: new Map(),
  sessions: [session],
  report: new Map(),
  closed: null,
  accepts: [],
  printed: [],
  valuePlaces: new Map(),
};

export const practice = {
  name: 'Saltmarsh Movement Clinic',
  contact: 'Front desk, 555 0142',
  paper: 'a4',
  practitioners: new Map([['rk', 'R. Kestrel, physiotherapist']]),
} as unknown as Practice;

function dose(sets: number, easy: boolean): Dose {
  return {
    values: {
      sets: exactly(sets),
      reps: { kind: 'same', count: [8, 12] },
      hold: { unit: 'ms', range: exactly(2000) },
      move: { unit: 'ms', range: exactly(4000) },
      pause: { unit: 'ms', range: exactly(0) },
      rest: { unit: 'ms', range: exactly(60_000) },
      load: { kind: 'mass', unit: 'kg', pieces: 1, amount: exactly(4500) },
    },
    origins: {
      sets: easy
        ? { layer: 'easy-week' }
        : sets === 3
          ? { layer: 'side' }
          : { layer: 'from-week', week: 2 },
      reps: { layer: 'level' },
      hold: { layer: 'level' },
      move: { layer: 'exercise' },
      rest: { layer: 'exercise' },
      pause: { layer: 'timing' },
      load: { layer: 'climb' },
    },
  };
}

function volume(sets: number): Volume {
  const of = (low: number, high: number): Interval => [sets * low, sets * high];
  return {
    sets: exactly(sets),
    reps: of(8, 12),
    holdMs: of(16_000, 24_000),
    workMs: of(48_000, 72_000),
    volumeKg: of(36, 54),
  };
}

const none: Volume = { sets: ZERO, reps: ZERO, holdMs: ZERO, workMs: ZERO, volumeKg: ZERO };
const side = (sets: number, easy = false): SideWork => ({
  dose: dose(sets, easy),
  volume: volume(sets),
});

function week(
  n: number,
  left: number,
  right: number,
  ms: Interval,
  change: number | null,
): WeekNumbers {
  const isEasy = n === 3;
  const itemWeek: ItemWeek = {
    item,
    level,
    sides: 'each',
    order: 'each-set',
    left: side(left, isEasy),
    right: side(right, isEasy),
    middle: null,
    overrides:
      left === right ? null : { left: null, right: null, why: 'Left calf is catching up', place },
    note: null,
    priority: 'should',
    moveOnWhen: null,
    advance: 'when-ready',
    ms,
  };
  const sessionWeek: SessionWeek = {
    session,
    name: 'Strong ankle',
    schedule: session.schedule,
    timesADay: exactly(1),
    perWeek: exactly(3),
    betweenItemsMs: exactly(30_000),
    parts: [
      {
        part,
        name: null,
        rounds: null,
        restBetweenRoundsMs: ZERO,
        betweenItemsMs: ZERO,
        items: [itemWeek],
        ms,
      },
    ],
    ms,
  };
  return {
    week: n,
    isEasy,
    sessions: [sessionWeek],
    ms: [ms[0] * 3, ms[1] * 3],
    left: volume(left * 3),
    right: volume(right * 3),
    middle: none,
    muscles: new Map([
      ['soleus', { left: exactly(left * 3), right: exactly(right * 3), middle: ZERO }],
      [
        'tibialis-posterior',
        { left: exactly(left * 1.5), right: exactly(right * 1.5), middle: ZERO },
      ],
    ]),
    change: { all: change, strength: change },
  };
}

export const numbers: PlanNumbers = {
  plan,
  weeks: [
    week(1, 2, 2, [318_000, 446_000], null),
    week(2, 3, 2, [426_000, 578_000], 0.25),
    week(3, 2, 2, [318_000, 446_000], -0.2),
  ],
};

export const findings: Finding[] = [
  finding({
    check: 'long-session',
    severity: 'warning',
    message: 'The session can take 26 minutes, 1 more than there is.',
    place,
  }),
  finding({
    check: 'kit-missing',
    severity: 'warning',
    message: 'A <weight> is needed.',
    place,
    accepted: { why: 'Has a bag of 4.5 kg' },
  }),
];
