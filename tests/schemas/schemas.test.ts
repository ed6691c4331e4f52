// The published schemas, as an editor applies them: valid, described, asking for what the contract
// asks for, taking its examples and refusing what can mislead. What the loader adds to them (sums
// over several keys, links, wording) is tested with the loader.
import { readdirSync, readFileSync } from 'node:fs';
import { Ajv2020, type AnySchemaObject } from 'ajv/dist/2020.js';
import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { LIMBS, PURPOSES } from '../../src/model/exercise.ts';
import { PART_KINDS } from '../../src/model/plan.ts';
import { CONCERNS, DEMANDS, KIT, MUSCLES, POSITIONS } from '../../src/model/vocabulary.ts';
import { WEEKDAYS } from '../../src/units/day.ts';

const FOLDER = new URL('../../schemas/', import.meta.url);
const BASE = 'https://carryover.invalid/schemas/';

const schemas = new Map<string, AnySchemaObject>(
  readdirSync(FOLDER)
    .filter((file) => file.endsWith('.schema.json'))
    .sort()
    .map((file) => [file, JSON.parse(readFileSync(new URL(file, FOLDER), 'utf8'))]),
);

// Union types are how a plain scalar that looks like a number passes for text; strictRequired refuses
// the ordinary "exactly one of these keys".
const ajv = new Ajv2020({
  strict: true,
  strictRequired: false,
  allowUnionTypes: true,
  allErrors: true,
  keywords: ['quantity', 'ids'],
});
for (const schema of schemas.values()) ajv.addSchema(schema);

/** Where a value is refused, and by which keyword; empty where it passes. */
function refusals(name: string, value: unknown): string[] {
  const validate = ajv.getSchema(`${BASE}${name}.schema.json`);
  if (!validate) throw new Error(`no schema ${name}`);
  return validate(value)
    ? []
    : (validate.errors ?? []).map((e) => `${e.instancePath} ${e.keyword}`);
}

/** The schema that a reference in `file` points at, or the schema itself. */
function resolved(file: string, schema: AnySchemaObject): AnySchemaObject {
  const reference: string | undefined = schema.$ref;
  if (reference === undefined) return schema;
  const [otherFile, pointer = ''] = reference.split('#');
  let target = schemas.get(otherFile || file) as AnySchemaObject;
  for (const step of pointer.split('/').slice(1)) target = target[step];
  return target;
}

/** Every schema inside a schema, with the path that leads to it. */
function* inside(schema: AnySchemaObject, path = ''): Generator<[string, AnySchemaObject]> {
  yield [path, schema];
  for (const [key, value] of Object.entries(schema)) {
    if (value !== null && typeof value === 'object') yield* inside(value, `${path}/${key}`);
  }
}

const PRACTICE = `
schema: 1                     # required, read first; a newer one stops with a plain message
practice: Saltmarsh Movement Clinic
contact: Front desk, 555 0142
emergency: 999                # as locally used; text
emergency_if:                 # never empty
  - You have chest pain, or trouble breathing
get_in_touch:
  - The pain keeps you awake
language: en                  # BCP 47; a words pack must exist
paper: a4                     # a4 | letter
timing: {move: 3 s, pause: 2 s, rest: 30 s, change_sides: 5 s, between_items: 30 s, breath: 5 s}   # these are the defaults
pain: {carry_on: 0-3, ease_off: 4-5, stop: 6-10, settles_by: next-morning}    # 0-10, three ranges, no gap, no overlap; same-evening | next-morning | within-24-hours
stop_if:                      # printed on every sheet, never empty
  - The pain is sharp or spreads
bands: [light band, medium band, heavy band]     # easiest first
practitioners:
  rk: "R. Kestrel, physiotherapist"
words:                        # additions to the shipped vocabulary; a word that is shipped too is hers to reword (a later version that ships it breaks no folder)
  kit: {foam-block: a foam block}                     # positions, muscles, demands likewise: id, words
  concerns: {new-lens: {name: A new lens in the eye, limits: [head-down], positions: [prone]}}
  demands: {head-down: the head lower than the heart}
checks: {side-balance: {off_by: 25 %}, sharp-rise: off, kit-missing: error}                       # settings, off, or a severity; an error check can't be turned off or down
`;

