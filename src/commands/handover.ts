// `carryover handover`: builds a plan's sheet and notes in the register that it was handed over, with the
// commit that it was made from. Asks only that what the sheet is made from is committed.
import { relative } from 'node:path';
import type { CompiledPlan } from '../build.ts';
import { asSet } from '../check/plan-checks.ts';
import { finding, inOrder } from '../finding/finding.ts';
import { fileOnly } from '../finding/place.ts';
import { fateOf } from '../handouts/changes.ts';
import { whyUnwritten } from '../handouts/disk.ts';
import { inputsOf } from '../handouts/inputs.ts';
import { addRow, whyNoRow } from '../handouts/register-file.ts';
import { openRepository, type Repository } from '../load/git.ts';
import { loadRegister, REGISTER, registerLine } from '../load/register.ts';
import { GitTrouble } from '../load/run-git.ts';
import { LEFT_BY_THE_SYSTEM } from '../load/templates.ts';
import type { Handover } from '../model/handover.ts';
import type { Plan } from '../model/plan.ts';
import type { Practice } from '../model/practice.ts';
import { buildResult, type Judged, judgedWork, makePages } from './build.ts';
import { compileWork, findingsReport, shownFindings } from './compiled.ts';
import { findSheet } from './find-sheet.ts';
import {
  type CommandResult,
  namedPlans,
  type OpenFolder,
  openFolder,
  type Session,
  UsageError,
} from './session.ts';
import { inShell } from './shell-words.ts';

export interface HandoverOptions {
  readonly by?: string;
  readonly find?: string;
}

export function handover(
  session: Session,
  word: string | undefined,
  { by, find }: HandoverOptions,
): CommandResult {
  if (find !== undefined) {
    if (word !== undefined || by !== undefined)
      throw new UsageError('"--find" looks up a sheet number; it takes no plan and no "--by"');
    return findSheet(session, find);
  }
  if (word === undefined)
    throw new UsageError(
      'name the plan that is handed over, or look up a sheet with --find "KP4T 7WQM"',
    );
  const open = openFolder(session);
  const named = namedPlans([word], open, session);
  const { repository, commit } = committed(open, session);
  const unfit = whyNoRow(open.root);
  if (unfit) throw new UsageError(unfit);
  const judged = judgedWork(compileWork(open, named, session), true, session);
  const { compiled } = judged.work;
  const [one] = compiled.plans;
  if (!one?.plan || judged.isStopped || fateOf(one, judged.setting).kind !== 'sheet')
    return { ...buildResult(makePages(open, judged, session), judged, open, session), data: null };
  const who = handedBy(by, one.plan, compiled.practice);
  const lacking = uncommittedInputs(one, judged, repository);
  if (lacking.length > 0) return refused(one.plan, lacking, judged, open, session);
  const said = { date: session.today, commit, by: who };
  return handedOver({ one, said, judged, open, repository }, session);
}

/** The repository and the commit that it stands at; a usage error with the way out where there is none. */
function committed({ root }: OpenFolder, { outside }: Session) {
  const why = 'the register names the commit that a sheet was made from';
  try {
    const repository = openRepository(root, outside.env);
    return { repository, commit: repository.commit('HEAD') };
  } catch (cause) {
    if (!(cause instanceof GitTrouble)) throw cause;
    throw new UsageError(
      `${cause.message}, and ${why}; "git init" (once), then "git add -A" and "git commit -m Start" begin a history`,
    );
  }
}

/** Who hands it over: as asked, else who signs the plan. Always an id of practice.yaml, never a name. */
function handedBy(asked: string | undefined, plan: Plan, { practitioners }: Practice) {
  const ids = [...practitioners.keys()];
  const known =
    ids.length === 0 ? 'practice.yaml names no practitioners' : `known are ${ids.join(', ')}`;
  if (asked !== undefined && !practitioners.has(asked))
    throw new UsageError(`there is no practitioner "${asked}" in practice.yaml; ${known}`);
  const by = asked ?? plan.by;
  if (by === null && ids.length > 0)
    throw new UsageError(
      `plan ${plan.id} does not say who signs it; say who hands it over with --by (${known})`,
    );
  return by;
}

