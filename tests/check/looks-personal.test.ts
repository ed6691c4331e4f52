// What in a folder's text looks like a person, and what only looks a little like it.
import { describe, expect, it } from 'vitest';
import { checkFolder } from '../../src/check/folder-checks.ts';
import { type FolderUnderCheck, looksPersonal } from '../../src/check/looks-personal.ts';
import type { Plan } from '../../src/model/plan.ts';
import type { Practice } from '../../src/model/practice.ts';
import { accept, checkSetting, PLAN_SOURCE, plan, practice, session } from './records.ts';

function found(text: string, more: Partial<FolderUnderCheck> = {}, file = 'plans/M-0412.yaml') {
  return looksPersonal({
    sources: [{ file, text }],
    names: [],
    referenceDay: '2026-10-05',
    ...more,
  });
}

/** The very characters at which each finding stands. */
function marked(
  text: string,
  more: Partial<FolderUnderCheck> = {},
  file?: string,
): readonly string[] {
  return found(text, more, file).map(({ place }) => text.slice(place.start, place.end));
}

describe('e-mail addresses', () => {
  it('are found where they stand', () => {
    expect(marked('note: write to wren.hale+gym@mail.example.org, please')).toEqual([
      'wren.hale+gym@mail.example.org',
    ]);
    expect(marked('a@b, @example.org, 2 @ 3.5')).toEqual([]);
  });
});

describe('a link', () => {
  it('is looked at as any other text', () => {
    const exercise = (link: string) => marked(`link: ${link}`, {}, 'exercises/heel-raise.yaml');
    expect(exercise('https://example.org/?for=wren.hale@mail.example.org')).toEqual([
      'wren.hale@mail.example.org',
    ]);
    expect(exercise('https://example.org/?call=5550142')).toEqual(['5550142']);
    expect(exercise('https://example.org/heel-raise?part=2')).toEqual([]);
  });
});

describe('telephone numbers', () => {
  it.each([
    ['555 0142', '555 0142'],
    ['ring 555-0142.', '555-0142'],
    ['(020) 7946 0958', '(020) 7946 0958'],
    ['+44 (0)20 7946 0958', '+44 (0)20 7946 0958'],
    ['07700900123', '07700900123'],
    ['5550142', '5550142'],
    ['12 34 56 78', '12 34 56 78'],
    ['555.010.0142', '555.010.0142'],
    ['# home: 555 0142', '555 0142'],
  ])('%s is one', (text, number) => {
    expect(marked(text)).toEqual([number]);
  });

  it.each([
    '555 014',
    '2026-10-05',
    '2026-10-05 2026-11-16',
    '5.10.2026',
    '12/10/2026',
    '20261005',
    '1000000',
    '1234567 kg',
    'weeks: [1-2, 5-5]',
    '8-12 10-15 15-20',
    '1 2 3 4 5 6 7 8',
    '1000-1500 steps',
    '2024-2026',
    'pages 1451-1462',
    '0.45359237',
    'plan: M-1234567',
    'pictures/IMG_1234567.svg',
    '123e4567-e89b-12d3-a456-426614174000',
    'tempo: 3-1-2-0',
    '10.1139/apnm-2015-0235',
    'reps: [12, 10, 8, 8, 6]',
    '102.5-107.5 kg',
    '2026-10-05,1,2,3,12,10,8',
  ])('%s is none', (text) => {
    expect(marked(text)).toEqual([]);
  });

  it('do not include the code of the file itself', () => {
    expect(marked('plan: 1234567', {}, 'plans/1234567.yaml')).toEqual([]);
    expect(marked('plan: 1234567', {}, 'plans/other.yaml')).toEqual(['1234567']);
  });

  it('take the practice’s own number of digits', () => {
    expect(marked('555 0142', { setting: (name) => (name === 'digits' ? 8 : 15) })).toEqual([]);
  });
});

describe('old dates', () => {
  it('are those more than 15 years before the reference day', () => {
    expect(marked('2011-10-05')).toEqual([]);
    expect(marked('born 2011-10-04.')).toEqual(['2011-10-04']);
    expect(marked('2011-10-04', { referenceDay: null })).toEqual([]);
    expect(marked('2011-02-28', { referenceDay: '2026-02-28' })).toEqual([]);
  });

  it('are found in the forms in which people write them', () => {
    for (const text of [
      '12/3/1961',
      '12.03.1961',
      '1961/03/12',
      '12 March 1961',
      '12th of Mar 1961',
      'March 12, 1961',
      '19610312',
    ]) {
      expect(marked(text), text).toEqual([text]);
    }
    expect(marked('Rogers 1961, page 12; 1961-13-45')).toEqual([]);
  });

  it('count by the later day where day and month could change places', () => {
    // 10 April or 4 October 2011; on 5 October 2026 both are past, on 1 July only one
    expect(marked('10/04/2011')).toEqual(['10/04/2011']);
    expect(marked('10/04/2011', { referenceDay: '2026-07-01' })).toEqual([]);
  });
});