const EXERCISE = `
exercise: heel-raise
name: Heel raise
purpose: strength             # one, or a list with the main one first: warm-up mobility strength isometric stretch balance cardio breathing relaxation
position: standing            # trade terms: supine crook-lying prone side-lying hands-and-knees sitting long-sitting half-kneeling kneeling standing walking
sides: both
limb: leg                     # what a side is called; required where a level is each: leg arm foot hand knee shoulder foot-in-front side direction
order: each-set               # each-set | each-rep | all-sets; also on a level or an item; only for sides: each
tempo_words: [down, up]       # what the first and the third number of a tempo are; [up, down] lifts first
muscles: {prime: [gastrocnemius, soleus], assist: [tibialis-posterior]}
kit: [[chair, worktop]]       # an inner list: any one of them
demands: [calf-tendon-load]   # what it asks of the body; concerns say what they limit
tags: [ankle, early]
setup:
  - Stand behind a chair and rest your fingers on it
steps:
  - Rise onto your toes
  - Lower slowly
feel: The back of your lower legs
avoid:
  - Do not lean on the chair
easier: Do it sitting
harder: Hold a bag in one hand
picture: pictures/heel-raise.svg
dose: {move: 4 s, rest: 60 s}
levels:                       # easiest first; a level may override any key above but exercise: the value is replaced whole, only dose merges by key, and its name is added ("Heel raise: both feet")
  - level: two-feet
    name: Both feet
    dose: {sets: 2, reps: 8-12, hold: 2 s}
    bounds: {sets: 1-4, reps: 5-20, hold: 0-10 s}     # what is sensible; outside it is a warning
    move_on_when: {reps: 12, pain_at_most: 3, effort_at_most: 6, sessions_in_a_row: 2}     # also hold, time, load, sets; an item may have its own
  - level: one-foot
    name: One foot
    sides: each
    dose: {sets: 2, reps: 5-8, hold: 2 s}
    bounds: {sets: 1-4, reps: 3-15}
`;

const PLAN = `
plan: M-0412
person: M-0412                # default: the plan's code
title: Ankle, back to hill walking
by: rk
visits:                       # dates ascend; this version was set at the last one
  - date: 2026-10-05
    found: Walks without a limp
    why: Ready for strength
starts: 2026-10-06            # default: the first visit; required from the second visit on; week n is the days 7(n-1) to 7n-1 from here
next_visit: 2026-11-16
weeks: 6
affected: left                # left | right | both | none
goals:
  - Walk the coast path for two hours
profile: {age_band: 18-64, training: new}     # under-18 18-64 65-plus; new some trained
limits: {time: 25 min, kit: [chair, step], positions_to_avoid: [kneeling], concerns: [osteoporosis]}     # kit left out: anything
precautions:
  - Wear the brace outdoors
pain: {carry_on: 0-2, ease_off: 3-5, stop: 6-10}      # optional; all three ranges; settles_by stays the practice's
stop_if_also:
  - The ankle swells overnight
easy_weeks: {weeks: [4], sets: 50 %, reps: 70 %}      # weeks: numbers and ranges; any of sets, reps, hold, time, 1-99 %
short_day: {time: 10 min}
sessions:
  - session: strength-days
    name: Strong ankle
    days: [mon, wed, fri]     # or: days: daily · days_a_week: 3 (or 3-5) · every: 2 days · as_needed: true
    times_a_day: 1            # or 2-3; a key of its own, it stays when the days change
    from_week:
      - {week: 4, days: [mon, tue, thu, sat]}
    parts:
      - part: warm-up         # warm-up mobility strength balance cardio practice stretch relaxation; a session may have two of a kind
        items:
          - do: heel-raise
            as: loosen-up     # the item's own id, needed where an exercise comes twice in a session
            dose: {sets: 1, reps: 10}
      - part: strength
        name: Build it up
        items:
          - do: heel-raise
            level: two-feet   # default: the first
            dose: {sets: 2}
            priority: must    # must | should | could; default must in a warm-up, else should
            note: Hold the chair
            climb:            # section 5.5
              - reps: {by: 2, to: 14}
              - sets: {by: 1, to: 3, restart: [reps]}
            from_week:
              - week: 5
                level: one-foot
                sides: {left: {sets: 3}, right: {sets: 2}, why: Left calf is catching up}
                order: each-set
          - do: heel-raise
            as: left-only
            level: one-foot
            only: affected    # left | right | affected | other; only for sides: each
            weeks: 3-6        # in these weeks only; or a list [1-2, 5-5]; also on parts and sessions; a bare number reads both ways and is refused, showing both
            start_when: Twelve on both feet are easy     # printed with the date; needs \`weeks\`, the estimate that the numbers use
            advance: when-ready     # default; by-week lifts the level's rule
      - part: stretch
        rounds: 2             # done as a circuit
        rest_between_rounds: 60 s
        between_items: 10 s   # also on session and plan; nearest wins
        items:
          - {do: heel-raise, as: last, weeks: 1-2}
        accept:
          - {check: stretch-before-strength, why: A gentle one, until: 2026-11-16}
report: {}                    # answers for the reporting table
# closed: {date: 2026-12-01, why: Back on the hills}   a closed plan is skipped unless named
`;

