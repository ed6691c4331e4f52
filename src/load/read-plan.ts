import type { EasyWeeks, Limits, Plan, Visit } from '../model/plan.ts';
import { type Day, daysBetween, parseDay } from '../units/day.ts';
import type { Load } from '../units/load.ts';
import { parsePercent } from '../units/measure.ts';
import { parseCount } from '../units/number.ts';
import { misread, type Reading } from '../units/reading.ts';
import type { Affected } from '../units/side.ts';
import { parseWeeks } from '../units/weeks.ts';
import {
  type At,
  entries,
  hasKey,
  pairs,
  pairsUnder,
  placeOf,
  quantity,
  rootOf,
  startPlace,
  tellAt,
  textOf,
  textsUnder,
  textUnder,
  under,
  wordUnder,
} from './at.ts';
import { wordHints } from './did-you-mean.ts';
import { knownWords } from './known-words.ts';
import { idMeant } from './meant-id.ts';
import { printedTexts } from './printed-texts.ts';
import { oneLength, weight } from './read-dose.ts';
import { type PlanReading, readAccepts } from './read-plan-parts.ts';
import { readPain } from './read-practice.ts';
import { gapUnder, readSessions } from './read-sessions.ts';
import type { LimitsFile, PlanFile } from './written.ts';
import type { YamlFile } from './yaml-file.ts';

const MOST_WEEKS = 52;
const SOME_DAY: Day = '2000-01-01';
const YEAR = 366;

type Setting = Omit<PlanReading, 'weeks' | 'affected'>;

/** The plan of a file; null where it has no keys at all. */
export function readPlan(file: YamlFile, id: string, setting: Setting): Plan | null {
  const at = rootOf<PlanFile>(file);
  if (!at) return null;
  const codeAt = under(at, 'plan');
  const code = codeAt && textOf(codeAt);
  if (codeAt && code !== id) {
    tellAt(
      codeAt,
      'id-differs',
      `"plan: ${code}" stands in a file called ${id}.yaml; write "plan: ${id}", or give the file the other name.`,
    );
  }
  const weeks = quantity(under(at, 'weeks'), (text) => parseCount(text, MOST_WEEKS)) ?? MOST_WEEKS;
  const affected = (wordUnder(at, 'affected') ?? null) as Affected | null;
  const reading: PlanReading = { ...setting, weeks, affected };
  const visits = readVisits(at);
  const starts = readStarts(at, visits);
  return {
    id,
    source: file.source,
    place: codeAt ? placeOf(codeAt) : startPlace(at),
    person: textUnder(at, 'person') ?? id,
    title: textUnder(at, 'title') ?? id,
    handoutLanguage: textUnder(at, 'handout_language'),
    by: readBy(at, reading),
    visits,
    starts,
    nextVisit: readNextVisit(at, visits, starts),
    weeks,
    affected: affected ?? 'none',
    print: wordUnder(at, 'print') ?? 'normal',
    goals: textsUnder(at, 'goals'),
    profile: {
      ageBand: wordUnder(under(at, 'profile'), 'age_band') ?? null,
      training: wordUnder(under(at, 'profile'), 'training') ?? null,
    },
    limits: readLimits(under(at, 'limits'), reading),
    precautions: textsUnder(at, 'precautions'),
    pain: under(at, 'pain') ? readPain(under(at, 'pain'), setting.practice.pain) : null,
    stopIfAlso: textsUnder(at, 'stop_if_also'),
    easyWeeks: readEasyWeeks(at, weeks),
    shortDayMs: quantity(under(under(at, 'short_day'), 'time'), timeAtHand) ?? null,
    betweenItemsMs: gapUnder(at, reading) ?? null,
    oneRepMax: readOneRepMax(under(at, 'one_rep_max'), reading),
    sessions: readSessions(at, reading),
    report: new Map(pairsUnder(at, 'report').map((one) => [one.key, textOf(one)])),
    closed: readClosed(at),
    accepts: readAccepts(under(at, 'accept')),
    printed: printedTexts(at, 'plan'),
    valuePlaces: new Map(pairs(at).map((one) => [one.key, placeOf(one)])),
  };
}

function readVisits(at: At<PlanFile>): readonly Visit[] {
  const visits: Visit[] = [];
  for (const one of entries(under(at, 'visits'))) {
    const date = quantity(under(one, 'date'), parseDay);
    if (date === undefined) continue;
    const before = visits.at(-1);
    if (before && date <= before.date) {
      tellAt(
        under(one, 'date') as At<unknown>,
        'visits-order',
        `This visit of ${date} stands after the one of ${before.date}; put visits in order of date, one a day.`,
      );
    }
    visits.push({ date, found: textUnder(one, 'found'), why: textUnder(one, 'why') });
  }
  return visits.length > 0 ? visits : [{ date: SOME_DAY, found: null, why: null }];
}

