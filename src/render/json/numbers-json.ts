// The numbers of a plan in the published form (schemas/output.schema.json, ShowData): seconds and
// kilograms, left, right and middle.

import type {
  ItemWeek,
  PartWeek,
  PlanNumbers,
  SessionWeek,
  SideWork,
  Volume,
  WeekNumbers,
} from '../../compute/numbers.ts';
import type { DoseValues } from '../../model/dose.ts';
import { type Duration, durationMs } from '../../units/duration.ts';
import { type Interval, mapEnds } from '../../units/interval.ts';
import { formatLoad } from '../../units/load.ts';

type Json = Readonly<Record<string, unknown>>;

const MS = 1000;

function seconds(ms: Interval): Interval {
  return mapEnds(ms, (end) => end / MS);
}

/** `data` of `carryover show --format json`. */
export function numbersJson({ plan, weeks }: PlanNumbers, breathMs: number): Json {
  return { plan: plan.id, weeks: weeks.map((week) => weekJson(week, breathMs)) };
}

function weekJson(week: WeekNumbers, breathMs: number): Json {
  return {
    week: week.week,
    easy: week.isEasy,
    sessions: week.sessions.map((session) => sessionJson(session, breathMs)),
    seconds: seconds(week.ms),
    left: volumeJson(week.left),
    right: volumeJson(week.right),
    middle: volumeJson(week.middle),
    muscles: Object.fromEntries(week.muscles),
    change: week.change,
  };
}

function sessionJson(session: SessionWeek, breathMs: number): Json {
  return {
    session: session.session.id,
    per_week: session.perWeek,
    seconds: seconds(session.ms),
    short_day: null,
    parts: session.parts.map((part) => partJson(part, breathMs)),
  };
}

function partJson(part: PartWeek, breathMs: number): Json {
  return {
    part: part.part.kind,
    rounds: part.rounds ?? 1,
    seconds: seconds(part.ms),
    items: part.items.map((item) => itemJson(item, part.rounds !== null, breathMs)),
  };
}

function itemJson(item: ItemWeek, isCircuit: boolean, breathMs: number): Json {
  const side = (work: SideWork | null) =>
    work && { ...volumeJson(work.volume), dose: doseJson(work.dose.values, isCircuit, breathMs) };
  return {
    as: item.item.id,
    do: item.item.exercise.id,
    level: item.level.id,
    sides: item.sides,
    seconds: seconds(item.ms),
    left: side(item.left),
    right: side(item.right),
    middle: side(item.middle),
  };
}

function volumeJson(volume: Volume): Json {
  return {
    sets: volume.sets,
    reps: volume.reps,
    hold_seconds: seconds(volume.holdMs),
    work_seconds: seconds(volume.workMs),
    volume_kg: volume.volumeKg,
  };
}

function doseJson(values: DoseValues, isCircuit: boolean, breathMs: number): Json {
  const length = (duration: Duration | undefined) =>
    duration && seconds(durationMs(duration, breathMs));
  const dose = {
    sets: isCircuit ? undefined : values.sets,
    reps: values.reps?.kind === 'list' ? values.reps.counts : values.reps?.count,
    hold: length(values.hold),
    move: length(values.move),
    time: length(values.time),
    pause: length(values.pause),
    rest: isCircuit ? undefined : length(values.rest),
    effort: values.effort,
    tempo: values.tempo?.map((ms) => ms / MS).join('-'),
    load: values.load && formatLoad(values.load),
  };
  return Object.fromEntries(Object.entries(dose).filter(([, value]) => value !== undefined));
}