const FILES = [
  ['practice', PRACTICE],
  ['exercise', EXERCISE],
  ['plan', PLAN],
] as const;

describe('every schema', () => {
  test('there are seven', () => {
    expect([...schemas.keys()]).toEqual([
      'exercise.schema.json',
      'output.schema.json',
      'people.schema.json',
      'plan.schema.json',
      'practice.schema.json',
      'quantities.schema.json',
      'translation.schema.json',
    ]);
  });

  test.each([...schemas])('%s is valid, and known under the name of its file', (file, schema) => {
    expect(schema.$schema).toBe('https://json-schema.org/draft/2020-12/schema');
    expect(schema.$id).toBe(BASE + file);
    expect(ajv.validateSchema(schema), JSON.stringify(ajv.errors)).toBe(true);
    expect(() => ajv.getSchema(BASE + file)).not.toThrow();
  });

  test.each([...schemas])('%s describes every key', (file, schema) => {
    const undescribed: string[] = [];
    for (const [path, part] of inside(schema)) {
      if (path.endsWith('/properties') || typeof part.properties !== 'object') continue;
      for (const [key, value] of Object.entries<AnySchemaObject>(part.properties)) {
        if (path.includes('/if')) continue;
        const description = value.description ?? resolved(file, value).description;
        if (typeof description !== 'string') undescribed.push(`${path}/${key}`);
      }
    }
    expect(undescribed).toEqual([]);
  });

  test.each([...schemas])('%s lets no unknown key into a group of keys', (_file, schema) => {
    const open: string[] = [];
    for (const [path, part] of inside(schema)) {
      const isGroup = part.properties !== undefined && !path.endsWith('properties');
      if (isGroup && !/\/(if|then)$/.test(path) && part.additionalProperties === undefined) {
        open.push(path);
      }
    }
    expect(open).toEqual([]);
  });
});

describe('what is required', () => {
  const plan = schemas.get('plan.schema.json') as AnySchemaObject;
  test.each([
    ['practice', ['schema', 'practice', 'contact', 'emergency', 'emergency_if', 'stop_if']],
    ['exercise', ['exercise', 'name', 'purpose', 'position', 'sides', 'steps', 'levels']],
    ['plan', ['plan', 'title', 'visits', 'weeks', 'affected', 'sessions']],
    ['people', []],
  ])('of %s', (name, keys) => {
    expect(schemas.get(`${name}.schema.json`)?.required ?? []).toEqual(keys);
  });

  test.each([
    ['session', ['session', 'parts']],
    ['part', ['part', 'items']],
    ['item', ['do']],
    ['item_entry', ['week']],
    ['part_entry', ['week']],
    ['session_entry', ['week']],
    ['side_overrides', ['why']],
    ['accept', ['check', 'why']],
    ['pain', ['carry_on', 'ease_off', 'stop']],
  ])('inside a plan, of %s', (name, keys) => {
    expect(plan.$defs[name].required).toEqual(keys);
  });
});

describe('the examples of the contract', () => {
  test.each(FILES)('the %s passes', (name, text) => {
    expect(refusals(name, parse(text, { version: '1.2' }))).toEqual([]);
  });

  test.each(FILES)('the %s does not pass once a key is mistyped', (name, text) => {
    const value = parse(text);
    expect(refusals(name, { ...value, titel: 'x' })).toEqual([' additionalProperties']);
  });

  test('people', () => {
    expect(refusals('people', { 'M-0412': { name: 'Rowan Vale', language: 'es' } })).toEqual([]);
    expect(refusals('people', { 'M 0412': { name: 'Rowan Vale' } })).toContain(' propertyNames');
    expect(refusals('people', { 'M-0412': { nam: 'Rowan Vale' } })).toEqual([
      '/M-0412 additionalProperties',
    ]);
  });
});

/** The contract's example with one place replaced; `undefined` takes the key away. */
function changed(text: string, path: readonly (string | number)[], value: unknown): unknown {
  const root = parse(text);
  let at = root;
  for (const step of path.slice(0, -1)) at = at[step];
  const last = path[path.length - 1] as string | number;
  if (value === undefined) delete at[last];
  else at[last] = value;
  return root;
}