describe('full names', () => {
  const names = ['María López', 'Søren Åberg', "Ida O'Dell", '山田花子', 'Hope'];

  it('are found without regard to case, accents and gaps', () => {
    const text = 'note: MARIA\n  lopez and Soren  Aberg, Ida O’Dell';
    expect(marked(text, { names })).toEqual(['MARIA\n  lopez', 'Soren  Aberg', 'Ida O’Dell']);
    expect(marked('mit 山田花子さん', { names })).toEqual(['山田花子']);
    expect(marked('Mari\u0301a Lo\u0301pez', { names })).toEqual(['Mari\u0301a Lo\u0301pez']);
  });

  it('are whole names: not parts, not inside words', () => {
    expect(marked('Maria Lopezova, Maria, Lopez', { names })).toEqual([]);
  });

  it('of one word count only with their capital', () => {
    expect(marked('we hope that Hope', { names })).toEqual(['Hope']);
  });

  it('are looked for anywhere but in people.yaml', () => {
    expect(marked('M-1: {name: María López}', { names }, 'people.yaml')).toEqual([]);
    expect(marked('2026-10-05,maría lópez', { names }, 'diaries/M-0412.csv')).toEqual([
      'maría lópez',
    ]);
  });
});

describe('practice.yaml', () => {
  const text = [
    'practice: Saltmarsh',
    'contact: Front desk, 555 0142, desk@saltmarsh.example',
    'emergency: 0800 555 014',
    'emergency_if:',
    '  - ring 555 0143',
    'practitioners:',
    '  rk: "R. Kestrel, 555 0144"',
    '',
    '  ab: Ada Bright',
    'get_in_touch:',
    '  - ask Ada Bright at 555 0145',
  ].join('\n');

  it('may print contact, emergency and practitioners, and nothing else', () => {
    expect(marked(text, { names: ['Ada Bright'] }, 'practice.yaml')).toEqual([
      '555 0143',
      '555 0145',
      'Ada Bright',
    ]);
    expect(
      marked(text.replaceAll('\n', '\r\n'), { names: ['Ada Bright'] }, 'practice.yaml'),
    ).toEqual(['555 0143', '555 0145', 'Ada Bright']);
    expect(marked('contact: 555 0142', {}, 'plans/M-0412.yaml')).toEqual(['555 0142']);
  });
});

describe('the folder as a whole', () => {
  const secret = { ...PLAN_SOURCE, text: 'note: 555 0142' };
  const folder = {
    sources: [secret, { file: 'exercises/x.yaml', text: '555 0143' }],
    names: [],
    referenceDay: null,
    plansToCompare: [],
    exercises: [],
    startingTexts: [],
  };
  const told = (by: Practice, plans: readonly Plan[]) =>
    checkFolder(by, { ...folder, plans }).map(({ severity, accepted, place }) => [
      place.source.file,
      severity,
      accepted?.why ?? null,
    ]);

  it('is a warning each, without the words themselves', () => {
    const made = found('note: 555 0142');
    expect(made).toMatchObject([{ check: 'looks-personal', severity: 'warning' }]);
    expect(made[0]?.message).toBe(
      'This looks like a telephone number; who a person is belongs in people.yaml alone.',
    );
  });

  it('takes the practice’s settings and a plan’s accepts', () => {
    const plans = [plan([session([])], { source: secret, accepts: [accept('looks-personal')] })];
    expect(told(practice(), plans)).toEqual([
      ['plans/M-0412.yaml', 'warning', 'Talked over'],
      ['exercises/x.yaml', 'warning', null],
    ]);
    const off = practice({
      checks: new Map([['looks-personal', checkSetting({ severity: 'off' })]]),
    });
    expect(told(off, plans)).toEqual([]);
  });

  it('stays quick on long lines', () => {
    const long = `${'a'.repeat(200_000)}\n${'1 '.repeat(100_000)}x\n${'1.'.repeat(100_000)}\n${'@'.repeat(50_000)}`;
    const began = performance.now();
    found(long, { names: ['aaaa aaaa'] });
    expect(performance.now() - began).toBeLessThan(5_000);
  });
});
