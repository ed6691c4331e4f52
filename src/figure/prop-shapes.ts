// The things around the body: which they are, and all of them as seen.
import type { Figure, Prop } from '../model/figure.ts';
import type { Camera } from './camera.ts';
import { furniture } from './furniture.ts';
import { heldThing } from './held-things.ts';
import type { PropDraft, PropShapes } from './prop-piece.ts';
import type { SettledFigure } from './settle.ts';

/** What the figure names, and what its poses cannot do without. */
function propsOf(figure: Figure, { start, end }: SettledFigure): readonly Prop[] {
  const poses = [start, ...(end ? [end] : [])];
  const touches = new Set(poses.flatMap(({ intent }) => intent.touches.map((one) => one.surface)));
  const named = new Set(figure.props.map(({ name }) => name));
  const add: Prop[] = [];
  const need = (name: Prop['name'], isNeeded: boolean) => {
    if (isNeeded && !named.has(name)) add.push({ name, at: [], place: figure.place });
  };
  need('chair', touches.has('seat') && !named.has('bed'));
  need('wall', touches.has('wall-ahead') || touches.has('wall-behind'));
  need('worktop', touches.has('worktop') && !named.has('chair') && !named.has('table'));
  need('step', touches.has('step'));
  return [...add, ...figure.props];
}

export function propShapes(figure: Figure, settled: SettledFigure, camera: Camera): PropShapes {
  const now = settled.end ?? settled.start;
  const drafts = propsOf(figure, settled).flatMap(
    (prop) =>
      furniture(prop.name, settled, camera) ??
      heldThing(prop, now.body, settled.start.body, camera),
  );
  const piecesOf = (layer: PropDraft['layer']) =>
    drafts.filter((one) => one.layer === layer).flatMap(({ pieces }) => pieces);
  return {
    behind: piecesOf('behind'),
    before: piecesOf('before'),
    dots: drafts.flatMap(({ dots }) => dots),
  };
}