const SESSION = ['sessions', 0] as const;
const ITEM = [...SESSION, 'parts', 1, 'items', 0] as const;

describe('wrong values in a plan', () => {
  test.each<[string, readonly (string | number)[], unknown, string]>([
    ['a bare number where a unit belongs', ['limits', 'time'], 25, 'type'],
    ['a number in quotes where a unit belongs', ['limits', 'time'], '25', 'pattern'],
    ['a decimal comma', [...ITEM, 'dose', 'hold'], '2,5 s', 'pattern'],
    ['a unit inside a range', [...ITEM, 'dose', 'hold'], '2 s-3 s', 'pattern'],
    ['no sets', [...ITEM, 'dose', 'sets'], 0, 'minimum'],
    ['half a set', [...ITEM, 'dose', 'sets'], 1.5, 'type'],
    ['a leading zero', [...ITEM, 'dose', 'sets'], '08', 'pattern'],
    ['a bare load', [...ITEM, 'dose', 'load'], '4', 'pattern'],
    ['three numbers of tempo', [...ITEM, 'dose', 'tempo'], '3-1-2', 'pattern'],
    ['effort beyond 10', [...ITEM, 'dose', 'effort'], 11, 'minimum|maximum'],
    ['a bare week as a window', [...ITEM, 'weeks'], 6, 'type'],
    ['a week alone as a window', [...ITEM, 'weeks'], '6', 'pattern'],
    ['one string for goals', ['goals'], 'Walk the coast path', 'type'],
    ['no goals in the list', ['goals'], [], 'minItems'],
    ['nothing after a sentence dash', ['goals', 0], null, 'type'],
    ['an empty key', ['precautions'], null, 'type'],
    ['a side that is no side', ['affected'], 'lefft', 'enum'],
    ['each on an item', [...ITEM, 'sides'], 'each', 'type'],
    ['an unknown side to do only', [...ITEM, 'only'], 'both', 'enum'],
    ['two dials in one entry', [...ITEM, 'climb', 0, 'sets'], { by: 1, to: 3 }, 'maxProperties'],
    ['a climb without an end', [...ITEM, 'climb', 0, 'reps'], { by: 2 }, 'required'],
    ['a change from week 1', [...ITEM, 'from_week', 0, 'week'], 1, 'minimum'],
    ['53 weeks', ['weeks'], 53, 'maximum'],
    ['a month that is none', ['next_visit'], '2026-13-16', 'pattern'],
    ['two ways of giving days', [...SESSION, 'every'], '2 days', 'oneOf'],
    ['no days', [...SESSION, 'days'], undefined, 'required'],
    ['a day in full', [...SESSION, 'days'], ['monday'], 'enum'],
    ['all of an easy week', ['easy_weeks', 'sets'], '100 %', 'pattern'],
    ['an easy share without %', ['easy_weeks', 'sets'], 50, 'type'],
    ['a start condition without weeks', [...ITEM, 'start_when'], 'It is easy', 'dependentRequired'],
    ['an accept without a reason', ['accept'], [{ check: 'long-session' }], 'required'],
    ['a plan pain with two ranges', ['pain', 'stop'], undefined, 'required'],
    ['a name for a code', ['plan'], 'Rowan Vale', 'pattern'],
  ])('%s', (_what, path, value, keyword) => {
    const found = refusals('plan', changed(PLAN, path, value));
    expect(
      found.some((line) => new RegExp(` (${keyword})$`).test(line)),
      found.join('\n'),
    ).toBe(true);
  });

  test.each<[string, readonly (string | number)[], unknown]>([
    ['a code of digits', ['plan'], 412],
    ['a title that is a number', ['title'], 2026],
    ['a long dash', [...ITEM, 'dose', 'reps'], '8–12'],
    ['a number for each set', [...ITEM, 'dose', 'reps'], [12, '8-10', 8]],
    ['minutes and seconds', [...ITEM, 'dose', 'rest'], '1 min 30 s'],
    ['no space before the unit', [...ITEM, 'dose', 'rest'], '90s'],
    ['breaths', [...ITEM, 'dose', 'hold'], '6 breaths'],
    ['a hold taken away', [...ITEM, 'dose', 'hold'], 'none'],
    ['a pair of weights', [...ITEM, 'dose', 'load'], '2 x 4 kg'],
    ['a band', [...ITEM, 'dose', 'load'], 'light band'],
    ['a range of a joint below zero', [...ITEM, 'dose', 'range'], '-10-60 degrees'],
    ['a list of windows', [...ITEM, 'weeks'], ['1-2', '5-5']],
    ['a climb that ends', [...ITEM, 'climb'], []],
    ['every day', [...SESSION, 'days'], 'daily'],
    ['easy weeks as ranges', ['easy_weeks', 'weeks'], [2, '4-5']],
    ['nothing at hand', ['limits', 'kit'], []],
    ['answers of her own', ['report'], { setting: 'at home', supervised: false }],
  ])('but not %s', (_what, path, value) => {
    expect(refusals('plan', changed(PLAN, path, value))).toEqual([]);
  });
});

