// The register of handovers: what is written is what is read; a damaged line costs itself alone.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { positionOf } from '../../src/finding/place.ts';
import { csvFields, csvLine } from '../../src/load/csv.ts';
import { memoryFolder } from '../../src/load/folder.ts';
import { loadRegister, REGISTER_HEADER, registerLine } from '../../src/load/register.ts';
import type { Handover } from '../../src/model/handover.ts';
import { LETTERS, SIGNS } from '../../src/model/sheet-signs.ts';

const ROW: Handover = {
  date: '2026-10-26',
  plan: 'M-0412',
  sheet: 'KP4T 7WQM',
  commit: '3f2a1b4c5d6e7f8091a2b3c4d5e6f708192a3b4c',
  language: 'en',
  by: 'rk',
};

const textOf = (...lines: readonly string[]) => `${[REGISTER_HEADER, ...lines].join('\n')}\n`;
const register = (content: string | Uint8Array) =>
  loadRegister(memoryFolder({ 'handovers.csv': content }));
const rowsIn = (content: string | Uint8Array) => register(content).rows.map(withoutPlace);
const told = (content: string | Uint8Array) =>
  register(content).findings.map(({ message, place, severity, check }) => {
    expect({ severity, check }).toEqual({ severity: 'warning', check: 'handover-damaged' });
    return `${positionOf(place).line}:${positionOf(place).column} ${message}`;
  });

function withoutPlace({ place: _, ...row }: Handover & { readonly place: unknown }): Handover {
  return row;
}

const signs = (alphabet: string, n: number) =>
  fc.string({ unit: fc.constantFrom(...alphabet), minLength: n, maxLength: n });
const handovers: fc.Arbitrary<Handover> = fc.record({
  date: fc
    .date({ min: new Date('1900-01-01'), max: new Date('2200-12-31'), noInvalidDate: true })
    .map((date) => date.toISOString().slice(0, 10)),
  plan: fc.stringMatching(/^[A-Za-z0-9][A-Za-z0-9-]{0,62}$/),
  sheet: fc
    .tuple(signs(LETTERS, 1), signs(SIGNS, 3), signs(SIGNS, 4))
    .map(([first, three, four]) => `${first}${three} ${four}`),
  commit: fc.oneof(signs('0123456789abcdef', 40), signs('0123456789abcdef', 64)),
  language: fc.stringMatching(/^[A-Za-z]{2,8}(-[A-Za-z0-9]{1,8}){0,3}$/),
  by: fc.option(fc.stringMatching(/^[a-z0-9][a-z0-9-]{0,62}$/)),
});

describe('a line of CSV (RFC 4180)', () => {
  const lineText = fc.string({ unit: 'binary' }).map((text) => text.replace(/[\r\n]/g, ' '));

  it('reads back as it was written, whatever its fields hold', () => {
    fc.assert(
      fc.property(fc.array(lineText, { minLength: 1, maxLength: 9 }), (fields) => {
        expect(csvFields(csvLine(fields))?.map(({ text }) => text)).toEqual(fields);
      }),
    );
  });

  it('says where each field stands', () => {
    fc.assert(
      fc.property(fc.array(lineText, { minLength: 1, maxLength: 9 }), (fields) => {
        const line = csvLine(fields);
        const parts = (csvFields(line) ?? []).map(({ start, end }) => line.slice(start, end));
        expect(parts.join(',')).toBe(line);
        expect(parts).toHaveLength(fields.length);
      }),
    );
  });

  // Examples of RFC 4180, section 2, rules 5 to 7.
  it.each([
    ['"aaa","bbb","ccc"', ['aaa', 'bbb', 'ccc']],
    ['zzz,yyy,xxx', ['zzz', 'yyy', 'xxx']],
    ['"aaa","b""bb","ccc"', ['aaa', 'b"bb', 'ccc']],
    ['', ['']],
    [',', ['', '']],
    ['"",""', ['', '']],
  ])('%s', (line, fields) => {
    expect(csvFields(line)?.map(({ text }) => text)).toEqual(fields);
  });

  it.each(['"a', 'a"b', '"a"b,c', 'a,"', '""",b'])('%s: its quotes do not pair', (line) => {
    expect(csvFields(line)).toBeNull();
  });
});

