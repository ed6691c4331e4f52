// One step of one dial of a climb on one side's dose: whether it has anything left to move, and the
// dose after it moved. All in whole thousandths, so that a percentage is exact.
import type {
  BandDial,
  Dial,
  Dose,
  DoseKey,
  DoseValues,
  DurationDial,
  MassDial,
  NumberDial,
  PercentDial,
  Reps,
} from '../model/dose.ts';
import { setsOf } from '../model/merge.ts';
import { type Duration, durationMs, milliseconds } from '../units/duration.ts';
import type { Interval } from '../units/interval.ts';
import type { Load } from '../units/load.ts';

/** What a step has to know of the practice: how long a breath is, and its bands, easiest first. */
export interface StepSetting {
  readonly breathMs: number;
  readonly bands: readonly string[];
}

export type SideDial = Exclude<Dial, { readonly kind: 'level' }>;

/** Why a dial has nothing to move in this dose; null where it can. */
export type Idle = 'lacking' | 'at-end' | null;

export function whyIdle(dial: SideDial, { values }: Dose, setting: StepSetting): Idle {
  switch (dial.kind) {
    case 'number': {
      const range = numberRange(dial, values);
      return range ? atEnd(range, dial.by, dial.to) : 'lacking';
    }
    case 'duration': {
      const value = values[dial.key];
      if (!value) return 'lacking';
      const { range, by, to } = inOneUnit(value, dial, setting);
      return atEnd(range, by, to);
    }
    case 'mass': {
      if (values.load?.kind !== 'mass' || values.load.unit !== dial.unit) return 'lacking';
      return atEnd(values.load.amount, signOf(dial), dial.to);
    }
    case 'percent': {
      const range = percentOf(values.load, dial);
      return range ? atEnd(range, dial.by, dial.to) : 'lacking';
    }
    case 'band':
      if (values.load?.kind !== 'band') return 'lacking';
      return nextBand(values.load.band, dial, setting) === undefined ? 'at-end' : null;
  }
}

function atEnd([low, high]: Interval, by: number, to: number): Idle {
  return by > 0 ? (high >= to ? 'at-end' : null) : low <= to ? 'at-end' : null;
}

function signOf(dial: MassDial): number {
  return 'by' in dial.step ? dial.step.by : dial.step.byPercent;
}

function numberRange(dial: NumberDial, values: DoseValues): Interval | undefined {
  if (dial.key === 'sets') return setsOf(values);
  if (dial.key === 'effort') return values.effort;
  return values.reps && spanOf(values.reps);
}

function spanOf(reps: Reps): Interval {
  if (reps.kind === 'same') return reps.count;
  return [
    Math.min(...reps.counts.map(([low]) => low)),
    Math.max(...reps.counts.map(([, high]) => high)),
  ];
}

function percentOf(load: Load | undefined, dial: PercentDial): Interval | undefined {
  if (load?.kind !== dial.of) return undefined;
  return load.percent ?? undefined;
}

/** How far a range moves: by the step, but its leading end no further than `to`. */
function shiftOf([low, high]: Interval, by: number, to: number): number {
  return by > 0 ? Math.min(by, to - high) : Math.max(by, to - low);
}

function shifted([low, high]: Interval, shift: number): Interval {
  return [low + shift, high + shift];
}

function inOneUnit(value: Duration, dial: DurationDial, { breathMs }: StepSetting) {
  if (value.unit === 'breaths' && dial.by.unit === 'breaths' && dial.to.unit === 'breaths') {
    return {
      unit: 'breaths' as const,
      range: value.range,
      by: dial.by.range[0],
      to: dial.to.range[0],
    };
  }
  return {
    unit: 'ms' as const,
    range: durationMs(value, breathMs),
    by: durationMs(dial.by, breathMs)[0],
    to: durationMs(dial.to, breathMs)[0],
  };
}

/** The dose after one step of a dial that is not idle in it. */
export function stepped(dial: SideDial, dose: Dose, setting: StepSetting): Dose {
  const values: { -readonly [K in keyof DoseValues]: DoseValues[K] } = { ...dose.values };
  const key: DoseKey = dial.key;
  switch (dial.kind) {
    case 'number':
      stepNumber(dial, values);
      break;
    case 'duration': {
      const { unit, range, by, to } = inOneUnit(
        values[dial.key] ?? milliseconds([0, 0]),
        dial,
        setting,
      );
      values[dial.key] = { unit, range: shifted(range, shiftOf(range, by, to)) };
      break;
    }
    case 'mass':
      if (values.load?.kind === 'mass') {
        const amount = shifted(values.load.amount, massShift(values.load.amount, dial));
        values.load = { ...values.load, amount };
      }
      break;
    case 'percent': {
      const range = percentOf(values.load, dial);
      if (range)
        values.load = { kind: dial.of, percent: shifted(range, shiftOf(range, dial.by, dial.to)) };
      break;
    }
    case 'band':
      if (values.load?.kind === 'band') {
        const band = nextBand(values.load.band, dial, setting);
        if (band !== undefined) values.load = { kind: 'band', band };
      }
      break;
  }
  return { values, origins: { ...dose.origins, [key]: { layer: 'climb' } } };
}

function stepNumber(
  dial: NumberDial,
  values: { -readonly [K in keyof DoseValues]: DoseValues[K] },
): void {
  const range = numberRange(dial, values);
  if (!range) return;
  const shift = shiftOf(range, dial.by, dial.to);
  if (dial.key === 'sets') values.sets = shifted(range, shift);
  else if (dial.key === 'effort') values.effort = shifted(range, shift);
  else if (values.reps?.kind === 'list') {
    values.reps = {
      kind: 'list',
      counts: values.reps.counts.map((count) => shifted(count, shift)),
    };
  } else values.reps = { kind: 'same', count: shifted(range, shift) };
}

/**
 * A weight climbs by an amount, or by a percentage of its leading end to the nearest multiple of
 * `round`, halves up; where that is no step, to the next multiple that is (4 kg by 5 % with
 * `round: 0.5 kg` goes to 4.5 kg).
 */
function massShift(amount: Interval, dial: MassDial): number {
  if ('by' in dial.step) return shiftOf(amount, dial.step.by, dial.to);
  const { byPercent, round } = dial.step;
  const isUp = byPercent > 0;
  const leading = isUp ? amount[1] : amount[0];
  const whole = 100_000;
  const wanted = leading * (whole + byPercent);
  let target = Math.floor((2 * wanted + whole * round) / (2 * whole * round)) * round;
  if (isUp && target <= leading) target = (Math.floor(leading / round) + 1) * round;
  if (!isUp && target >= leading) target = (Math.ceil(leading / round) - 1) * round;
  return (isUp ? Math.min(target, dial.to) : Math.max(target, dial.to)) - leading;
}

/** The first band of the dial that lies beyond the present one, in the dial's direction. */
function nextBand(band: string, dial: BandDial, { bands }: StepSetting): string | undefined {
  const present = bands.indexOf(band);
  return dial.through.find((one) => (bands.indexOf(one) - present) * (dial.direction ?? 1) > 0);
}
