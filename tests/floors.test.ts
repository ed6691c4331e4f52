// The floors of the house: imports run one way, and the pure floors touch nothing outside.
import { readdirSync, readFileSync } from 'node:fs';
import { join, posix } from 'node:path';
import { describe, expect, it } from 'vitest';

const src = join(import.meta.dirname, '..', 'src');

/** A file imports from its own floor or from those before it. */
const FLOORS = [
  'units',
  'finding',
  'model',
  'readability',
  'load',
  'compute',
  'figure',
  'check',
  'diff',
  'render',
  'build.ts',
  'handouts',
  'commands',
  'menu',
  'main.ts',
];

/** No disk, clock, chance, terminal, or locale of the machine. */
const PURE = [
  'units',
  'finding',
  'model',
  'readability',
  'compute',
  'figure',
  'check',
  'diff',
  'render',
];
const OUTSIDE =
  /from 'node:|\bprocess\.|\bconsole\.|\bDate\.now\b|new Date\(\)|Math\.random|\.toLocale|localeCompare|\bfetch\(/;

const files = (readdirSync(src, { recursive: true }) as string[])
  .map((path) => path.replaceAll('\\', '/'))
  .filter((path) => path.endsWith('.ts'))
  .sort();

function floorOf(path: string): number {
  return FLOORS.indexOf(path.split('/')[0] ?? '');
}

function importsOf(path: string): string[] {
  const text = readFileSync(join(src, path), 'utf8');
  const found = [...text.matchAll(/^(?:import|export)[\s\S]*?from '(\.[^']+)'/gm)].map(
    (match) => match[1] ?? '',
  );
  return found.map((one) => posix.join(posix.dirname(path), one));
}

describe('the floors', () => {
  it('hold every file', () => {
    expect(files.filter((path) => floorOf(path) === -1)).toEqual([]);
    expect(files.length).toBeGreaterThan(50);
  });

  it('import one way', () => {
    const wrong = files.flatMap((path) =>
      importsOf(path)
        .filter((one) => floorOf(one) > floorOf(path))
        .map((one) => `${path} imports ${one}`),
    );
    expect(wrong).toEqual([]);
  });

  it('have no circle of imports', () => {
    const seen = new Set<string>();
    const circles: string[] = [];
    const walk = (path: string, above: readonly string[]) => {
      if (above.includes(path)) {
        circles.push([...above.slice(above.indexOf(path)), path].join(' > '));
        return;
      }
      if (seen.has(path)) return;
      for (const one of importsOf(path)) walk(one, [...above, path]);
      seen.add(path);
    };
    for (const path of files) walk(path, []);
    expect(circles).toEqual([]);
  });

  it.each(PURE)('keep %s pure', (floor) => {
    const impure = files.filter(
      (path) => path.startsWith(`${floor}/`) && OUTSIDE.test(readFileSync(join(src, path), 'utf8')),
    );
    expect(impure).toEqual([]);
  });
});
