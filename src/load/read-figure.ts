// A figure's keys to a record: angles as numbers, what is touched as words, each with its place.
// Whether a body can do that is the figure floor's to find out.
import type { Place } from '../finding/place.ts';
import {
  type AngleName,
  type ArrowPart,
  type Figure,
  type FootPlace,
  type HandPlace,
  LIMB_ANGLES,
  type LimbAngle,
  type LimbPose,
  MIDDLE_ANGLES,
  type MiddleAngle,
  type Pose,
  type Prop,
  type PropName,
  type PropPlace,
  type Rest,
  type Shown,
  type View,
} from '../model/figure.ts';
import { parseAngle, parseTilt } from '../units/measure.ts';
import {
  type At,
  entries,
  isGroup,
  isList,
  pairs,
  placeOf,
  quantity,
  textOf,
  textsUnder,
  under,
  wordUnder,
} from './at.ts';
import type { FigureFile, OtherLimbFile, PoseFile, PropFile } from './written.ts';

/** The figure under a key; null where none is written. */
export function readFigure(at: At<FigureFile> | undefined): Figure | null {
  if (!at) return null;
  const end = under(at, 'end');
  return {
    place: at.keyPlace ?? placeOf(at),
    view: (wordUnder(at, 'view') ?? 'side') as View,
    shown: (wordUnder(at, 'show') ?? 'whole') as Shown,
    tilt: quantity(under(at, 'tilt'), parseTilt) ?? 0,
    position: wordUnder(at, 'position') ?? null,
    props: entries(under(at, 'props')).flatMap(readProps),
    arrow: (wordUnder(at, 'arrow') as ArrowPart | undefined) ?? null,
    start: readPose(under(at, 'start'), at.keyPlace ?? placeOf(at)),
    end: end ? readPose(end, placeOf(end)) : null,
  };
}

function readPose(at: At<PoseFile> | undefined, place: Place): Pose {
  const places = new Map<string, Place>();
  const other = under(at, 'other');
  const restsOn = under(at, 'rests_on');
  if (restsOn) places.set('rests_on', placeOf(restsOn));
  return {
    place: at?.keyPlace ?? place,
    limb: readLimb(at, '', places),
    other: readLimb(other, 'other.', places),
    middle: readAngles<MiddleAngle>(at, MIDDLE_ANGLES, '', places),
    lean: quantity(under(at, 'lean'), parseAngle) ?? null,
    restsOn: restsOn ? (textsUnder(at, 'rests_on') as readonly Rest[]) : null,
    keyPlaces: places,
  };
}

function readLimb(
  at: At<PoseFile> | At<OtherLimbFile> | undefined,
  prefix: string,
  places: Map<string, Place>,
): LimbPose {
  const one = at as At<OtherLimbFile> | undefined;
  for (const key of ['hand', 'foot'] as const) {
    const found = under(one, key);
    if (found) places.set(prefix + key, placeOf(found));
  }
  return {
    angles: readAngles<LimbAngle>(one, LIMB_ANGLES, prefix, places),
    hand: (wordUnder(one, 'hand') as HandPlace | undefined) ?? null,
    foot: (wordUnder(one, 'foot') as FootPlace | undefined) ?? null,
  };
}

function readAngles<K extends AngleName>(
  at: At<unknown> | undefined,
  names: readonly K[],
  prefix: string,
  places: Map<string, Place>,
): Partial<Record<K, number>> {
  const angles: Partial<Record<K, number>> = {};
  const known: ReadonlySet<string> = new Set(names);
  for (const one of at ? pairs(at) : []) {
    if (!known.has(one.key)) continue;
    const angle = quantity(one, parseAngle);
    if (angle === undefined) continue;
    angles[one.key as K] = angle;
    places.set(prefix + one.key, placeOf(one));
  }
  return angles;
}

/** A thing by its word, or things by their keys with the places where they are. */
function readProps(at: At<PropFile | string>): readonly Prop[] {
  if (!isGroup(at)) return [{ name: textOf(at) as PropName, at: [], place: placeOf(at) }];
  return pairs(at).map((one) => {
    const words = isList(one) ? entries(one as At<readonly unknown[]>).map(textOf) : [textOf(one)];
    const at = words as readonly PropPlace[];
    return { name: one.key as PropName, at, place: one.keyPlace ?? placeOf(one) };
  });
}
