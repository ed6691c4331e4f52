// The things around the body: which they are, and all of them as seen.
import type { Figure, Prop } from '../model/figure.ts';
import { besideOf } from './beside.ts';
import type { Camera } from './camera.ts';
import { furniture } from './furniture.ts';
import { heldThing } from './held-things.ts';
import type { PropDraft, PropShapes } from './prop-piece.ts';
import { WALLS } from './scene.ts';
import type { SettledFigure } from './settle.ts';

function isBeside({ at }: Prop): boolean {
  return at.includes('side') || at.includes('other-side');
}

/** What the figure names, and what its poses cannot do without. */
function propsOf(figure: Figure, { start, end }: SettledFigure): readonly Prop[] {
  const poses = [start, ...(end ? [end] : [])];
  const touches = new Set(poses.flatMap(({ intent }) => intent.touches.map((one) => one.surface)));
  const named = new Set(figure.props.map(({ name }) => name));
  const isSeated = poses.some(({ intent }) =>
    intent.touches.some(({ part, surface }) => part === 'hips' && surface === 'seat'),
  );
  const isChairElsewhere = besideOf(figure).has('chair');
  const add: Prop[] = [];
  const need = (name: Prop['name'], isNeeded: boolean) => {
    if (isNeeded && !named.has(name)) add.push({ name, at: [], place: figure.place });
  };
  if (isSeated && isChairElsewhere) add.push({ name: 'chair', at: [], place: figure.place });
  need('chair', isSeated && !named.has('bed'));
  need(
    'wall',
    WALLS.some((wall) => touches.has(wall)),
  );
  need('worktop', touches.has('worktop') && !named.has('chair') && !named.has('table'));
  need('step', touches.has('step') && !named.has('stairs'));
  need('rail', touches.has('rail'));
  need('door-frame', touches.has('door-frame'));
  const all = [...add, ...figure.props];
  // What stands beside the body is farther away than what is under it.
  return [...all.filter(isBeside), ...all.filter((one) => !isBeside(one))];
}

export function propShapes(figure: Figure, settled: SettledFigure, camera: Camera): PropShapes {
  const now = settled.end ?? settled.start;
  const drafts = propsOf(figure, settled).flatMap(
    (prop) =>
      furniture(prop, settled, camera) ?? heldThing(prop, now.body, settled.start.body, camera),
  );
  const piecesOf = (layer: PropDraft['layer']) =>
    drafts.filter((one) => one.layer === layer).flatMap(({ pieces }) => pieces);
  return {
    behind: piecesOf('behind'),
    before: piecesOf('before'),
    dots: drafts.flatMap(({ dots }) => dots),
  };
}
