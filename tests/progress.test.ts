// A long run says at a terminal how far it is, and nowhere else; the line is gone at the end.
import { describe, expect, it } from 'vitest';
import { progressOn } from '../src/commands/progress.ts';

function run(isTerminal: boolean, isWanted: boolean, steps: number): string {
  let written = '';
  let clock = 0;
  const err = {
    write: (text: string) => {
      written += text;
    },
    isTerminal,
    columns: 60,
  };
  const progress = progressOn(err, isWanted, () => clock);
  for (let step = 0; step < steps; step += 1) {
    clock += 100;
    progress.at(step, steps, `writing P-${step}`);
  }
  progress.end();
  return written;
}

describe('progress', () => {
  it('has count, plan and time left, and leaves no line behind', () => {
    const written = run(true, true, 100);
    // Ten steps in a second: after 51 steps of 100 ms each, 49 more take 4.9 s.
    expect(written).toContain('\r51 of 100: writing P-51, about 5 s left\u001b[K');
    expect(written.endsWith('\r\u001b[K')).toBe(true);
    expect(written.split('\r').every((line) => line.length <= 60 + 3)).toBe(true);
  });

  it.each([
    [false, true, 100],
    [true, false, 100],
    [true, true, 20],
  ])(
    'is silent without a terminal, when not wanted, or where little is to do',
    (isTerminal, isWanted, steps) => {
      expect(run(isTerminal, isWanted, steps)).toBe('');
    },
  );
});
