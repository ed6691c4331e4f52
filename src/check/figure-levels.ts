// The figures of levels, each once: levels that share their exercise's figure and are done alike are
// drawn alike, and a mistake in it is one mistake.
import type { Level } from '../model/exercise.ts';
import type { Figure } from '../model/figure.ts';

export interface FigureLevel {
  readonly figure: Figure;
  /** One of the levels that it is drawn for. */
  readonly level: Level;
}

export function figuresOf(levels: readonly Level[]): readonly FigureLevel[] {
  const found = new Map<Figure, Map<string, FigureLevel>>();
  for (const level of levels) {
    const { figure, position, sides } = level;
    if (!figure) continue;
    const ways = found.get(figure) ?? new Map<string, FigureLevel>();
    found.set(figure, ways);
    const way = `${position} ${sides}`;
    if (!ways.has(way)) ways.set(way, { figure, level });
  }
  return [...found.values()].flatMap((ways) => [...ways.values()]);
}
