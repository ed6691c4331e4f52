// The load dial of a climb: bands, weights, percentages of a weight, and points of a share.
import type { Dial } from '../model/dose.ts';
import { parseLoad } from '../units/load.ts';
import { parsePercent } from '../units/measure.ts';
import { parseThousandths } from '../units/number.ts';
import { misread, type Reading } from '../units/reading.ts';
import { type At, entries, quantity, tellAt, textOf, under } from './at.ts';
import { type DialBase, type DialSetting, signed } from './dial-reading.ts';
import { wordHints } from './did-you-mean.ts';
import type { LoadDialFile } from './written.ts';

/** The dial of a load: through bands, by a weight, by a percentage to a grain, or by points of a share. */
export function loadDial(
  at: At<LoadDialFile>,
  setting: DialSetting,
  base: DialBase,
): Dial | undefined {
  const through = under(at, 'through');
  const by = under(at, 'by');
  const to = under(at, 'to');
  if (through && (by || to)) {
    tellAt(
      at,
      'dial-unclear',
      '"load" has "through" and "by"; keep "through" for bands, "by" and "to" for weights.',
      { place: base.place },
    );
    return undefined;
  }
  if (through) return bandDial(through, setting, base);
  if (!by || !to) {
    if (!at.file.flagged.has(at.node) && !by && !to) {
      tellAt(
        at,
        'dial-unclear',
        '"load" does not say how it climbs; write for example "load: {by: 0.5 kg, to: 6 kg}", or the bands to go through, such as "load: {through: [medium band]}".',
        { place: base.place },
      );
    }
    return undefined;
  }
  return weightDial(at, by, to, base);
}

function bandDial(
  at: At<readonly unknown[]>,
  { bands }: DialSetting,
  base: DialBase,
): Dial | undefined {
  const through: string[] = [];
  const directions = new Set<number>();
  for (const one of entries(at)) {
    const band = textOf(one);
    const index = bands.indexOf(band);
    if (index === -1) {
      tellAt(one, 'unknown-band', `"${band}" is not a band of practice.yaml.`, {
        hints: wordHints(band, bands),
      });
      return undefined;
    }
    const before = through.at(-1);
    if (before !== undefined) directions.add(Math.sign(index - bands.indexOf(before)));
    through.push(band);
  }
  if (directions.size > 1 || directions.has(0)) {
    tellAt(
      at,
      'dial-unclear',
      '"through" goes one way through the bands of practice.yaml, each once.',
    );
    return undefined;
  }
  const [direction] = directions;
  return {
    kind: 'band',
    key: 'load',
    through,
    direction: direction === undefined ? null : (direction as 1 | -1),
    ...base,
  };
}

function weightDial(
  at: At<LoadDialFile>,
  by: At<unknown>,
  to: At<unknown>,
  base: DialBase,
): Dial | undefined {
  const end = quantity(to, (text) => parseLoad(text, []));
  if (!end) return undefined;
  if (end.kind === 'mass') {
    if (end.pieces !== 1) {
      tellAt(to, 'dial-unclear', `"to" is of one piece, written without "${end.pieces} x".`);
      return undefined;
    }
    return massDial(at, by, to, end.unit, end.amount, base);
  }
  if (end.kind === 'percent-1rm' || (end.kind === 'body-weight' && end.percent)) {
    const range = end.percent as readonly [number, number];
    const points = quantity(by, (text) =>
      signed(
        text,
        (one) => parsePercent(one, 0, 100),
        (n) => -n,
        (n) => n === 0,
      ),
    );
    if (points === undefined) return undefined;
    return { kind: 'percent', key: 'load', of: end.kind, by: points, to: range[1], ...base };
  }
  tellAt(
    to,
    'dial-unclear',
    '"load" climbs in kg, lb, % 1rm, % body weight, or through bands; this kind of load does not climb.',
  );
  return undefined;
}

function massDial(
  at: At<LoadDialFile>,
  by: At<unknown>,
  to: At<unknown>,
  unit: 'kg' | 'lb',
  [low, high]: readonly [number, number],
  base: DialBase,
): Dial | undefined {
  if (low !== high) {
    tellAt(to, 'dial-unclear', '"to" takes one weight, not a range.');
    return undefined;
  }
  const round = under(at, 'round');
  if (/%\s*$/.test(textOf(by))) {
    const byPercent = quantity(by, (text) =>
      signed(
        text,
        (one) => parsePercent(one, 0, 100),
        (n) => -n,
        (n) => n === 0,
      ),
    );
    if (!round) {
      tellAt(
        by,
        'dial-unclear',
        `"by" is a percentage, so it needs "round" beside it, the smallest step that the weights allow; write for example "round: 0.5 ${unit}".`,
      );
      return undefined;
    }
    const step = quantity(round, (text) => aboveZero(massOf(text, unit), text));
    if (byPercent === undefined || step === undefined) return undefined;
    return { kind: 'mass', key: 'load', unit, step: { byPercent, round: step }, to: high, ...base };
  }
  if (round) {
    tellAt(
      round,
      'dial-unclear',
      '"round" goes with a percentage; leave it out where "by" is a weight.',
    );
    return undefined;
  }
  const amount = quantity(by, (text) =>
    signed(
      text,
      (one) => massOf(one, unit),
      (n) => -n,
      (n) => n === 0,
    ),
  );
  return amount === undefined
    ? undefined
    : { kind: 'mass', key: 'load', unit, step: { by: amount }, to: high, ...base };
}

/** One weight of one piece, in thousandths, in the unit of the dial's end. */
function massOf(text: string, unit: 'kg' | 'lb'): Reading<number> {
  const match = /^(?:(\d+)\s*x\s*)?(.*?)\s*(kg|lb)$/.exec(text);
  if (match?.[1])
    return misread('dial-unclear', `says ${text}, but is of one piece`, `${match[2]} ${match[3]}`);
  if (match && match[3] !== unit)
    return misread('dial-unclear', `is in ${match[3]}, but "to" is in ${unit}; use one unit`);
  if (!match) {
    const load = parseLoad(text, []);
    return load.ok ? misread('dial-unclear', `says "${text}", but "to" is in ${unit}`) : load;
  }
  return parseThousandths(match[2] as string, 1_000);
}

function aboveZero(reading: Reading<number>, text: string): Reading<number> {
  return reading.ok && reading.value <= 0
    ? misread('out-of-range', `says ${text}, but is above 0`)
    : reading;
}
