// What `carryover list` prints: one row an exercise, one row a plan. What is listed is chosen elsewhere.
import type { Exercise, Level } from '../../model/exercise.ts';
import type { Plan } from '../../model/plan.ts';
import { type Day, weekOf } from '../../units/day.ts';
import { brokenAtCommas, type Screen } from './terminal-text.ts';
import { type TextCell, type TextColumn, type TextRow, tableText } from './text-table.ts';

export interface PlanInFile {
  readonly plan: Plan;
  /** Relative to the practice folder. */
  readonly file: string;
}

const NOTHING = '-';

// Below this many columns of the screen, levels and kit go on a line of their own.
const WIDE = 100;

/** One row an exercise; where levels differ, all that they say, the easiest first. */
export function listExercisesText(exercises: readonly Exercise[], screen: Screen): string {
  if (exercises.length === 0) return 'No exercises.';
  const isWide = screen.width >= WIDE;
  const columns = textColumns('Exercise', 'Name', 'Purpose', 'Position', 'Sides');
  const rows = exercises.flatMap(({ id, name, levels }): TextRow[] => {
    const cells: TextCell[] = [
      { text: id, paint: screen.paint.bold },
      name,
      distinct(levels.flatMap(({ purposes }) => purposes)),
      distinct(levels.map(({ position }) => position)),
      distinct(levels.map(({ sides }) => sides)),
    ];
    const levelIds = distinct(levels.map((level) => level.id));
    const kit = distinct(levels.flatMap(kitOf));
    if (isWide) return [[...cells, levelIds, kit]];
    const more = [`levels: ${levelIds}`, ...(kit === NOTHING ? [] : [`kit: ${kit}`])].join('; ');
    return [cells, { line: { text: more, paint: screen.paint.dim }, indent: 2 }];
  });
  const all = isWide ? [...columns, ...textColumns('Levels', 'Kit')] : columns;
  return tableText({ columns: all, rows }, screen);
}

function textColumns(...headings: readonly string[]): TextColumn[] {
  return headings.map((heading) => ({ heading, align: 'left' }));
}

function distinct(texts: readonly string[]): string {
  return texts.length === 0 ? NOTHING : [...new Set(texts)].join(', ');
}

/** `chair or worktop` is one piece: any of them will do. */
function kitOf({ kit }: Level): string[] {
  return kit.map((anyOf) => anyOf.join(' or '));
}

/** One row a plan; a next visit that has gone by is marked. The file is told where its name is not the code's place. */
export function listPlansText(
  plans: readonly PlanInFile[],
  { today, ...screen }: Screen & { readonly today: Day },
): string {
  if (plans.length === 0) return 'No plans.';
  const isFileTold = plans.some(({ plan, file }) => file !== `plans/${plan.id}.yaml`);
  const isClosedTold = plans.some(({ plan }) => plan.closed !== null);
  const columns = [
    ...textColumns('Plan', 'Title', 'Weeks', 'Next visit'),
    ...(isClosedTold ? textColumns('Closed') : []),
    ...(isFileTold ? textColumns('File') : []),
  ];
  const rows = plans.map(({ plan, file }): TextCell[] => [
    { text: plan.id, paint: screen.paint.bold },
    plan.title,
    brokenAtCommas(weeksCell(plan, today)),
    nextVisitCell(plan, today, screen),
    ...(isClosedTold ? [brokenAtCommas(closedCell(plan))] : []),
    ...(isFileTold ? [file] : []),
  ]);
  return tableText({ columns, rows }, screen);
}

/** `8, now in 3`: how many, and where the plan stands today. */
function weeksCell({ starts, weeks, closed }: Plan, today: Day): string {
  if (closed) return String(weeks);
  const week = weekOf(starts, today);
  if (week < 1) return `${weeks}, from ${starts}`;
  return week > weeks ? `${weeks}, all past` : `${weeks}, now in ${week}`;
}

function nextVisitCell({ nextVisit, closed }: Plan, today: Day, { paint }: Screen): TextCell {
  if (nextVisit === null) return NOTHING;
  if (closed || nextVisit >= today) return nextVisit;
  return { text: brokenAtCommas(`${nextVisit}, past`), paint: paint.warn };
}

function closedCell({ closed }: Plan): string {
  return closed ? closed.date : NOTHING;
}

/** An id that files may use. */
export interface ListedWord {
  readonly kind: string;
  readonly id: string;
  /** As a sheet says it; null where no pack names it. */
  readonly words: string | null;
  /** Of a muscle of the vocabulary. */
  readonly region: string | null;
  /** Added, or worded anew, in practice.yaml. */
  readonly isOwn: boolean;
}

/** A table for each kind; the practice's own are marked. */
export function listWordsText(words: readonly ListedWord[], screen: Screen): string {
  const kinds = [...new Set(words.map(({ kind }) => kind))];
  return kinds
    .map((kind) => {
      const ofKind = words.filter((one) => one.kind === kind);
      const hasRegions = ofKind.some(({ region }) => region !== null);
      const hasOwn = ofKind.some(({ isOwn }) => isOwn);
      const columns = textColumns(
        capitalised(kind),
        'On the sheet',
        ...(hasRegions ? ['Region'] : []),
        ...(hasOwn ? ['Own'] : []),
      );
      const rows = ofKind.map(({ id, words: called, region, isOwn }): TextCell[] => [
        { text: id, paint: screen.paint.bold },
        called ?? NOTHING,
        ...(hasRegions ? [region ?? NOTHING] : []),
        ...(hasOwn ? [isOwn ? 'own' : ''] : []),
      ]);
      return tableText({ columns, rows }, screen);
    })
    .join('\n\n');
}

function capitalised(word: string): string {
  return `${word.charAt(0).toUpperCase()}${word.slice(1)}`;
}
