// How an item grows: at each tick every side moves the first of its dials that is not yet at its
// end. Rest, pause and level belong to the item, so they wait until they are next on every side.
import type { Dial, DialKey, Dose, DoseValues, LevelDial } from '../model/dose.ts';
import type { Level } from '../model/exercise.ts';
import { type Idle, type SideDial, type StepSetting, stepped, whyIdle } from './climb-step.ts';

/** The doses of the sides that an item does: left and right of an `each`, else one for the item. */
export type Lane = 'left' | 'right' | 'both' | 'middle';
export type LaneDoses = ReadonlyMap<Lane, Dose>;

/** What a climb has reached; `starts` are the doses that its dials restart from. */
export interface ClimbState {
  readonly level: Level;
  readonly doses: LaneDoses;
  readonly starts: LaneDoses;
}

export interface ClimbSetting extends StepSetting {
  /** The levels of the exercise, easiest first. */
  readonly levels: readonly Level[];
  /** The doses of a level as its own file gives them, for the sides that the item does there. */
  readonly dosesOfLevel: (level: Level) => LaneDoses;
}

/** A list of one band says its direction only together with the band that the climb starts from. */
export function oriented(
  climb: readonly Dial[],
  doses: LaneDoses,
  bands: readonly string[],
): readonly Dial[] {
  const present = [...doses.values()].flatMap(({ values }) =>
    values.load?.kind === 'band' ? [values.load.band] : [],
  );
  return climb.map((dial) => {
    if (dial.kind !== 'band' || dial.direction !== null) return dial;
    const to = bands.indexOf(dial.through[0] ?? '');
    // A side that is there already does not say where the others come from.
    const from = present.map((band) => bands.indexOf(band)).find((index) => index !== to);
    return { ...dial, direction: from !== undefined && to < from ? -1 : 1 };
  });
}

/** Dials that have nothing to move on any side, with the reason: in a climb as written, mistakes. */
export function idleDials(
  climb: readonly Dial[],
  state: ClimbState,
  setting: ClimbSetting,
): readonly { readonly dial: Dial; readonly why: Exclude<Idle, null> }[] {
  return climb.flatMap((dial) => {
    const whys = [...state.doses.values()].map((dose) =>
      whyDialIdle(dial, dose, state.level, setting),
    );
    const why = whys.every((one) => one !== null) ? whys[0] : null;
    return why ? [{ dial, why }] : [];
  });
}

function whyDialIdle(dial: Dial, dose: Dose, level: Level, setting: ClimbSetting): Idle {
  if (dial.kind !== 'level') return whyIdle(dial, dose, setting);
  return nextLevel(dial, level, setting.levels) ? null : 'at-end';
}

function nextLevel(dial: LevelDial, present: Level, levels: readonly Level[]): Level | undefined {
  const index = levels.indexOf(present);
  const next = dial.through.find((id) => levels.findIndex((level) => level.id === id) > index);
  return levels.find((level) => level.id === next);
}

const ITEM_DIALS: ReadonlySet<DialKey> = new Set(['rest', 'pause', 'level']);

/** What a climb has reached after one more tick. */
export function ticked(
  climb: readonly Dial[],
  state: ClimbState,
  setting: ClimbSetting,
): ClimbState {
  const nextByLane = new Map<Lane, Dial | undefined>();
  for (const [lane, dose] of state.doses) {
    const next = climb.find((dial) => whyDialIdle(dial, dose, state.level, setting) === null);
    nextByLane.set(lane, next);
  }
  const nexts = [...nextByLane.values()];
  const shared = nexts[0];
  if (shared && ITEM_DIALS.has(shared.key)) {
    if (nexts.every((next) => next === shared)) return movedForItem(shared, state, setting);
  }
  let doses = state.doses;
  for (const [lane, next] of nextByLane) {
    if (!next || next.kind === 'level' || ITEM_DIALS.has(next.key)) continue;
    doses = movedForLane(next, lane, { ...state, doses }, setting);
  }
  return { ...state, doses };
}

function movedForItem(dial: Dial, state: ClimbState, setting: ClimbSetting): ClimbState {
  if (dial.kind === 'level') {
    const level = nextLevel(dial, state.level, setting.levels) ?? state.level;
    const doses = setting.dosesOfLevel(level);
    return { level, doses, starts: doses };
  }
  let doses = state.doses;
  for (const lane of state.doses.keys())
    doses = movedForLane(dial, lane, { ...state, doses }, setting);
  return { ...state, doses };
}

function movedForLane(
  dial: SideDial,
  lane: Lane,
  state: ClimbState,
  setting: ClimbSetting,
): LaneDoses {
  const doses = new Map(state.doses);
  const dose = doses.get(lane);
  if (!dose) return doses;
  doses.set(lane, stepped(dial, dose, setting));
  for (const key of dial.restart) {
    if (key === 'level') continue;
    const lanes = ITEM_DIALS.has(key) ? [...doses.keys()] : [lane];
    for (const one of lanes) doses.set(one, restarted(doses.get(one), state.starts.get(one), key));
  }
  return doses;
}

function restarted(
  dose: Dose | undefined,
  start: Dose | undefined,
  key: Exclude<DialKey, 'level'>,
): Dose {
  if (!dose || !start) throw new Error('a climb restarts only sides that it started with');
  const values: { -readonly [K in keyof DoseValues]: DoseValues[K] } = { ...dose.values };
  const origins = { ...dose.origins };
  delete values[key];
  delete origins[key];
  if (start.values[key] !== undefined) {
    Object.assign(values, { [key]: start.values[key] });
    const origin = start.origins[key];
    if (origin) origins[key] = origin;
  }
  return { values, origins };
}
