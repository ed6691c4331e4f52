// A piece of the drawn body: an outline in one tone. Pieces of a part are drawn in their order.

export interface Piece {
  readonly tone: 'limb' | 'trunk' | 'skin' | 'hair' | 'mark';
  readonly path: string;
}
