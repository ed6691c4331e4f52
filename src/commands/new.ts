// `carryover new`: a starting file for an exercise or a plan, empty or from an earlier one with
// codes, dates and goals blanked. It never writes over a file, and never guesses what it is not told.
import { existsSync, mkdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { plansOf } from '../build.ts';
import { type Replacements, withBlocks } from '../load/blanked.ts';
import { nearest } from '../load/did-you-mean.ts';
import { filesById } from '../load/library.ts';
import { quoted } from '../load/quoted-sentence.ts';
import { loadTemplates } from '../load/templates.ts';
import { readText } from '../load/text-file.ts';
import { parseDay } from '../units/day.ts';
import {
  type CommandResult,
  type OpenFolder,
  openFolder,
  type Session,
  UsageError,
} from './session.ts';

export interface NewOptions {
  readonly from?: string;
  readonly title?: string;
  readonly by?: string;
  readonly date?: string;
  readonly starts?: string;
  readonly next?: string;
  readonly weeks?: string;
  readonly affected?: string;
  readonly goal?: string;
  readonly name?: string;
  readonly purpose?: string;
  readonly position?: string;
  readonly sides?: string;
  readonly limb?: string;
  readonly in?: string;
}

/** What a terminal may be asked for, in order; each is an option too. */
const QUESTIONS: Readonly<
  Record<'plan' | 'exercise', readonly (readonly [keyof NewOptions, string])[]>
> = {
  plan: [
    ['title', 'Title on the sheet'],
    ['by', 'By (your short name in practice.yaml)'],
    ['date', 'Date of the visit (2026-10-05)'],
    ['starts', 'First day of week 1'],
    ['next', 'Next visit'],
    ['weeks', 'How many weeks'],
    ['affected', 'Affected side (left, right, both, none)'],
    ['goal', "Goal, in the person's own words"],
  ],
  exercise: [
    ['name', 'Name on the sheet'],
    ['purpose', 'Purpose (strength, stretch, balance, …)'],
    ['position', 'Position (standing, sitting, supine, …)'],
    ['sides', 'Sides (each, both, middle)'],
    ['limb', 'What a side is called (leg, arm, hand, …)'],
  ],
};

const IDS = {
  plan: [/^[A-Za-z0-9][A-Za-z0-9-]{0,62}$/, 'a code has letters, digits and hyphens'],
  exercise: [/^[a-z0-9][a-z0-9-]{0,62}$/, 'an id has small letters, digits and hyphens'],
} as const;

export function newFile(
  session: Session,
  what: 'plan' | 'exercise',
  id: string,
  options: NewOptions,
): CommandResult {
  const [pattern, rule] = IDS[what];
  if (!pattern.test(id)) throw new UsageError(`"${id}" cannot be used; ${rule}`);
  for (const key of ['date', 'starts', 'next'] as const) {
    const day = options[key];
    if (day !== undefined && !parseDay(day).ok)
      throw new UsageError(`"--${key} ${day}" is no day; write it as --${key} 2026-10-05`);
  }
  const open = openFolder(session);
  const under = `${what}s`;
  const byId =
    what === 'plan'
      ? plansOf(open.folder).byId
      : filesById(open.folder, under, 'duplicate-exercise').byId;
  const there = [...byId].find(([one]) => one.toLowerCase() === id.toLowerCase());
  const path = [under, options.in, `${id}.yaml`].filter((step) => step !== undefined).join('/');
  if (path.split('/').includes('..')) throw new UsageError(`--in names a folder below ${under}/`);
  if (there || existsSync(join(open.root, path)))
    throw new UsageError(`${there?.[1] ?? path} is there already; "new" never writes over a file`);
  const told = answered(session, what, options);
  const text =
    options.from === undefined
      ? fromTemplate(open, what, id, told)
      : fromEarlier(open, what, id, options.from, byId, told);
  mkdirSync(dirname(join(open.root, path)), { recursive: true });
  writeFileSync(join(open.root, path), text, { flag: 'wx' });
  const out = `${path}\nFill in what is empty; "carryover check ${id}" says what is still missing.\n`;
  return { status: 0, findings: [], data: { written: [path] }, out, log: '' };
}

/** The options, and in a terminal an answer for each that was not given; an empty answer leaves it blank. */
function answered(
  { outside, isJson, isQuiet }: Session,
  what: 'plan' | 'exercise',
  options: NewOptions,
): NewOptions {
  const { ask } = outside;
  if (!ask || isJson || isQuiet || options.from !== undefined) return options;
  const answers: Record<string, string> = {};
  for (const [key, question] of QUESTIONS[what]) {
    const answer = options[key] ?? ask(`${question}: `);
    if (answer.trim() !== '') answers[key] = answer.trim();
  }
  return { ...options, ...answers };
}

function fromTemplate(
  { folder }: OpenFolder,
  what: 'plan' | 'exercise',
  id: string,
  told: NewOptions,
): string {
  const template = loadTemplates(folder).value.texts.get(`new/${what}.yaml`) ?? '';
  const values: Readonly<Record<string, string | undefined>> = { ...told, id };
  return template
    .replace(/\{\{([a-z]+)\}\}/g, (_, key: string) => asWritten(key, values[key]))
    .replace(/[ \t]+$/gm, '');
}

const PROSE: ReadonlySet<string> = new Set(['title', 'goal', 'name', 'found', 'why']);

/** Prose in quotes where plain text would be read as something else. */
function asWritten(key: string, value: string | undefined): string {
  if (value === undefined) return '';
  return PROSE.has(key) && !/^[\p{L}\p{N}][\p{L}\p{N} ,.'()-]*$/u.test(value)
    ? quoted(value)
    : value;
}

function fromEarlier(
  open: OpenFolder,
  what: 'plan' | 'exercise',
  id: string,
  from: string,
  byId: ReadonlyMap<string, string>,
  told: NewOptions,
): string {
  const file = byId.get(from);
  if (file === undefined) {
    const near = nearest(from, byId.keys());
    throw new UsageError(
      `there is no ${what} "${from}"${near === undefined ? '' : `; did you mean "${near}"?`}`,
    );
  }
  const { value: source } = readText(open.folder, file);
  if (!source) throw new UsageError(`${file} cannot be read; run "carryover check"`);
  const line = (key: string, value: string | undefined) =>
    `${key}: ${asWritten(key, value)}`.trimEnd();
  const replacements: Replacements =
    what === 'exercise'
      ? { exercise: line('exercise', id), name: line('name', told.name) }
      : {
          plan: line('plan', id),
          person: null,
          closed: null,
          report: null,
          title: line('title', told.title),
          ...(told.by === undefined ? {} : { by: line('by', told.by) }),
          visits: [
            'visits:',
            `  - date: ${told.date ?? ''}`.trimEnd(),
            '    found:',
            '    why:',
          ].join('\n'),
          starts: line('starts', told.starts),
          next_visit: told.next === undefined ? null : line('next_visit', told.next),
          goals: ['goals:', `  - ${asWritten('goal', told.goal)}`.trimEnd()].join('\n'),
          // Another person's side must not come along unseen.
          affected: `${line('affected', told.affected)}  # left right both none`,
          one_rep_max: null,
        };
  const copied = withBlocks(source.text, replacements);
  if (what === 'exercise') return copied;
  const head = `# From ${from}: look at limits, precautions, pain and every side for this person.\n`;
  return head + withSidesMeant(copied, source.text);
}

/** `only: right` of a plan for the right becomes `only: affected`, so that it follows the new person's side. */
function withSidesMeant(text: string, earlier: string): string {
  const affected = /^affected:[ \t]*(left|right)\b/m.exec(earlier)?.[1];
  // Without an affected side nothing says which side is meant, so it is left to be filled in.
  if (affected === undefined) return text.replace(/^([ \t]*only:)[ \t]*(left|right)\b/gm, '$1');
  return text.replace(/(\bonly:[ \t]*)(left|right)\b/g, (_, key: string, side: string) => {
    return `${key}${side === affected ? 'affected' : 'other'}`;
  });
}