function uncommittedInputs(one: CompiledPlan, { work }: Judged, repository: Repository) {
  return repository
    .uncommitted(inputsOf(one, work.compiled))
    .filter((path) => !LEFT_BY_THE_SYSTEM.test(path));
}

function refused(
  plan: Plan,
  files: readonly string[],
  judged: Judged,
  { root }: OpenFolder,
  session: Session,
): CommandResult {
  const what =
    files.length === 1
      ? 'a file that its sheet is made from is not committed as it is now'
      : `${files.length} files that its sheet is made from are not committed as they are now`;
  const found = finding({
    check: 'handover-uncommitted',
    severity: 'error',
    place: plan.place,
    message: `Plan ${plan.id} cannot be handed over yet: ${what}.`,
    hints: [`Commit first: ${commitCommand(root, session, files, `Plan ${plan.id}`)}`],
    related: files.map((file) => ({ message: 'Not committed.', place: fileOnly(file) })),
  });
  const findings = inOrder([...judged.findings, found]);
  return {
    status: 1,
    findings: shownFindings(findings, session),
    data: null,
    out: session.isQuiet ? '' : 'Nothing was built, and no handover was noted.\n',
    log: findingsReport(findings, session, 'err'),
  };
}

/** What to type to commit some of the folder's files, from where one stands. */
function commitCommand(
  root: string,
  { outside }: Session,
  files: readonly string[],
  message: string,
): string {
  const base = relative(outside.cwd, root);
  // From outside the folder git has to be told which repository is meant.
  const isInside = /^(\.\.[\\/]?)*$/.test(base);
  const git = isInside ? 'git' : `git -C ${inShell(base)}`;
  const paths = files.map((file) => inShell(isInside && base !== '' ? `${base}/${file}` : file));
  return `${git} add ${paths.join(' ')} && ${git} commit -m "${message}"`;
}

interface Noting {
  readonly one: CompiledPlan;
  readonly said: Pick<Handover, 'date' | 'commit' | 'by'>;
  readonly judged: Judged;
  readonly open: OpenFolder;
  readonly repository: Repository;
}

function handedOver({ one, said, judged, open, repository }: Noting, session: Session) {
  const { compiled } = judged.work;
  const built = makePages(open, judged, session);
  const [made] = built.sheets;
  if (!made) throw new Error(`plan ${one.id} was to have a sheet, and got none`);
  const { sheet, files } = made;
  const row = { ...said, plan: one.id, sheet, language: one.language };
  const line = registerLine(row);
  const register = loadRegister(open.folder);
  const added = !register.rows.some((other) => registerLine(other) === line);
  if (added) addTo(open.root, row);
  // A damaged row stops nobody, but whoever adds the next one should know.
  const damage = asSet(register.findings, compiled.practice);
  const findings = inOrder([...judged.findings, ...damage]);
  const result = buildResult(built, { ...judged, findings }, open, session);
  const commit = commitCommand(open.root, session, [REGISTER], `Handed over ${one.id}`);
  const lines = added
    ? [`Added to ${REGISTER}: ${line}`, `Commit it when you like: ${commit}`]
    : [`In ${REGISTER} already, and not added again: ${line}`];
  return {
    ...result,
    data: { ...row, files, added },
    out: session.isQuiet ? '' : `${result.out}${lines.join('\n')}\n`,
    log: session.isQuiet ? result.log : `${result.log}${mergeHint(repository)}`,
  };
}

/** Folders begun before there was a register lack the line that lets two branches merge. */
function mergeHint(repository: Repository): string {
  if (repository.attribute(REGISTER, 'merge') === 'union') return '';
  return `So that two branches merge without conflict, put this line into .gitattributes: ${REGISTER} merge=union\n`;
}

/** The sheet is built by now; a disk that takes no row is told of, and is no fault of ours. */
function addTo(root: string, row: Handover): void {
  try {
    addRow(root, row);
  } catch (cause) {
    const why = whyUnwritten(cause);
    if (why === null) throw cause;
    throw new UsageError(
      `the sheet of ${row.plan} is built, but no handover was noted, for ${REGISTER} cannot be written to: ${why}`,
    );
  }
}