function readBy(at: At<PlanFile>, { practice }: PlanReading): string | null {
  const by = under(at, 'by');
  if (!by) return null;
  const id = textOf(by);
  if (practice.practitioners.has(id)) return id;
  const isName = (words: string) => words.split(',', 1)[0]?.toLowerCase() === id.toLowerCase();
  const named = [...practice.practitioners].find(([, words]) => isName(words))?.[0];
  const meant = idMeant(id, practice.practitioners.keys(), () => named);
  const says = `"${id}" is not among the "practitioners" of practice.yaml`;
  if (meant !== undefined) tellAt(by, 'unknown-practitioner', `${says}; write "by: ${meant}".`);
  else
    tellAt(by, 'unknown-practitioner', `${says}; correct it, or add it there.`, {
      hints: wordHints(id, practice.practitioners.keys()),
    });
  return null;
}

function readStarts(at: At<PlanFile>, visits: readonly Visit[]): Day {
  const first = visits[0]?.date ?? SOME_DAY;
  if (!hasKey(at, 'starts') && visits.length > 1) {
    tellAt(
      at,
      'starts-missing',
      `From the second visit on, the plan has to say when week 1 began; write "starts: ${first}".`,
      { place: startPlace(at) },
    );
  }
  return quantity(under(at, 'starts'), parseDay) ?? first;
}

function readNextVisit(at: At<PlanFile>, visits: readonly Visit[], starts: Day): Day | null {
  const nextAt = under(at, 'next_visit');
  const next = quantity(nextAt, parseDay) ?? null;
  const last = visits.at(-1)?.date ?? SOME_DAY;
  if (!nextAt || next === null || next > last) return next;
  const lastAt = under(entries(under(at, 'visits')).at(-1), 'date');
  // Where the visit lies more than a year behind both other dates, it is the visit that is mistyped.
  if (lastAt && daysBetween(next, last) > YEAR && daysBetween(starts, last) > YEAR)
    tellAt(
      lastAt,
      'next-visit-early',
      `This visit is dated ${last}, years after "next_visit: ${next}"; correct its year.`,
    );
  else
    tellAt(
      nextAt,
      'next-visit-early',
      `"next_visit" says ${next}, which is not after the last visit of ${last}; correct one of the two, or leave "next_visit" out.`,
      lastAt ? { related: [{ message: 'The last visit.', place: placeOf(lastAt) }] } : {},
    );
  return next;
}

function readLimits(at: At<LimitsFile> | undefined, { practice }: PlanReading): Limits {
  const { vocabulary, bands } = practice;
  const kit = under(at, 'kit');
  return {
    timeMs: quantity(under(at, 'time'), timeAtHand) ?? null,
    kit: kit
      ? (knownWords(kit, 'unknown-kit', new Set([...vocabulary.kit, ...bands])) ?? [])
      : null,
    positionsToAvoid:
      knownWords(under(at, 'positions_to_avoid'), 'unknown-position', vocabulary.positions) ?? [],
    concerns: knownWords(under(at, 'concerns'), 'unknown-concern', vocabulary.concerns) ?? [],
  };
}

/** The time that a person has; where its unit is missing, minutes were meant. */
function timeAtHand(text: string): Reading<number> {
  const reading = oneLength(text);
  if (reading.ok || reading.misread.check !== 'unit-missing') return reading;
  return misread('unit-missing', reading.misread.says, `${text} min`);
}

function readEasyWeeks(at: At<PlanFile>, weeks: number): EasyWeeks | null {
  const easy = under(at, 'easy_weeks');
  if (!easy) return null;
  const listed = entries(under(easy, 'weeks') as At<readonly unknown[]> | undefined);
  const inside = listed.flatMap((one) => {
    const range = quantity(one, (text) => parseWeeks(text, weeks));
    return range ? Array.from({ length: range[1] - range[0] + 1 }, (_, i) => range[0] + i) : [];
  });
  if (new Set(inside).size < inside.length) {
    tellAt(
      under(easy, 'weeks') as At<unknown>,
      'weeks-overlap',
      'A week stands twice in this list; write it once.',
    );
  }
  const percent = (key: 'sets' | 'reps' | 'hold' | 'time') =>
    quantity(under(easy, key), (text) => parsePercent(text, 1, 99)) ?? null;
  return {
    weeks: inside,
    sets: percent('sets'),
    reps: percent('reps'),
    hold: percent('hold'),
    time: percent('time'),
    place: easy.keyPlace ?? placeOf(easy),
  };
}

function readOneRepMax(
  at: At<Record<string, unknown>> | undefined,
  reading: PlanReading,
): ReadonlyMap<string, Load> {
  const found = new Map<string, Load>();
  for (const one of at ? pairs(at) : []) {
    if (!reading.exerciseIds.includes(one.key)) {
      tellAt(one, 'unknown-exercise', `There is no exercise "${one.key}".`, {
        hints: wordHints(one.key, reading.exerciseIds),
        ...(one.keyPlace ? { place: one.keyPlace } : {}),
      });
      continue;
    }
    const load = quantity(one, weight);
    if (load) found.set(one.key, load);
  }
  return found;
}

function readClosed(at: At<PlanFile>): Plan['closed'] {
  const closed = under(at, 'closed');
  if (!closed) return null;
  const date = quantity(under(closed, 'date'), parseDay);
  const why = textUnder(closed, 'why');
  // A plan is not passed over for a mistake in the very words that close it.
  return date === undefined || why === null ? null : { date, why };
}
