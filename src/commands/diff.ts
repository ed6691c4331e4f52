// `carryover diff`: what changed in the plans between two versions of the folder, in the trade's words.
import { FolderUnusable } from '../build.ts';
import { templateFinding } from '../handouts/pages.ts';
import { diffPlan, type PlanDiff, type TitledVersion, troubleText } from '../handouts/plan-diff.ts';
import { type FolderVersion, openVersion } from '../handouts/version.ts';
import { shippedWords } from '../handouts/wording.ts';
import { GitTrouble } from '../load/run-git.ts';
import { loadTemplates } from '../load/templates.ts';
import { type ChangesView, changesView } from '../render/changes/changes-view.ts';
import { changesJson } from '../render/json/changes-json.ts';
import { findingJson } from '../render/json/finding-json.ts';
import { renderChanges } from '../render/pages/pages.ts';
import { changedPlansText, changesText } from '../render/terminal/changes-text.ts';
import type { Words } from '../render/words/words.ts';
import {
  type ComparedPlan,
  comparedPlans,
  type DiffOptions,
  type Source,
  sourcesOf,
} from './compared-plans.ts';
import {
  type CommandResult,
  type OpenFolder,
  openFolder,
  type Session,
  UsageError,
} from './session.ts';

export function diff(
  session: Session,
  words: readonly string[],
  options: DiffOptions,
): CommandResult {
  const { all = false, exitCode = false } = options;
  if (options.lastHandover && options.from !== undefined)
    throw new UsageError(
      '"--last-handover" says what to compare with, and so does "--from"; leave one of them out',
    );
  if (all && words.length > 0)
    throw new UsageError('"--all" looks at every plan; name plans, or say --all');
  const open = openFolder(session);
  try {
    const sources = sourcesOf(open, session, options);
    const to = sources.source(options.to);
    const pairs = comparedPlans(sources, to, words, options, session);
    const whole = compared(pairs, to, session);
    const isWorthTelling = (one: PlanDiff) => isDifferent(one) || words.length > 0;
    const told = { ...whole, diffs: whole.diffs.filter(isWorthTelling) };
    const hasTrouble = told.diffs.some(({ troubles }) => troubles.length > 0);
    const isSame = !told.diffs.some(isDifferent);
    const compareStatus = hasTrouble ? 2 : isSame ? 0 : 1;
    return {
      status: exitCode ? compareStatus : hasTrouble ? 1 : 0,
      isOk: !hasTrouble,
      findings: [],
      data: { plans: told.diffs.map(planDiffJson) },
      out: printed(told, all, open, session),
      log: told.diffs.length === 0 && !session.isQuiet ? 'No plan changed.\n' : '',
    };
  } catch (cause) {
    if (cause instanceof GitTrouble || cause instanceof FolderUnusable)
      throw new UsageError(cause.message);
    throw cause;
  }
}

/** A plan of `data` of `carryover diff --format json`. */
function planDiffJson(one: PlanDiff): object {
  const { id, title, from, to, presence, hasSheet, differs, troubles } = one;
  return {
    plan: id,
    title,
    from,
    to,
    presence,
    sheet: { ...hasSheet, differs },
    ...changesJson(one.changes),
    troubles: troubles.map(({ version, error }) => ({ version, ...findingJson(error) })),
  };
}

interface Compared {
  readonly diffs: readonly PlanDiff[];
  /** The practice's own words, as on the clinic copy. */
  readonly words: Words;
  readonly paper: 'a4' | 'letter';
}

/** Compiles each version once, with all its plans that are asked for. */
function compared(pairs: readonly ComparedPlan[], to: Source, session: Session): Compared {
  const wanted = new Map<Source, string[]>([[to, []]]);
  const want = (source: Source, code: string | null) =>
    wanted.set(source, [...(wanted.get(source) ?? []), ...(code === null ? [] : [code])]);
  for (const { from, before, after } of pairs) {
    want(from, before);
    want(to, after);
  }
  const versions = new Map(
    [...wanted].map(([source, codes], done): [Source, FolderVersion] => {
      session.progress.at(done, wanted.size, 'reading versions');
      return [source, openVersion(source.folder, codes)];
    }),
  );
  session.progress.end();
  const { compiled, wording } = versions.get(to) as FolderVersion;
  const words = wording.get(compiled.practice.language) ?? shippedWords();
  const titled = (source: Source): TitledVersion => ({
    title: source.title === '' ? words.say('changes.now') : source.title,
    version: versions.get(source) as FolderVersion,
  });
  return {
    diffs: pairs.map((pair) => {
      const from = titled(pair.from);
      const { date, sheet } = pair.handover ?? {};
      const title = date && sheet && words.say('changes.handed-over', { date, sheet });
      return diffPlan(title ? { ...from, title } : from, titled(pair.to), pair, words);
    }),
    words,
    paper: compiled.practice.paper,
  };
}

function isDifferent({ changes, presence, troubles, differs }: PlanDiff): boolean {
  const told = changes.changes.length + changes.effect.length + troubles.length;
  return presence !== 'both' || told > 0 || differs;
}

function viewOf(one: PlanDiff, words: Words): ChangesView {
  return changesView(
    {
      plan: one,
      from: one.from,
      to: one.to,
      changes: one.changes,
      hasSheet: one.hasSheet,
      presence: one.presence,
      troubles: one.troubles.map((trouble) =>
        words.say('changes.trouble', { version: trouble.version, error: troubleText(trouble) }),
      ),
    },
    words,
  );
}

function printed(
  { diffs, words, paper }: Compared,
  isList: boolean,
  { folder }: OpenFolder,
  { width, paint, format }: Session,
): string {
  if (diffs.length === 0) return '';
  const views = diffs.map((one) => viewOf(one, words));
  if (format === 'markdown' || format === 'html') {
    const { language, direction } = words;
    const [only, other] = views;
    const title = only && !other ? only.title : words.say('changes.page-title');
    const templates = loadTemplates(folder).value;
    const page = renderChanges(
      { language, direction, paper, title, plans: views },
      templates.texts,
      format,
    );
    if (!page.ok) throw new UsageError(templateFinding(page.problem, templates).message);
    return page.text;
  }
  const text = isList
    ? changedPlansText(views, { width, paint })
    : views.map((view) => changesText(view, { width, paint })).join('\n\n\n');
  return `${text}\n`;
}
