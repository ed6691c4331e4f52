// "New since last time": held against the sheet that was handed over before this visit.
import { cpSync, existsSync, mkdtempSync, readFileSync, realpathSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import fc from 'fast-check';
import { afterAll, describe, expect, it } from 'vitest';
import { sheetView } from '../../src/render/sheet/worded-sheet.ts';
import { runIn } from '../support/cases.ts';
import { commitAll, edit, git } from '../support/repository.ts';
import { makeClinic } from '../visits/make-clinic.mjs';
import { exampleFiles, type Files, versionOf } from './versions.ts';

const files = exampleFiles();
const PLAN = 'plans/M-0412.yaml';
const text = files[PLAN] as string;

/** The sheet of M-0412, held against another version of it. */
function sheetOf(now: Files, last: Files | null) {
  const version = (all: Files) => {
    const { compiled, wording } = versionOf(all, 'M-0412');
    const { plan, numbers } = compiled.plans[0] ?? {};
    const words = wording.get('en');
    return plan && numbers && words ? { practice: compiled.practice, plan, numbers, words } : null;
  };
  const [one, before] = [version(now), last && version(last)];
  if (!one || (last && !before)) return null;
  return sheetView({ ...one, person: null, last: before && { ...before, date: '2026-11-24' } });
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
      'This is what changed since the sheet that you got on 24 November 2026. Put the old sheet away.',
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
      expect.stringMatching(
        /^Exercise \d, Stand on one leg: hands free: the side has changed\. Now: .*with the right leg only/,
      ),
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
    expect(told).toMatch(/March on the spot: this is new, in place of Calf stretch/);
    expect(told).toContain('Calf stretch: knee straight: leave it out now.');
    expect(told).toContain('Walk: the days have changed. It is now on Tuesday and Sunday.');
    expect(told).toContain('New: Stop for today if: The ankle gives way twice.');
    expect(told).toContain('What to take care of has changed.');
    expect(
      marksOf(now)
        ?.map(([, mark]) => mark)
        .sort(),
    ).toEqual(['◆ Changed', '◆ New']);
  });

  it('an exercise that moved to other days, another order, and another name of a session', () => {
    const moved = laterVisit(text)
      .replace('          - do: calf-stretch\n            priority: could\n', '')
      .replace('    name: Walk\n', '    name: Out and about\n')
      .replace(
        '          - do: walk\n',
        '          - do: calf-stretch\n            priority: could\n          - do: walk\n',
      );
    const told = newsOf(moved).join('\n');
    expect(told).toMatch(
      /Calf stretch: .*: it is now part of Out and about, on Tuesday and Saturday\./,
    );
    expect(told).toContain('Walk is now called Out and about.');
    const [circles, first] = ['          - do: foot-out-band\n', '          - do: step-up\n'];
    const parts = laterVisit(text).split(/(?= {10}- do: (?:foot-out-band|step-up)\n)/);
    expect(parts.length).toBe(3);
    const [head = '', band = '', rest = ''] = parts;
    const step = rest.slice(0, rest.indexOf('\n      - part: balance'));
    const swapped = `${head + step.trimEnd()}\n${band}${rest.slice(step.length)}`;
    expect(swapped.indexOf(first)).toBeLessThan(swapped.indexOf(circles));
    expect(newsOf(swapped).join('\n')).toContain(
      'Strong ankle: the order has changed. Go by the numbers.',
    );
  });

  it('other pain ranges are no news of an exercise', () => {
    const now = laterVisit(text).replace(
      'pain: {carry_on: 0-2, ease_off: 3-5, stop: 6-10}',
      'pain: {carry_on: 0-1, ease_off: 2-5, stop: 6-10}',
    );
    expect(newsOf(now).slice(1)).toEqual([
      'The rules for pain and stopping have changed. Read the box again.',
      'New: Pain 0 or 1: carry on. It should settle by the next morning.',
      'New: Pain 2 to 5: ease off. Do fewer, or do it the easier way.',
    ]);
    expect(marksOf(now)).toEqual([]);
  });

  it('an item that was split between the sides is held against its own side', () => {
    const whole = '          - do: calf-stretch\n            priority: could\n';
    const without =
      '          - do: calf-stretch\n            as: left-calf-knee-bent\n            level: knee-bent\n            only: affected\n            priority: could\n';
    const last = text.replace(without, '');
    const halves =
      '          - do: calf-stretch\n            only: left\n            dose: {hold: 45 s}\n          - do: calf-stretch\n            as: right-calf\n            only: right\n';
    const now = laterVisit(last).replace(whole, halves);
    const told = newsOf(now, last).filter((line) => line.includes('Calf stretch'));
    expect(told.filter((line) => line.includes('this is one side only'))).toHaveLength(2);
    expect(told.filter((line) => line.includes('how much has changed'))).toEqual([
      expect.stringMatching(/Before: Hold for 30 seconds, 2 times, with the left leg only/),
    ]);
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
      `${SECTION}\n\nThis is what changed since the sheet that you got on 21 December 2026.`,
    );
    expect(runIn(root, ['handover', 'M-0412'], '2027-01-12').status).toBe(0);
    expect(sheet(root)).toBe(before);
    expect(runIn(root, ['check', 'M-0412', '--handouts']).out).not.toContain('handout-stale');
  });

  it('a correction between visits is held against the sheet of the day before', () => {
    const root = clinic();
    edit(root, PLAN, '  - The ankle gives way\n', '  - The ankle gives way\n  - You limp\n');
    commitAll(root, 'One more rule');
    expect(sheet(root)).toContain('since the sheet that you got on 11 January 2027.');
    expect(runIn(root, ['handover', 'M-0412'], '2027-01-12').status).toBe(0);
    const handed = sheet(root);
    expect(handed).toContain('since the sheet that you got on 11 January 2027.');
    expect(handed).toContain('New: Stop for today if: You limp.');
  });

  it('a version that this copy lacks is told of, and no sheet is called outdated for it', () => {
    const root = clinic();
    const number = /sheet (\w{4} \w{4})/.exec(runIn(root, ['build', 'M-0412']).out)?.[1] ?? '';
    const clone = join(place(), 'clone');
    git(root, 'clone', '-q', '--depth', '1', pathToFileURL(root).href, clone);
    const { out } = runIn(clone, ['check', 'M-0412']);
    expect(out).toContain('cannot say what is new since');
    expect(out).not.toContain('changed-since-handover');
    expect(runIn(clone, ['handover', '--find', number]).out).toContain('cannot be said');
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
