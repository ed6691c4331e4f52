// A sheet made up by hand: an invented plan at an invented clinic, with everything that a sheet can
// have. The words stand for what the words pack would say.
import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import type { SheetPage } from '../../src/render/pages/pages.ts';
import type {
  ExerciseView,
  PictureView,
  SheetView,
  TickRowView,
} from '../../src/render/sheet/sheet-view.ts';

export function sha256(text: string): Uint8Array {
  return createHash('sha256').update(text, 'utf8').digest();
}

/** The templates as shipped, named as a practice would name its own. */
export function shippedTemplates(): Map<string, string> {
  const root = join(import.meta.dirname, '../../templates');
  const files = readdirSync(root, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && /\.(hbs|css)$/.test(entry.name))
    .map((entry) => relative(root, join(entry.parentPath, entry.name)))
    .sort();
  return new Map(files.map((file) => [file, readFileSync(join(root, file), 'utf8')]));
}

const DRAWING = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 120 160" width="120" height="160">
<g fill="none" stroke="black" stroke-width="4" stroke-linecap="round">
<circle cx="50" cy="24" r="12"/><path d="M50 36V90M50 50L84 66M50 90L44 130L52 150M50 90L56 130L64 150"/>
<path d="M88 60V150M88 84H112V150"/></g></svg>`;

export function drawing(file = 'pictures/heel-raise.svg', svg = DRAWING): PictureView {
  const bytes = new TextEncoder().encode(svg);
  return {
    picture: { file, mediaType: 'image/svg+xml', bytes },
    alt: 'A person stands behind a chair, on the toes of both feet',
    caption: null,
  };
}

export function exercise(parts: Partial<ExerciseView> = {}): ExerciseView {
  return {
    number: 1,
    name: 'March on the spot',
    position: 'Stand.',
    picture: null,
    link: null,
    dose: 'Left knee and right knee in turn, 10 times each.',
    note: null,
    steps: ['Hold the worktop.', 'Lift one knee.', 'Put the foot down, then lift the other.'],
    feel: 'You should feel it: the front of your hips.',
    avoid: [],
    easier: null,
    harder: null,
    alsoIn: null,
    mark: null,
    ...parts,
  };
}

const DAYS = ['Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday', 'Sunday'];

function tickRows(days: number): TickRowView[] {
  return Array.from({ length: days }, (_, i) => {
    const day = 5 + i;
    const date = day <= 31 ? `${day} October` : `${day - 31} November`;
    return { date: `${DAYS[i % 7]} ${date}`, due: i % 2 === 0 ? 'Strong ankle' : null };
  });
}

export function madeView(): SheetView {
  const heelRaise = exercise({
    number: 2,
    name: 'Heel raise: both feet',
    position: 'Stand.',
    picture: drawing(),
    dose: '8 to 12 times with both legs at once, holding for 2 seconds each time. That is one round. Do 2 rounds, with 1 minute of rest in between.',
    note: 'Hold the chair.',
    steps: [
      'Stand behind a chair and rest your fingers on it.',
      'Rise onto your toes.',
      'Lower slowly.',
    ],
    feel: 'You should feel it: the back of your lower legs.',
    avoid: ['Do not lean on the chair.'],
    easier: 'Too hard? Do it sitting.',
    harder: 'Too easy, and pain stayed at 0 to 3? Hold a bag in one hand.',
    alsoIn: 'Also part of: Walk.',
  });
  return {
    language: 'en',
    direction: 'ltr',
    plan: 'M-0412',
    head: {
      unreviewed: null,
      practice: 'Saltmarsh Movement Clinic',
      contact: 'Front desk, 555 0142',
      practitioner: 'Your practitioner: R. Kestrel, physiotherapist',
      person: 'For Ada Invented',
      title: 'Ankle, back to hill walking',
      dates: 'For Monday 5 October 2026 to Sunday 15 November 2026.',
      nextVisit: 'Next visit: Monday 16 November 2026.',
    },
    news: { heading: 'New since last time', sentences: ['Exercise 2 is new.'] },
    goals: { heading: 'What it is for', sentences: ['Walk the coast path for two hours.'] },
    safety: {
      heading: 'Pain and stopping',
      pain: [
        'Pain from 0 to 10: 0 is none, 10 is the worst that you can think of.',
        'Pain 0 to 3: carry on. It should settle by the next morning.',
        'Pain 4 or 5: ease off. Do fewer, or do it the easier way.',
        'Pain 6 to 10: stop for today.',
      ],
      stopIf: {
        lead: 'Stop for today if:',
        reasons: ['The pain is sharp or spreads', 'The ankle swells overnight'],
      },
      contact: 'Call us the same day or the next: Front desk, 555 0142',
      getInTouchIf: {
        lead: 'and do no more exercises until we have spoken, if:',
        reasons: ['The pain keeps you awake'],
      },
      emergencyIf: {
        lead: 'Call 999 at once if:',
        reasons: ['You have chest pain, or trouble breathing'],
      },
      dial: { contact: 'tel:5550142', emergency: 'tel:999' },
    },
    days: {
      heading: 'Your days',
      sessions: [
        {
          name: 'Strong ankle',
          text: 'exercises 1 to 4, on Monday, Wednesday and Friday. About 15 to 17 minutes.',
          sentence:
            'Strong ankle: exercises 1 to 4, on Monday, Wednesday and Friday. About 15 to 17 minutes.',
        },
        {
          name: 'Walk',
          text: 'exercise 5, on 3 to 5 days a week. You choose the days. 5 to 8 minutes.',
          sentence: 'Walk: exercise 5, on 3 to 5 days a week. You choose the days. 5 to 8 minutes.',
        },
      ],
    },
    putReady: {
      kit: {
        heading: 'Put ready',
        things: ['A chair or a worktop', 'A towel'],
        later: { lead: 'Later on:', reasons: ['A step'] },
      },
      precautions: { heading: 'Take care', sentences: ['Wear the brace outdoors.'] },
    },
    exercises: {
      heading: 'The exercises',
      sessions: [
        {
          heading: 'Strong ankle: on Monday, Wednesday and Friday',
          groups: [
            { heading: null, together: null, exercises: [exercise()] },
            { heading: 'Build it up', together: null, exercises: [heelRaise] },
            {
              heading: 'Loosen off',
              together:
                'Exercises 3 and 4 go together: do 3, then 4. That is one round. Do 2 rounds, with 1 minute of rest in between.',
              exercises: [
                exercise({
                  number: 3,
                  name: 'Calf stretch at the wall',
                  dose: 'In each round: hold for 30 seconds with the left leg, then the same with the right leg.',
                  steps: [
                    'Put both hands on the wall.',
                    'Step one foot back and press its heel down.',
                  ],
                  feel: 'You should feel it: the calf of the leg at the back.',
                }),
                exercise({
                  number: 4,
                  name: 'Turn on the spot',
                  mark: 'New since last time.',
                  dose: 'In each round: 5 or 6 times to the left, then the same to the right.',
                }),
              ],
            },
          ],
        },
        {
          heading: 'Walk: on 3 to 5 days a week',
          groups: [
            {
              heading: null,
              together: null,
              exercises: [
                exercise({
                  number: 5,
                  name: 'Walk',
                  position: null,
                  dose: 'Keep going for 5 to 8 minutes.',
                  steps: ['Walk at a pace at which you can still talk.'],
                  feel: null,
                }),
              ],
            },
          ],
        },
      ],
    },
    normal: {
      heading: 'What is normal',
      sentences: [
        'Tired muscles for a day or two are normal.',
        'If you miss a day, leave it out and go on with the next one. Do not do more to catch up.',
      ],
    },
    growth: {
      heading: 'How it grows',
      lead: [
        'Go no faster than these dates.',
        'If a step is too much, stay where you are, or go back one.',
      ],
      days: [
        {
          heading: 'Strong ankle',
          lines: [
            {
              lead: 'From Monday 26 October:',
              text: 'On Monday, Tuesday, Thursday and Saturday.',
            },
          ],
        },
      ],
      changes: [
        {
          heading: 'Exercise 2: Heel raise: both feet',
          lines: [
            { lead: 'From Monday 12 October:', text: '10 to 14 times with both legs at once.' },
            { lead: 'From Monday 19 October:', text: 'Do 3 rounds.' },
          ],
        },
      ],
      easyWeeks: [
        {
          heading: 'Easy week: Monday 26 October to Sunday 1 November',
          sentences: ['Do less on purpose, even if you feel well.'],
          lines: [{ lead: 'Exercise 2:', text: 'Do only 1 round.' }],
        },
      ],
      later: {
        heading: 'Later: not before the date',
        exercises: [
          {
            ...exercise({
              number: 6,
              name: 'Heel raise: one foot',
              dose: '5 to 8 times with the left leg, then the same with the right leg. That is one round. Do 2 rounds, with 1 minute of rest in between.',
              steps: [
                'Stand behind a chair and rest your fingers on it.',
                'Take one foot off the floor.',
                'Rise onto your toes, then lower slowly.',
              ],
              avoid: ['Do not lean on the chair.'],
            }),
            when: 'From Monday 2 November, only if you did exercise 2, at least 12 times. It takes the place of exercise 2.',
            together: null,
            ready: 'Put ready: a step.',
            lines: [{ lead: 'From Monday 9 November:', text: '6 to 9 times.' }],
          },
        ],
      },
    },
    tick: {
      heading: 'Tick and note',
      sentences: ['Tick each one you did. Write the worst pain and how hard it was.'],
      columns: ['Date', 'Done', 'Worst pain 0 to 10', 'Effort 0 to 10'],
      rows: tickRows(42),
      goesOn: 'After Sunday 15 November, go on in the same way on a page of your own.',
    },
    caution: [
      'This sheet was made for one person.',
      'It does not replace the advice of a licensed practitioner, or help in an emergency.',
    ],
    footer: { contact: 'Front desk, 555 0142', visitDate: '5 October 2026' },
  };
}

export function madePage(view: SheetView = madeView()): SheetPage {
  return {
    view,
    shortDay: {
      heading: 'On a short day',
      sentences: ['If you have only 10 minutes: exercise 1, then one round of exercise 2.'],
    },
    sheetLine: 'Sheet KP4T 7WQM, visit of 5 October 2026',
    paper: 'a4',
    print: 'normal',
  };
}
