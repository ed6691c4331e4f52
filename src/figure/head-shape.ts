// A head with hair, a face, a nose and a chin, as seen: they say which way it looks. Measures in
// statures, chosen by eye.
import type { Camera } from './camera.ts';
import { ellipse, ellipsoid, hull } from './outline.ts';
import { smoothPath } from './path.ts';
import type { Piece } from './piece.ts';
import type { Skeleton } from './skeleton.ts';
import { along, type Point, point } from './space.ts';

/** A head with hair, a face, a nose and a chin; what is nearer to the eye covers what is farther. */
export function headPieces({ head, neckTop }: Skeleton, camera: Camera): readonly Piece[] {
  const at = (x: number, y: number, z = 0) => along(neckTop, head, point(x, y, z));
  const blob = (middle: Point, half: Point) => ellipsoid(middle, head, half, camera);
  const oval = (middle: Point, half: Point) => ellipse(middle, head, half, camera);
  const near = (spot: Point) => camera(spot).near;
  const face = oval(at(0.018, 0.068), point(0.038, 0.05, 0.041));
  const jaw = [
    ...blob(at(0.022, 0.045), point(0.033, 0.034, 0.036)),
    ...blob(at(0.04, 0.014), point(0.014, 0.014, 0.018)),
  ];
  const bridge = blob(at(0.049, 0.082), point(0.006, 0.008, 0.006));
  const nose = blob(at(0.061, 0.057), point(0.009, 0.008, 0.009));
  const skin: Piece = {
    tone: 'skin',
    path: face + smoothPath(hull(jaw)) + smoothPath(hull([...bridge, ...nose])),
  };
  const hair: Piece = {
    tone: 'hair',
    path: oval(at(-0.002, 0.077), point(0.054, 0.053, 0.049)),
  };
  const isSeen = (spot: Point) => near(spot) > near(at(0.014, 0.068)) + 0.008;
  const marks = [at(0.052, 0.074, 0.018), at(0.052, 0.074, -0.018)]
    .filter(isSeen)
    .map((eye) => oval(eye, point(0.004, 0.006, 0.0045)));
  const mouth = at(0.05, 0.027);
  // Where the nose stands out of the face nothing else has to show it.
  if (near(mouth) > near(at(0.014, 0.068)) + 0.02) {
    marks.push(oval(mouth, point(0.003, 0.003, 0.013)));
    marks.push(oval(at(0.066, 0.052), point(0.003, 0.0028, 0.006)));
  }
  if (near(at(-0.05, 0.08)) > near(at(0.06, 0.06)) + 0.02) return [skin, hair];
  const ears = [0.042, -0.042]
    .filter((z) => near(at(0, 0.06, z)) > near(at(0.014, 0.068)) - 0.005)
    .map(
      (z): Piece => ({
        tone: 'skin',
        path: oval(at(-0.006, 0.062, z), point(0.009, 0.014, 0.006)),
      }),
    );
  return [hair, skin, ...ears, { tone: 'mark', path: marks.join('') }];
}