describe('wrong values elsewhere', () => {
  test.each<[string, string, string, readonly (string | number)[], unknown, string]>([
    ['an empty stop rule', 'practice', PRACTICE, ['stop_if'], [], '/stop_if minItems'],
    ['no emergency rule', 'practice', PRACTICE, ['emergency_if'], undefined, ' required'],
    ['a blank emergency number', 'practice', PRACTICE, ['emergency'], '', '/emergency minLength'],
    ['a newer edition', 'practice', PRACTICE, ['schema'], 2, '/schema const'],
    [
      'a severity that is none',
      'practice',
      PRACTICE,
      ['checks', 'kit-missing'],
      'of',
      '/checks/kit-missing pattern',
    ],
    [
      'a range for a breath',
      'practice',
      PRACTICE,
      ['timing', 'breath'],
      '4-5 s',
      '/timing/breath pattern',
    ],
    ['a purpose that is none', 'exercise', EXERCISE, ['purpose'], 'power', '/purpose pattern'],
    [
      'a purpose in a list that is none',
      'exercise',
      EXERCISE,
      ['purpose'],
      ['power'],
      '/purpose/0 enum',
    ],
    ['no level', 'exercise', EXERCISE, ['levels'], [], '/levels minItems'],
    [
      'a level without its id',
      'exercise',
      EXERCISE,
      ['levels', 0, 'level'],
      undefined,
      '/levels/0 required',
    ],
    [
      'another exercise in a level',
      'exercise',
      EXERCISE,
      ['levels', 0, 'exercise'],
      'x',
      '/levels/0 additionalProperties',
    ],
    ['a picture from elsewhere', 'exercise', EXERCISE, ['picture'], '../x.svg', '/picture pattern'],
    ['one string for steps', 'exercise', EXERCISE, ['steps'], 'Rise', '/steps type'],
    [
      'pain at most 11',
      'exercise',
      EXERCISE,
      ['levels', 0, 'move_on_when', 'pain_at_most'],
      11,
      '/levels/0/move_on_when/pain_at_most maximum',
    ],
  ])('%s', (_what, name, text, path, value, line) => {
    expect(refusals(name, changed(text, path, value))).toContain(line);
  });
});

describe('words that stand in the code too', () => {
  const exercise = schemas.get('exercise.schema.json') as AnySchemaObject;
  const plan = schemas.get('plan.schema.json') as AnySchemaObject;
  const quantities = (schemas.get('quantities.schema.json') as AnySchemaObject).$defs;

  test('purposes, limbs, kinds of part and days', () => {
    expect(quantities.purpose.items.enum).toEqual(PURPOSES);
    expect(quantities.purpose.pattern).toBe(`^(${PURPOSES.join('|')})$`);
    expect(exercise.properties.limb.enum).toEqual(LIMBS);
    expect(plan.$defs.part.properties.part.enum).toEqual(PART_KINDS);
    expect(quantities.days.items.enum).toEqual(WEEKDAYS);
  });

  test('the English pack words every id of the vocabulary, and no other', () => {
    const pack = readFileSync(new URL('../../templates/words/en.yaml', import.meta.url), 'utf8');
    const { vocabulary } = parse(pack);
    expect(Object.keys(vocabulary.positions)).toEqual(POSITIONS);
    expect(Object.keys(vocabulary.kit)).toEqual(KIT);
    expect(Object.keys(vocabulary.muscles)).toEqual(Object.keys(MUSCLES));
    expect(Object.keys(vocabulary.demands)).toEqual(DEMANDS);
    expect(Object.keys(vocabulary.concerns)).toEqual(Object.keys(CONCERNS));
    expect(Object.keys(vocabulary.purposes)).toEqual(PURPOSES);
    expect(Object.keys(vocabulary.parts)).toEqual(PART_KINDS);
  });

  test('no number of an anatomy stands twice', () => {
    const numbers = Object.values(MUSCLES).flatMap((muscle) => muscle.uberon);
    expect(new Set(numbers).size).toBe(numbers.length);
  });
});

