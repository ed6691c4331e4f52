// `carryover new`: a starting file for an exercise or a plan, empty or from an earlier one with
// codes, dates and goals blanked. It never writes over a file, and never guesses what it is not told.
import { existsSync, mkdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { plansOf } from '../build.ts';
import { type Replacements, withBlocks } from '../load/blanked.ts';
import { nearest } from '../load/did-you-mean.ts';
import { EDITOR_SCHEMAS } from '../load/editor-schemas.ts';
import { filesById } from '../load/library.ts';
import { quoted } from '../load/quoted-sentence.ts';
import { loadTemplates } from '../load/templates.ts';
import { readText } from '../load/text-file.ts';
import { CODE, ID } from '../model/ids.ts';
import { compileWork } from './compiled.ts';
import { writeSchemas } from './init.ts';
import { type NewOptions, type Question, questionsFor } from './new-questions.ts';
import {
  type CommandResult,
  type OpenFolder,
  openFolder,
  type Session,
  UsageError,
} from './session.ts';

/** What an id may be, and one like a name that is none. */
const IDS = {
  plan: {
    pattern: CODE,
    rule: 'a code has letters, digits and hyphens',
    like: (id: string) => hyphened(id),
  },
  exercise: {
    pattern: ID,
    rule: 'an id has small letters, digits and hyphens',
    like: (id: string) => hyphened(id).toLowerCase(),
  },
} as const;

function hyphened(id: string): string {
  return id
    .normalize('NFD')
    .replace(/\p{M}/gu, '')
    .replace(/[^A-Za-z0-9]+/g, '-')
    .replace(/^-|-$/g, '');
}

const NOTHING_NAMED = { plans: [], exercises: [] } as const;

export function newFile(
  session: Session,
  what: 'plan' | 'exercise',
  id: string,
  options: NewOptions,
): CommandResult {
  const { pattern, rule, like } = IDS[what];
  if (!pattern.test(id)) {
    const fitting = like(id);
    const hint = pattern.test(fitting) ? `; take "${fitting}"` : '';
    throw new UsageError(`"${id}" cannot be used: ${rule}${hint}`);
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
  const questions = questionsFor(what, compileWork(open, NOTHING_NAMED, session).compiled.practice);
  for (const { key, problem } of questions) {
    const why = options[key] === undefined ? null : problem(options[key]);
    if (why !== null) throw new UsageError(`--${key} ${why}`);
  }
  const told = answered(session, questions, options);
  const text =
    options.from === undefined
      ? fromTemplate(open, what, id, told)
      : fromEarlier(open, what, id, options.from, byId, told);
  mkdirSync(dirname(join(open.root, path)), { recursive: true });
  writeFileSync(join(open.root, path), text, { flag: 'wx' });
  // The editor offers the new id at once, where it offers any.
  if (existsSync(join(open.root, EDITOR_SCHEMAS))) writeSchemas(open.root);
  const out = `${path}\nFill in what is empty; "carryover check ${id}" says what is still missing.\n`;
  return { status: 0, findings: [], data: { written: [path] }, out, log: '' };
}

/** The options, and in a terminal an answer for each that was not given; an empty answer leaves it blank. */
function answered(
  { outside, isJson, isQuiet }: Session,
  questions: readonly Question[],
  options: NewOptions,
): NewOptions {
  const { ask } = outside;
  if (!ask || isJson || isQuiet || options.from !== undefined) return options;
  const answers: Record<string, string> = {};
  for (const question of questions) {
    const answer = options[question.key] ?? askedUntilFit(ask, question);
    if (answer !== '') answers[question.key] = answer;
  }
  return { ...options, ...answers };
}

function askedUntilFit(ask: (question: string) => string, { asks, problem }: Question): string {
  for (let before = ''; ; ) {
    const answer = ask(`${before}${asks}: `).trim();
    const why = answer === '' ? null : problem(answer);
    if (why === null) return answer;
    before = `This ${why}\n`;
  }
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
