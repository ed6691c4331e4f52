// `carryover figure`: the figures of exercises as SVG files, and a page to look at them.
import { mkdirSync, writeFileSync } from 'node:fs';
import { join, relative, resolve } from 'node:path';
import { filesById } from '../load/library.ts';
import { renderFigures } from '../render/pages/pages.ts';
import { type FiguresView, figuresView } from '../render/sheet/figures-view.ts';
import { compileWork, findingsReport, isFailing, shownFindings } from './compiled.ts';
import { type CommandResult, namedFiles, openFolder, type Session, UsageError } from './session.ts';

export interface FigureOptions {
  readonly all?: boolean;
  readonly out?: string;
}

const DEFAULT_FOLDER = 'handouts/figures';
const PAGE = 'index.html';

export function figure(
  session: Session,
  what: readonly string[],
  { all = false, out }: FigureOptions,
): CommandResult {
  if (all === what.length > 0)
    throw new UsageError('name the exercises to draw, or say --all for every one');
  const open = openFolder(session);
  const everything = [...filesById(open.folder, 'exercises', 'duplicate-exercise').byId.keys()];
  const exercises = all ? everything : (namedFiles(what, open, session)?.exercises ?? []);
  const work = compileWork(open, { plans: [], exercises }, session);
  const { compiled, templates, wording } = work;
  const words = wording.get(compiled.practice.language);
  const log = findingsReport(compiled.findings, session, 'err');
  const findings = shownFindings(compiled.findings, session);
  if (!words) return { status: 1, findings, data: null, out: '', log };
  const view = figuresView(
    words,
    exercises.flatMap((id) => compiled.library.load(id)?.exercise ?? []),
  );
  const page = renderFigures(view, templates.texts);
  if (!page.ok) throw new UsageError(`templates/${page.problem.template}: ${page.problem.message}`);
  const folder =
    out === undefined ? join(open.root, DEFAULT_FOLDER) : resolve(session.outside.cwd, out);
  const files = view.figures.map(
    ({ id, drawing }) => [`${id}.svg`, drawing.picture.bytes] as const,
  );
  if (files.length > 0) {
    mkdirSync(folder, { recursive: true });
    for (const [name, bytes] of files) writeFileSync(join(folder, name), bytes);
    writeFileSync(join(folder, PAGE), page.text);
  }
  const seen = relative(session.outside.cwd, folder) || '.';
  return {
    status: isFailing(compiled.findings, session) ? 1 : 0,
    findings,
    data: { folder: seen, files: files.map(([name]) => name) },
    out: files.length === 0 ? 'None of these has a figure.\n' : report(seen, view.figures),
    log,
  };
}

function report(folder: string, figures: FiguresView['figures']): string {
  const count = figures.length === 1 ? '1 figure' : `${figures.length} figures`;
  const lines = figures.map(
    ({ id, lacks }) => `${folder}/${id}.svg${lacks.length === 0 ? '' : `  (${lacks.join(', ')})`}`,
  );
  return `${lines.join('\n')}\n${count}; to look at: ${folder}/${PAGE}\n`;
}
