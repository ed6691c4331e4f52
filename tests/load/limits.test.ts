// The limits beyond which a parser is slow, or ends the process: just within them a file is read, just
// beyond them it is refused at once.
import { describe, expect, it } from 'vitest';
import { memoryFolder } from '../../src/load/folder.ts';
import { loadYaml } from '../../src/load/library.ts';

const FILE = 'exercises/one.yaml';

function checksOf(content: string | Uint8Array): readonly string[] {
  return loadYaml(memoryFolder({ [FILE]: content }), FILE, 'exercise').findings.map(
    ({ check }) => check,
  );
}

const LIMITS = ['file-too-big', 'file-too-deep', 'file-too-long'];

/** Which of the limits a text is beyond. */
function beyond(content: string | Uint8Array): readonly string[] {
  return checksOf(content).filter((check) => LIMITS.includes(check));
}

const MIB = 1024 * 1024;
const nested = (deep: number) => `tags: ${'['.repeat(deep)}${']'.repeat(deep)}\n`;
const indented = (deep: number) =>
  `${Array.from({ length: deep }, (_, i) => `${' '.repeat(i)}a:`).join('\n')} b\n`;
const keyed = (keys: number) =>
  `words:\n${Array.from({ length: keys }, (_, i) => `  k${i}: a`).join('\n')}\n`;
const keyedInBraces = (keys: number) =>
  `words: {${Array.from({ length: keys }, (_, i) => `k${i}: a`).join(', ')}}\n`;

describe('a file', () => {
  it.each([
    ['of 1 MiB', `# ${'x'.repeat(MIB - 3)}\n`, []],
    ['of a byte more', `# ${'x'.repeat(MIB - 2)}\n`, ['file-too-big']],
    ['with brackets 31 deep below a key', nested(31), []],
    ['with brackets 32 deep below a key', nested(32), ['file-too-deep']],
    ['with keys 32 deep', indented(32), []],
    ['with keys 33 deep', indented(33), ['file-too-deep']],
    ['with 2,000 keys in one place', keyed(2_000), []],
    ['with 2,002 keys in one place', keyed(2_002), ['file-too-long']],
    ['with 2,002 keys in braces', keyedInBraces(2_002), ['file-too-long']],
    ['with 5,000 lines of one list', `steps:\n${'  - a\n'.repeat(5_000)}`, []],
    ['with 20,000 lines of one list', `steps:\n${'  - a\n'.repeat(20_000)}`, ['file-too-long']],
  ] as const)('%s', (_, content, found) => {
    expect(beyond(content)).toEqual(found);
  });

  // Each of these took a parser seconds, or ended the process, before it was measured first.
  it.each([
    ['a hundred thousand brackets', `tags: ${'['.repeat(100_000)}`, 'file-too-deep'],
    ['a hundred thousand braces', `tags: ${'{'.repeat(100_000)}`, 'file-too-deep'],
    ['a hundred thousand dashes', `${'- '.repeat(100_000)}a`, 'file-too-deep'],
    ['a hundred thousand question marks', `${'? '.repeat(100_000)}a`, 'file-too-deep'],
    ['half a million commas', `tags: [${','.repeat(500_000)}]`, 'file-too-long'],
    ['half a million colons', `tags: {${': '.repeat(250_000)}}`, 'file-too-long'],
  ] as const)('with %s is refused at once', (_, content, check) => {
    const began = process.cpuUsage();
    expect(checksOf(content)).toEqual([check]);
    expect(process.cpuUsage(began).user / 1000).toBeLessThan(3_000);
  });

  it.each([
    ['in which a quote never closes', `name: "${'a '.repeat(400_000)}`],
    ['of one long word', `name: ${'a'.repeat(1_000_000)}`],
    ['of spaces', ' '.repeat(1_000_000)],
    ['of line ends', '\n'.repeat(1_000_000)],
    ['of tabs', '\t'.repeat(500_000)],
    ['of quotes', `name: ${"'".repeat(500_000)}`],
    ['of hashes after spaces', `name: a${' #'.repeat(400_000)}`],
    ['of colons', `name: ${'a:'.repeat(400_000)}`],
    ['of backslashes in quotes', `name: "${'\\'.repeat(500_001)}`],
    ['of digits and commas', `name: [${'1,'.repeat(24_000)}1]`],
    ['of lines that run on', `name: a\n${'  a\n'.repeat(15_000)}`],
    ['of open quotes line by line', `steps:\n${'  - "a\n'.repeat(8_000)}`],
    ['of traps line by line', `steps:\n${'  - a: b\n'.repeat(8_000)}`],
    ['of exclamation marks', `name: ${'! '.repeat(20_000)}`],
    ['of spaces before a tab', `${' '.repeat(300_000)}\ta: b`],
    ['of spaces inside a line', `name: a${' '.repeat(500_000)}b`],
  ] as const)(
    '%s is judged soon, and without a throw',
    (_, content) => {
      const began = process.cpuUsage();
      checksOf(content);
      expect(process.cpuUsage(began).user / 1000).toBeLessThan(6_000);
    },
    60_000,
  );
});
