// "New since last time": held against the sheet that was handed over before this visit.
import { cpSync, existsSync, mkdtempSync, readFileSync, realpathSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import fc from 'fast-check';
import { afterAll, describe, expect, it } from 'vitest';
import { openVersion } from '../../src/handouts/version.ts';
import { memoryFolder } from '../../src/load/folder.ts';
import { sheetView } from '../../src/render/sheet/worded-sheet.ts';
import { runIn } from '../support/cases.ts';
import { git } from '../support/repository.ts';
import { makeClinic } from '../visits/make-clinic.mjs';
import { exampleFiles, type Files } from './versions.ts';

const files = exampleFiles();
const PLAN = 'plans/M-0412.yaml';
const text = files[PLAN] as string;

/** The sheet of M-0412, held against another version of it. */
function sheetOf(now: Files, last: Files | null) {
  const version = (all: Files) => {
    const { compiled, wording } = openVersion(memoryFolder(all), ['M-0412']);
    const { plan, numbers } = compiled.plans[0] ?? {};
    const words = wording.get('en');
    return plan && numbers && words ? { practice: compiled.practice, plan, numbers, words } : null;
  };
  const [one, before] = [version(now), last && version(last)];
  if (!one || (last && !before)) return null;
  return sheetView({ ...one, person: null, last: before });
}

const withText = (changed: string): Files => ({ ...files, [PLAN]: changed });
const LAST_VISIT = '    why: Ready for strength on three days a week\n';
/** A visit four weeks on, so that the sheet shows week 4. */
const laterVisit = (plan: string) =>
  plan
    .replace(LAST_VISIT, `${LAST_VISIT}  - date: 2026-12-21\n`)
    .replace('next_visit: 2026-12-21', 'next_visit: 2027-01-11');
const newsOf = (now: string, last = text) =>
  sheetOf(withText(now), withText(last))?.news?.sentences ?? [];
const marksOf = (now: string, last = text) =>
  sheetOf(withText(now), withText(last))?.exercises.sessions.flatMap(({ groups }) =>
    groups.flatMap(({ exercises }) =>
      exercises.flatMap(({ number, mark }) => (mark ? [[number, mark]] : [])),
    ),
  );

describe('news', () => {
  it('there is none without an earlier sheet', () => {
    expect(sheetOf(files, null)?.news).toBeNull();
  });

  it('a step that the earlier sheet announced is none', () => {
    const now = laterVisit(text);
    expect(newsOf(now)).toEqual([
      'This is what changed since your sheet of 23 November 2026. Put the old sheet away.',
      'Nothing is new. Go on with the steps and dates that you know.',
    ]);
    expect(marksOf(now)).toEqual([]);
  });

  it('a side is told of in a sentence of its own', () => {
    const now = laterVisit(text).replace(
      '            level: hands-free\n            only: affected\n',
      '            level: hands-free\n            only: other\n',
    );
    const told = newsOf(now);
    expect(told).toContainEqual(
      expect.stringMatching(/^Exercise \d, Stand on one leg: hands free: the side has changed\.$/),
    );
    expect(marksOf(now)?.map(([, mark]) => mark)).toEqual(['◆ Changed']);
  });

  it('names what is more, what came, what went, the days and the rules', () => {
    const now = laterVisit(text)
      .replace('{left: {sets: 2}', '{left: {sets: 4}')
      .replace(
        '          - do: calf-stretch\n            priority: could\n',
        '          - do: march\n',
      )
      .replace('days: [tue, sat]', 'days: [tue, sun]')
      .replace('  - The ankle gives way\n', '  - The ankle gives way twice\n')
      .replace('  - Wear shoes for the step and for every walk\n', '');
    const told = newsOf(now).join('\n');
    expect(told).toMatch(/Turn your foot out: .*: how much has changed\./);
    expect(told).toMatch(/March.*: this is new\./);
    expect(told).toContain('Calf stretch: knee straight: leave it out now.');
    expect(told).toContain('Walk: the days have changed. It is now on Tuesday and Sunday.');
    expect(told).toContain('The rules for pain and stopping have changed.');
    expect(told).toContain('What to take care of has changed.');
    expect(
      marksOf(now)
        ?.map(([, mark]) => mark)
        .sort(),
    ).toEqual(['◆ Changed', '◆ New']);
  });

  it('an exercise whose dose is another on the same day is always marked', () => {
    let differing = 0;
    const exercisesOf = (now: Files, last: Files | null) =>
      sheetOf(now, last)?.exercises.sessions.flatMap(({ groups }) =>
        groups.flatMap(({ exercises }) => exercises),
      );
    const before = exercisesOf(withText(laterVisit(text)), null) ?? [];
    const numbers = [...text.matchAll(/(?<=(?:sets|reps|hold|by|to|week): )\d+/g)];
    fc.assert(
      fc.property(
        fc.nat({ max: numbers.length - 1 }),
        fc.integer({ min: 1, max: 3 }),
        (at, more) => {
          const { index, 0: digits } = numbers[at] as RegExpExecArray;
          const changed = `${text.slice(0, index)}${Number(digits) + more}${text.slice(index + digits.length)}`;
          for (const one of exercisesOf(withText(laterVisit(changed)), files) ?? []) {
            const isSame = before.some(
              ({ name, dose, note }) => name === one.name && dose === one.dose && note === one.note,
            );
            if (isSame) continue;
            differing += 1;
            expect(one.mark, `${one.name}: ${one.dose}`).not.toBeNull();
          }
        },
      ),
      { numRuns: 30 },
    );
    expect(differing).toBeGreaterThan(1);
  });
});

describe('by the register', () => {
  const made: string[] = [];
  afterAll(() => {
    for (const one of made) rmSync(one, { recursive: true, force: true });
  });
  const place = () => {
    const top = realpathSync(mkdtempSync(join(tmpdir(), 'carryover-news-')));
    made.push(top);
    return top;
  };
  const clinic = () => {
    const root = join(place(), 'clinic');
    makeClinic(root, (cwd: string, args: string[], today: string) => runIn(cwd, args, today));
    return root;
  };
  const sheet = (root: string) => {
    runIn(root, ['build', 'M-0412']);
    return readFileSync(join(root, 'handouts/M-0412.md'), 'utf8');
  };
  const SECTION = '## New since last time';

  it('a sheet stays as it is after it was handed over, and again', () => {
    const root = clinic();
    const before = sheet(root);
    expect(before).toContain(
      `${SECTION}\n\nThis is what changed since your sheet of 21 December 2026.`,
    );
    expect(runIn(root, ['handover', 'M-0412'], '2027-01-12').status).toBe(0);
    expect(sheet(root)).toBe(before);
    expect(runIn(root, ['check', 'M-0412', '--handouts']).out).not.toContain('handout-stale');
  });

  it('without a register, git, or the commit there is no such section', () => {
    const root = clinic();
    const clone = join(place(), 'clone');
    git(root, 'clone', '-q', '--depth', '1', pathToFileURL(root).href, clone);
    expect(sheet(clone)).not.toContain(SECTION);
    const bare = join(place(), 'bare');
    cpSync(root, bare, { recursive: true, filter: (path) => !path.includes('.git') });
    expect(existsSync(join(bare, 'handovers.csv'))).toBe(true);
    expect(sheet(bare)).not.toContain(SECTION);
    rmSync(join(root, 'handovers.csv'));
    expect(sheet(root)).not.toContain(SECTION);
  });

  it('and the note tells the same, with found and why', () => {
    const root = clinic();
    const { out } = runIn(root, ['show', 'M-0412', '--format', 'note']);
    expect(out.trim().split('\n')).toHaveLength(1);
    expect(out).toContain('2027-01-11, plan M-0412');
    expect(out).toContain('Found: Nine raises on the left foot alone.');
    expect(out).toContain('Changed since 2026-12-21: ');
    expect(out).toContain('weeks: 8 → 10');
    expect(out).toContain('Why: Two weeks more, until the left does twelve.');
  });
});
