// The sessions of a plan and their parts: what is done in one go, on which days, and what changes from
// a week on. Items have a file of their own.
import type { Place } from '../finding/place.ts';
import type { Part, PartSettings, Session, SessionSettings } from '../model/plan.ts';
import type { Interval } from '../units/interval.ts';
import { parseCount, parseCounts } from '../units/number.ts';
import {
  type At,
  entries,
  placeOf,
  quantity,
  startPlace,
  tellAt,
  textOf,
  textUnder,
  under,
  wordUnder,
} from './at.ts';
import { gapMs } from './read-dose.ts';
import { readItems } from './read-item.ts';
import {
  type PlanReading,
  readAccepts,
  readEntries,
  readSchedule,
  readWindows,
} from './read-plan-parts.ts';
import type {
  PartEntryFile,
  PartFile,
  PlanFile,
  SessionEntryFile,
  SessionFile,
} from './written.ts';

export function gapUnder(
  at: At<PlanFile> | At<SessionFile> | At<PartFile> | At<SessionEntryFile> | At<PartEntryFile>,
  { practice }: PlanReading,
): Interval | undefined {
  return quantity(under(at as At<PlanFile>, 'between_items'), gapMs(practice.timing.breath));
}

export function readSessions(at: At<PlanFile>, reading: PlanReading): readonly Session[] {
  const seen = new Map<string, Place>();
  return entries(under(at, 'sessions')).flatMap((one) => {
    const idAt = under(one, 'session');
    if (idAt) tellSessionTwice(idAt, seen);
    const session = readSession(one, reading);
    return session ? [session] : [];
  });
}

function tellSessionTwice(at: At<unknown>, seen: Map<string, Place>): void {
  const id = textOf(at);
  const before = seen.get(id);
  if (before) {
    tellAt(
      at,
      'duplicate-session',
      `There are two sessions called "${id}"; give one of them another id.`,
      {
        related: [{ message: 'The first one.', place: before }],
      },
    );
  } else seen.set(id, placeOf(at));
}

function readSession(at: At<SessionFile>, reading: PlanReading): Session | null {
  const seen = new Map<string, Place>();
  const parts = entries(under(at, 'parts')).flatMap((one) => {
    const part = readPart(one, reading, seen);
    return part ? [part] : [];
  });
  const idAt = under(at, 'session');
  const settings = sessionSettings(at, reading);
  return {
    ...settings,
    id: idAt ? textOf(idAt) : '',
    place: idAt ? placeOf(idAt) : startPlace(at),
    schedule: settings.schedule ?? { kind: 'as-needed' },
    parts,
    windows: readWindows(under(at, 'weeks'), reading.weeks),
    fromWeek: readEntries(under(at, 'from_week'), reading.weeks).map(({ week, at: entry }) => ({
      ...sessionSettings(entry, reading),
      week,
    })),
    accepts: readAccepts(under(at, 'accept')),
  };
}

const MOST_TIMES_A_DAY = 24;

function sessionSettings(
  at: At<SessionFile> | At<SessionEntryFile>,
  reading: PlanReading,
): SessionSettings {
  return {
    name: textUnder(at as At<SessionFile>, 'name') ?? undefined,
    schedule: readSchedule(at),
    timesADay: quantity(under(at as At<SessionFile>, 'times_a_day'), (text) =>
      parseCounts(text, MOST_TIMES_A_DAY),
    ),
    betweenItemsMs: gapUnder(at, reading),
    place: placeOf(at),
  };
}

function readPart(at: At<PartFile>, reading: PlanReading, seen: Map<string, Place>): Part | null {
  const kind = wordUnder(at, 'part');
  const items = readItems(under(at, 'items'), reading, seen);
  if (!kind) return null;
  return {
    ...partSettings(at, reading),
    place: placeOf(under(at, 'part') as At<unknown>),
    kind,
    items,
    windows: readWindows(under(at, 'weeks'), reading.weeks),
    fromWeek: readEntries(under(at, 'from_week'), reading.weeks).map(({ week, at: entry }) => ({
      ...partSettings(entry, reading),
      week,
    })),
    accepts: readAccepts(under(at, 'accept')),
  };
}

const MOST_ROUNDS = 100;

function partSettings(at: At<PartFile> | At<PartEntryFile>, reading: PlanReading): PartSettings {
  const one = at as At<PartEntryFile>;
  return {
    name: textUnder(one, 'name') ?? undefined,
    rounds: quantity(under(one, 'rounds'), (text) => parseCount(text, MOST_ROUNDS)),
    restBetweenRoundsMs: quantity(
      under(one, 'rest_between_rounds'),
      gapMs(reading.practice.timing.breath),
    ),
    betweenItemsMs: gapUnder(one, reading),
    place: placeOf(one),
  };
}
