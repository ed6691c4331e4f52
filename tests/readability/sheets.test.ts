// The sheets of the example clinic, and what of a sheet is read as running text.
import { describe, expect, it, test } from 'vitest';
import { compile } from '../../src/build.ts';
import { planReading } from '../../src/check/reading-grade.ts';
import { withSheetReading } from '../../src/handouts/sheet-reading.ts';
import { loadWording } from '../../src/handouts/wording.ts';
import { memoryFolder } from '../../src/load/folder.ts';
import { sheetGrade } from '../../src/render/sheet/sheet-grade.ts';
import { sheetSentences } from '../../src/render/sheet/sheet-sentences.ts';
import { sheetView } from '../../src/render/sheet/worded-sheet.ts';
import { exampleFiles } from '../support/example-files.ts';

const AMA_GRADE = 6;
/** A text by file; none for a picture. */
const files = exampleFiles('saltmarsh');

function compiled(changed: Readonly<Record<string, string>> = {}) {
  const folder = memoryFolder({ ...files, ...changed });
  const all = compile(folder, null);
  return { all, wording: loadWording(folder, all).value };
}

const { all, wording } = compiled();
const sheets = all.plans.flatMap((one) => {
  const words = wording.get(one.language);
  if (!one.plan || !one.numbers || !words) return [];
  const { plan, numbers } = one;
  const view = sheetView({ practice: all.practice, plan, numbers, person: null, words });
  return [{ id: one.id, plan, view }];
});
const inEnglish = sheets.filter(({ view }) => view.language === 'en');

describe('the example clinic', () => {
  test.each(inEnglish)('the sheet $id and its exercises read at grade 6 or below', (one) => {
    const grade = sheetGrade(one.view, all.practice);
    const { sheet, exercises } = planReading(one.plan, all.practice, grade);
    expect(sheet?.counts.sentences).toBeGreaterThan(30);
    expect(sheet?.fleschKincaid).toBeLessThanOrEqual(AMA_GRADE);
    expect(sheet?.smog).toBeLessThanOrEqual(AMA_GRADE);
    expect(exercises.length).toBeGreaterThan(2);
    for (const { grade: own } of exercises)
      expect(Math.max(own.fleschKincaid, own.smog)).toBeLessThanOrEqual(AMA_GRADE);
  });

  it('has sheets in English', () => {
    expect(inEnglish.length).toBeGreaterThan(4);
  });
});

describe('the running text of a sheet', () => {
  const view = inEnglish.find(({ id }) => id === 'M-0412')?.view;
  if (!view) throw new Error('the example has no plan M-0412');
  const sentences = sheetSentences(view);

  it('has what is to be done, with the beginning of a list at each entry', () => {
    const [exercise] = view.exercises.sessions[0]?.groups[0]?.exercises ?? [];
    for (const text of [exercise?.dose, exercise?.steps[0], view.goals?.sentences[0]])
      expect(sentences).toContain(text);
    const [reason] = view.safety.stopIf.reasons;
    expect(sentences).toContain(`${view.safety.stopIf.lead} ${reason}`);
  });

  it('has no headings, names, days to tick or ways to reach the practice', () => {
    const left = [view.head.title, view.safety.heading, view.safety.contact, view.footer.contact];
    for (const text of [...left, view.tick.rows[0]?.date]) expect(sentences).not.toContain(text);
  });
});

describe('a sheet above the grade', () => {
  const file = 'plans/M-0412.yaml';
  const hard = Array.from(
    { length: 40 },
    (_, i) => `  - Unavoidable intermittent deterioration necessitates consultation ${i}\n`,
  );
  const text = files[file] as string;
  const withHard = text.replace(/^precautions:\n/m, (key) => key + hard.join(''));
  const found = (plan: string, practice = '') => {
    const changed = { [file]: plan, 'practice.yaml': `${files['practice.yaml']}${practice}` };
    const { all: read, wording: packs } = compiled(changed);
    return withSheetReading(read, packs, false);
  };
  const told = (all: ReturnType<typeof found>) =>
    all.findings.filter(({ check }) => check === 'reading-grade');
  const accepted = (plan: string) =>
    plan.replace(/^sessions:/m, 'accept: [{check: reading-grade, why: Agreed}]\nsessions:');

  it('is told of once, in the whole and in its plan', () => {
    expect(withHard).not.toBe(text);
    const all = found(withHard);
    expect(told(all)).toHaveLength(1);
    const own = all.plans.find(({ id }) => id === 'M-0412')?.findings ?? [];
    expect(own.filter(({ check }) => check === 'reading-grade')).toEqual(told(all));
  });

  it('can be accepted, and an accept of one that is not is told of', () => {
    expect(/^accept:/m.test(text)).toBe(false);
    expect(told(found(accepted(withHard)))[0]?.accepted).toEqual({ why: 'Agreed' });
    const idle = found(accepted(text)).findings.filter(
      ({ check }) => check === 'accept-settles-nothing',
    );
    expect(idle.map(({ message }) => message)).toEqual([
      '"reading-grade" is accepted here, and finds nothing here.',
    ]);
  });

  it('is left alone where the plan is closed, or the sheet is in another language', () => {
    const closed = `${withHard}closed: {date: 2026-12-01, why: Done}\n`;
    expect(told(found(closed))).toEqual([]);
    expect(told(found(`${withHard}handout_language: es\n`))).toEqual([]);
  });
});
