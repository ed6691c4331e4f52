// What `carryover show <plan> --format json` says under `data`, for a practice folder in memory.
import { compile } from '../../src/build.ts';
import { positionOf } from '../../src/finding/place.ts';
import { memoryFolder } from '../../src/load/folder.ts';
import { numbersJson } from '../../src/render/json/numbers-json.ts';

export type Interval = [number, number];

export interface ShowVolume {
  sets: Interval;
  reps: Interval;
  hold_seconds: Interval;
  work_seconds: Interval;
  volume_kg: Interval;
}

export interface ShowDose {
  sets?: Interval;
  reps: Interval | Interval[];
  hold?: Interval;
  move?: Interval;
  time?: Interval;
  pause: Interval;
  rest?: Interval;
  effort?: Interval;
  tempo?: string;
  load?: string;
}

export type ShowSide = ShowVolume & { dose: ShowDose };

export interface ShowItem {
  as: string;
  do: string;
  level: string;
  sides: 'each' | 'both' | 'middle';
  seconds: Interval;
  left: ShowSide | null;
  right: ShowSide | null;
  middle: ShowSide | null;
}

export interface ShowPart {
  part: string;
  rounds: number;
  seconds: Interval;
  items: ShowItem[];
}

export interface ShowSession {
  session: string;
  per_week: Interval;
  seconds: Interval;
  short_day: null;
  parts: ShowPart[];
}

export interface ShowWeek {
  week: number;
  easy: boolean;
  sessions: ShowSession[];
  seconds: Interval;
  left: ShowVolume;
  right: ShowVolume;
  middle: ShowVolume;
  muscles: Record<string, { left: Interval; right: Interval; middle: Interval }>;
  change: { all: number | null; strength: number | null };
}

export interface ShowData {
  plan: string;
  weeks: ShowWeek[];
}

/** The numbers of a plan; throws with what was found where the plan has errors. */
export function showData(files: Record<string, string>, plan: string): ShowData {
  const compiled = compile(memoryFolder(files), { plans: [plan], exercises: [] });
  const errors = compiled.findings.filter(({ severity }) => severity === 'error');
  const numbers = compiled.plans[0]?.numbers;
  if (errors.length > 0 || !numbers) {
    const told = errors.map(
      (one) => `${one.place.source.file}:${positionOf(one.place).line} ${one.check} ${one.message}`,
    );
    throw new Error(`no numbers for ${plan}:\n${told.join('\n')}`);
  }
  return JSON.parse(
    JSON.stringify(numbersJson(numbers, compiled.practice.timing.breath)),
  ) as ShowData;
}
