// Whole sheets in every language: of random valid plans, section by section, the numbers of the English
// sheet and its sides, and nothing left to fill in.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { compile } from '../../src/build.ts';
import { memoryFolder } from '../../src/load/folder.ts';
import type { SheetView } from '../../src/render/sheet/sheet-view.ts';
import { sheetView } from '../../src/render/sheet/worded-sheet.ts';
import { cases, EVERYTHING, focusOn } from '../simulator/plans.ts';
import type { Case } from '../simulator/written.ts';
import { filesOf } from '../simulator/yaml.ts';
import { exampleFiles, planCodes } from '../support/pages-of.ts';
import { LANGUAGES, SPOILT, told, wordsOf } from './packs.ts';

const OTHERS = LANGUAGES.filter((language) => language !== 'en');

/** The sheet of a plan in a language; the practitioner's own texts stay as they are written. */
function sheetsIn(files: Readonly<Record<string, string | Uint8Array>>, code: string) {
  const { practice, plans } = compile(memoryFolder(files), { plans: [code], exercises: [] });
  const [one] = plans;
  if (!one?.plan || !one.numbers)
    throw new Error(`no numbers: ${one?.findings.map(({ message }) => message).join(' ')}`);
  const { plan, numbers } = one;
  return (language: string): SheetView => {
    const view = sheetView({
      practice: { ...practice, language, inLanguage: new Map() },
      plan,
      numbers,
      person: null,
      words: wordsOf(language),
    });
    return { ...view, head: { ...view.head, unreviewed: null } };
  };
}

function textsIn(value: unknown): readonly string[] {
  if (typeof value === 'string') return [value];
  if (typeof value === 'number') return [String(value)];
  if (value === null || typeof value !== 'object' || value instanceof Uint8Array) return [];
  return Object.values(value).flatMap(textsIn);
}

function expectSameSheet(language: string, sheet: SheetView, english: SheetView): void {
  for (const section of Object.keys(english) as (keyof SheetView)[]) {
    if (section === 'language' || section === 'direction') continue;
    const [here, there] = [textsIn(sheet[section]), textsIn(english[section])];
    expect(here.length, section).toBe(there.length);
    const [ours, theirs] = [told(language, here.join('\n')), told('en', there.join('\n'))];
    const message = `${section}\n${here.join('\n')}\n\n${there.join('\n')}`;
    expect([...ours.numbers].sort(), message).toEqual([...theirs.numbers].sort());
    expect(ours.sides, message).toEqual(theirs.sides);
    for (const text of here) {
      expect(text).not.toMatch(SPOILT);
      expect(text.normalize('NFC')).toBe(text);
    }
  }
}

describe.each(OTHERS)('a sheet in %s', (language) => {
  const hold = (all: Case) => {
    const sheet = sheetsIn(filesOf(all), all.plan.plan);
    expectSameSheet(language, sheet(language), sheet('en'));
  };

  it.each([
    ['climbs', focusOn('climbs', 'sides', 'easy')],
    ['circuits', focusOn('circuits', 'climbs', 'sides', 'easy')],
    ['everything together', EVERYTHING],
  ])(
    'of random plans: %s',
    (_, focus) => {
      fc.assert(fc.property(cases(focus), hold), { numRuns: 60, seed: 1407 });
    },
    300_000,
  );

  it.each(planCodes(exampleFiles('saltmarsh')).filter((code) => code !== 'E-1407'))(
    'of the example plan %s',
    (code) => {
      const sheet = sheetsIn(exampleFiles('saltmarsh'), code);
      // The practitioner's own texts are English in both.
      const [ours, theirs] = [sheet(language), sheet('en')];
      for (const section of ['days', 'tick', 'normal'] as const)
        expect(told(language, textsIn(ours[section]).join('\n')).numbers.toSorted()).toEqual(
          told('en', textsIn(theirs[section]).join('\n')).numbers.toSorted(),
        );
    },
  );
});
