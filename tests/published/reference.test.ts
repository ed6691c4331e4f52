// Plain facts that the numbers rest on: a pound, a minute, a day's share of a week, a percentage of
// the one repetition maximum. Each is asked through a whole plan, so that no step between the text
// and the number can lose it. The published programmes beside this file hold the rest.
import { describe, expect, test } from 'vitest';
import { showData } from '../support/show-data.ts';

const practice = `schema: 1
practice: Saltmarsh Movement Clinic
contact: Front desk, 555 0142
emergency: 999
emergency_if:
  - You have chest pain, or trouble breathing
stop_if:
  - The pain is sharp or spreads
`;

const exercise = `exercise: trunk-curl
name: Trunk curl
purpose: strength
position: supine
sides: middle
steps:
  - Lift your head and shoulders, then lower them
dose: {move: 2 s}
levels:
  - level: hands-on-chest
    dose: {sets: 1, reps: 1}
`;

/** The first week of a plan with this one exercise at this dose, done on these days. */
function firstWeek(dose: string, schedule = 'days: [mon]', extra = '') {
  const plan = `plan: fact
title: One fact
visits:
  - date: 2026-10-05
weeks: 1
affected: none
${extra}sessions:
  - session: once
    name: Once
    ${schedule}
    parts:
      - part: strength
        items:
          - do: trunk-curl
            dose: ${dose}
`;
  const files = {
    'practice.yaml': practice,
    'exercises/trunk-curl.yaml': exercise,
    'plans/fact.yaml': plan,
  };
  const [week] = showData(files, 'fact').weeks;
  if (week === undefined) throw new Error('the plan has no week');
  return week;
}

describe('a pound (international yard and pound agreement 1959; UCUM [lb_av])', () => {
  test('is 0.45359237 kg', () => {
    expect(firstWeek('{load: 1 lb}').middle.volume_kg[0]).toBeCloseTo(0.45359237, 10);
  });

  test('a hundred are 45.359237 kg, and kilograms stay what they are', () => {
    expect(firstWeek('{load: 100 lb}').middle.volume_kg[1]).toBeCloseTo(45.359237, 10);
    expect(firstWeek('{load: 100 kg}').middle.volume_kg[1]).toBe(100);
  });
});

describe('time (UCUM min, s; the week of seven days)', () => {
  test('a minute is 60 s, and a minute and a half 90 s', () => {
    expect(firstWeek('{time: 1 min}').middle.work_seconds).toEqual([60, 60]);
    expect(firstWeek('{time: 1 min 30 s}').middle.work_seconds).toEqual([90, 90]);
  });

  test('daily is seven times a week, three times a day twenty-one times', () => {
    expect(firstWeek('{reps: 1}', 'days: daily').middle.reps).toEqual([7, 7]);
    const thrice = firstWeek('{reps: 1}', 'days: daily\n    times_a_day: 3');
    expect(thrice.middle.reps).toEqual([21, 21]);
  });
});

// Repetitions and the percentage of the one repetition maximum that goes with them; the chart and
// the textbook differ from 11 repetitions on, so only 1 to 10 are used.
const nscaChart = [100, 95, 93, 90, 87, 85, 83, 80, 77, 75];

describe('NSCA Training Load Chart, for a one repetition maximum of 100 kg (found)', () => {
  nscaChart.forEach((percent, index) => {
    const reps = index + 1;
    test(`${reps} at ${percent} % are ${reps} times ${percent} kg`, () => {
      const week = firstWeek(
        `{reps: ${reps}, load: ${percent} % 1rm}`,
        'days: [mon]',
        'one_rep_max: {trunk-curl: 100 kg}\n',
      );
      expect(week.middle.volume_kg[0]).toBeCloseTo(reps * percent, 9);
      expect(week.middle.volume_kg[1]).toBeCloseTo(reps * percent, 9);
    });
  });
});