describe('the output', () => {
  const finding = {
    check: 'unknown-exercise',
    severity: 'error',
    message: 'There is no exercise "heel-rise".',
    file: 'plans/M-0412.yaml',
    line: 14,
    column: 15,
    end_line: 14,
    end_column: 24,
    hints: ['Did you mean "heel-raise"?'],
    related: [],
  };
  const output = (command: string, data: unknown) => ({
    version: 1,
    command,
    ok: true,
    findings: [finding],
    data,
  });
  const volume = {
    sets: [2, 2],
    reps: [16, 24],
    hold_seconds: [32, 48],
    work_seconds: [96, 144],
    volume_kg: [0, 0],
  };
  const side = {
    ...volume,
    dose: {
      sets: [2, 2],
      reps: [8, 12],
      hold: [2, 2],
      move: [4, 4],
      pause: [2, 2],
      rest: [60, 60],
    },
  };
  const item = {
    as: 'a',
    do: 'a',
    level: 'l',
    sides: 'each',
    seconds: [318, 446],
    left: side,
    right: side,
    middle: null,
  };
  const grade = {
    flesch_kincaid: 4.2,
    smog: 6.1,
    sentences: 90,
    words: 700,
    syllables: 900,
    long_words: 12,
  };
  const show = (shortDay: unknown, change: unknown = null) => ({
    plan: 'M-0412',
    weeks: [
      {
        week: 1,
        easy: false,
        sessions: [
          {
            session: 's',
            per_week: [3, 3],
            seconds: [318, 446],
            short_day: shortDay,
            parts: [{ part: 'strength', rounds: 1, seconds: [318, 446], items: [item] }],
          },
        ],
        seconds: [954, 1338],
        left: volume,
        right: volume,
        middle: volume,
        muscles: { soleus: { left: [6, 6], right: [6, 6], middle: [0, 0] } },
        change: { all: change, strength: null },
      },
    ],
    reading: {
      sheet: shortDay === null ? null : grade,
      exercises: { 'heel-raise': grade },
    },
  });

  test.each<[string, unknown]>([
    ['check', { files: 3, plans: ['M-0412'], errors: 0, warnings: 1, notes: 0, accepted: 0 }],
    ['check', null],
    ['show', show(null)],
    ['show', show({ seconds: 300, sets: [[1]] }, 0.25)],
    ['show', show({ needs_seconds: 700 })],
    ['list', { exercises: [] }],
    [
      'list',
      {
        plans: [
          {
            plan: 'M-0412',
            title: 'Ankle',
            file: 'plans/M-0412.yaml',
            next_visit: null,
            weeks: 6,
            closed: false,
          },
        ],
      },
    ],
    [
      'build',
      {
        written: ['handouts/M-0412.html'],
        moved: [],
        sheets: [{ plan: 'M-0412', sheet: 'KP4T 7WQM', files: [] }],
      },
    ],
    [
      'explain',
      { check: 'long-session', severity: 'warning', meaning: 'm', source: 's', remedy: 'r' },
    ],
    ['init', { folder: 'clinic', written: ['practice.yaml'] }],
    ['new', { written: ['plans/M-0413.yaml'] }],
  ])('%s passes', (command, data) => {
    expect(refusals('output', output(command, data))).toEqual([]);
  });

  test.each<[string, unknown, string]>([
    ['check', { files: 3 }, '/data required'],
    ['show', show({ seconds: 300 }), '/data/weeks/0/sessions/0/short_day dependentRequired'],
    [
      'show',
      show({ needs_seconds: 700, seconds: 1, sets: [] }),
      '/data/weeks/0/sessions/0/short_day maxProperties',
    ],
    ['show', show(undefined), '/data/weeks/0/sessions/0 required'],
    ['list', {}, '/data minProperties'],
    ['explain', { check: 'long-session' }, '/data required'],
  ])('%s with a wrong part does not', (command, data, line) => {
    expect(refusals('output', JSON.parse(JSON.stringify(output(command, data))))).toContain(line);
  });

  test('a finding has all its keys', () => {
    const { hints: _hints, ...without } = finding;
    expect(refusals('output', { ...output('check', null), findings: [without] })).toContain(
      '/findings/0 required',
    );
  });
});