describe('a row', () => {
  it('reads back as it was written', () => {
    fc.assert(
      fc.property(fc.array(handovers, { maxLength: 20 }), (rows) => {
        const content = textOf(...rows.map(registerLine));
        const once = rows.filter(
          (one, i) => rows.findIndex((other) => registerLine(other) === registerLine(one)) === i,
        );
        expect(told(content)).toEqual([]);
        expect(rowsIn(content)).toEqual(once);
        // With the line ends of another system, and a mark of UTF-8 at the start.
        expect(rowsIn(`\uFEFF${content.replaceAll('\n', '\r\n')}`)).toEqual(once);
      }),
    );
  });

  it('has its place', () => {
    const [, second] = register(textOf(registerLine(ROW), registerLine({ ...ROW, by: null }))).rows;
    expect(second?.by).toBeNull();
    expect(second && positionOf(second.place)).toMatchObject({ line: 3, column: 1, endLine: 3 });
  });

  it('that is damaged in any one sign is read as it stands, or told of at its line; the others stay', () => {
    const line = registerLine(ROW);
    const others = [registerLine({ ...ROW, plan: 'K-1' }), registerLine({ ...ROW, plan: 'K-2' })];
    fc.assert(
      fc.property(
        fc.nat(line.length - 1),
        fc.string({ unit: 'binary', minLength: 0, maxLength: 1 }),
        (at, sign) => {
          fc.pre(!/[\r\n]/.test(sign));
          const damaged = `${line.slice(0, at)}${sign}${line.slice(at + 1)}`;
          fc.pre(damaged !== line);
          const content = textOf(others[0] as string, damaged, others[1] as string);
          const rows = rowsIn(content).map(registerLine);
          expect(rows.filter((one) => others.includes(one))).toEqual(others);
          const findings = told(content);
          if (findings.length === 0) expect(rows[1]).toBe(damaged);
          else {
            expect(rows).toEqual(others);
            expect(findings.every((one) => one.startsWith('3:'))).toBe(true);
          }
        },
      ),
      { numRuns: 500 },
    );
  });
});

describe('the file', () => {
  it('that is not there, or has nothing in it, has no rows', () => {
    expect(loadRegister(memoryFolder({}))).toEqual({ rows: [], findings: [] });
    expect(register('')).toEqual({ rows: [], findings: [] });
    expect(register('\n\n')).toEqual({ rows: [], findings: [] });
    expect(register(`${REGISTER_HEADER}\r\n`)).toEqual({ rows: [], findings: [] });
  });

  it('that is UTF-16 is told of once', () => {
    const bytes = Buffer.from(`\uFEFF${textOf(registerLine(ROW))}`, 'utf16le');
    expect(rowsIn(bytes)).toEqual([]);
    expect(told(bytes)).toEqual(['1:1 This file is saved as UTF-16; save it as UTF-8.']);
  });

  it('that is not UTF-8 in one line loses that line', () => {
    const bytes = Buffer.from(
      textOf('2026-10-26,M-0412,Kestr\u00e9l', registerLine(ROW)),
      'latin1',
    );
    expect(rowsIn(bytes)).toEqual([ROW]);
    expect(told(bytes)).toEqual([expect.stringMatching(/^2:1 This row has 3 fields/)]);
  });

  it('has a row for each handover of a practice of many years', () => {
    const rows = Array.from({ length: 20_000 }, (_, i) => ({ ...ROW, plan: `P-${i}` }));
    const content = textOf(...rows.map(registerLine));
    expect(content.length).toBeGreaterThan(1024 * 1024);
    expect(told(content)).toEqual([]);
    expect(rowsIn(content)).toHaveLength(20_000);
  });

  it('larger than 16 MiB is told of', () => {
    expect(told('x'.repeat(16 * 1024 * 1024 + 1))).toEqual([
      expect.stringMatching(/^1:1 This file is larger than 16 MiB/),
    ]);
  });

  it('that is a link is not followed', () => {
    const folder = memoryFolder({ 'handovers.csv': textOf(registerLine(ROW)) });
    const linked = {
      ...folder,
      entry: (path: string) => ({ path, kind: 'link' as const, size: 0 }),
    };
    const { rows, findings } = loadRegister(linked);
    expect(rows).toEqual([]);
    expect(findings.map(({ message }) => message)).toEqual([expect.stringMatching(/a link/)]);
  });

  it('has a row once that a merge brought twice, at its first place', () => {
    const other = registerLine({ ...ROW, by: 'jt' });
    const content = textOf(registerLine(ROW), other, registerLine(ROW), REGISTER_HEADER, other);
    expect(told(content)).toEqual([]);
    expect(register(content).rows.map(({ by, place }) => [by, positionOf(place).line])).toEqual([
      ['rk', 2],
      ['jt', 3],
    ]);
  });

  it('names what a row lacks in words that fit', () => {
    expect(told(textOf(registerLine({ ...ROW, by: 'R. Kestrel' })))).toEqual([
      `2:73 "by" says "R. Kestrel", which is no practitioner's id; a name never belongs here.`,
    ]);
    expect(told(textOf('one'))).toEqual([
      '2:1 This row has 1 field, and not the 6 of the register: date, plan, sheet, commit, language, by.',
    ]);
  });
});
