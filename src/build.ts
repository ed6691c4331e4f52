// The pipeline as one table of contents: folder → practice → exercises → plans → numbers → checks.
// No command, terminal or clock is known here; what was found comes back as values.
import { checkFigures } from './check/figure-checks.ts';
import { checkFolder } from './check/folder-checks.ts';
import { impossibleJoints } from './check/joint-range.ts';
import { asSet, checkPlan } from './check/plan-checks.ts';
import { settingFindings } from './check/practice-settings.ts';
import { sheetLanguages } from './check/sheet-language.ts';
import { type PlanInLanguage, sheetParts } from './check/sheet-parts.ts';
import { judgedTranslations } from './check/translated-exercise.ts';
import { levelsWithoutTime } from './compute/item-week.ts';
import type { PlanNumbers } from './compute/numbers.ts';
import { planNumbers } from './compute/plan-numbers.ts';
import type { CheckName } from './finding/checks.ts';
import { type Finding, finding, inOrder } from './finding/finding.ts';
import { fileOnly } from './finding/place.ts';
import { idsFor } from './load/editor-schemas.ts';
import type { Folder } from './load/folder.ts';
import {
  filesById,
  type Library,
  type LoadedExercise,
  loadYaml,
  openLibrary,
} from './load/library.ts';
import { readPlan } from './load/read-plan.ts';
import {
  type LookedUp,
  readPeople,
  readPractice,
  standInPractice,
  unreadLists,
} from './load/read-practice.ts';
import { schemaVersion } from './load/schema-version.ts';
import { startingTexts } from './load/starting-texts.ts';
import { packLanguages } from './load/templates.ts';
import { readText } from './load/text-file.ts';
import type { Exercise } from './model/exercise.ts';
import { CODE } from './model/ids.ts';
import type { Plan } from './model/plan.ts';
import type { Person, Practice } from './model/practice.ts';

export const PRACTICE_FILE = 'practice.yaml';
const PEOPLE_FILE = 'people.yaml';

/** A plan after every stage, as far as it got. */
export interface CompiledPlan {
  readonly id: string;
  readonly file: string;
  readonly plan: Plan | null;
  readonly numbers: PlanNumbers | null;
  /** The language of its sheet: the plan's, else the person's, else the practice's. */
  readonly language: string;
  /** Its exercises that have no words in that language. */
  readonly untranslated: readonly Exercise[];
  /** What was found in the plan and in the exercises that it uses. */
  readonly findings: readonly Finding[];
  /** The files that it is made from, beside the settings. */
  readonly uses: readonly string[];
}

export interface Compiled {
  readonly practice: Practice;
  readonly people: ReadonlyMap<string, Person>;
  readonly plans: readonly CompiledPlan[];
  readonly library: Library;
  /** Everything that was found, in order of place. */
  readonly findings: readonly Finding[];
}

/** A folder that cannot be used at all: no practice.yaml, or one of a newer edition. */
export class FolderUnusable extends Error {}

/** The plans of a folder, by the code that each file's name gives. */
export function plansOf(folder: Folder): ReturnType<typeof filesById> {
  return filesById(folder, 'plans', 'duplicate-plan');
}

/** What to compile: these plans and exercises only, or everything. */
export interface Named {
  readonly plans: readonly string[];
  readonly exercises: readonly string[];
}

/** Is told of each plan as it is begun: how many were done, of how many, and its code. */
export type OnPlan = (done: number, of: number, plan: string) => void;

/** Compiles what is named, or all plans and the whole library. */
export function compile(folder: Folder, named: Named | null, onPlan: OnPlan = () => {}): Compiled {
  const settings = loadSettings(folder);
  const { practice } = settings;
  const library = withDoses(openLibrary(folder, { practice, folder }), practice);
  const { byId, findings: duplicatePlans } = plansOf(folder);
  const found: Finding[] = [...settings.findings];
  if (named === null) found.push(...library.duplicates, ...library.strays, ...duplicatePlans);
  for (const id of named?.exercises ?? library.ids) {
    const one = library.load(id);
    if (one) found.push(...one.findings, ...translationFindings(one));
  }
  const wanted = [...byId].filter(([id]) => named === null || named.plans.includes(id));
  const plans = wanted.map(([id, file], done) => {
    onPlan(done, wanted.length, id);
    const ownDuplicates = duplicatePlans.filter((one) =>
      [one.place.source.file, ...one.alsoMisleads].includes(file),
    );
    const setting = { practice, people: settings.people, library, duplicates: ownDuplicates };
    return compilePlan(folder, id, file, setting);
  });
  const kept = plans.filter(({ plan }) => named !== null || !plan?.closed);
  for (const plan of kept) found.push(...plan.findings);
  found.push(...figureFindings(library, named, practice).filter((one) => !isTold(one, found)));
  const ofLanguages = sheetLanguages(practice, inLanguages(kept), packLanguages(folder));
  const inFolder = folderFindings(folder, settings, library, plans, named === null);
  // A value that is a mistake is not also a telephone number.
  const ofFolder = inFolder.filter(
    (one) => !found.some((other) => other.severity === 'error' && isSamePlace(one, other)),
  );
  const withFolder = plans.map((plan) => ({
    ...plan,
    findings: inOrder([
      ...plan.findings,
      ...[...ofFolder, ...ofLanguages].filter(({ place }) => place.source.file === plan.file),
    ]),
  }));
  const own = found.filter((one) => !followsFromSettings(one, settings.unread));
  return {
    practice,
    people: settings.people,
    plans: withFolder,
    library,
    findings: inOrder([...own, ...ofFolder, ...ofLanguages]),
  };
}

/** What is found in the figures of the exercises that were asked for, or of all. */
function figureFindings(
  library: Library,
  named: Named | null,
  practice: Practice,
): readonly Finding[] {
  const found = (named?.exercises ?? library.ids).flatMap((id) => {
    const { exercise, findings = [] } = library.load(id) ?? {};
    const isSound = !findings.some(({ severity }) => severity === 'error');
    return exercise ? checkFigures(exercise, practice, isSound) : [];
  });
  return asSet(found, practice);
}

/** Whether a plan has told of it already, and perhaps accepted it. */
function isTold(one: Finding, found: readonly Finding[]): boolean {
  return found.some(
    ({ check, place }) =>
      check === one.check &&
      place.source === one.place.source &&
      place.start === one.place.start &&
      place.end === one.place.end,
  );
}

/** The library with what only the finished doses of a sound exercise show. */
function withDoses(library: Library, practice: Practice): Library {
  const judgedById = new Map<string, LoadedExercise>();
  const judge = (one: LoadedExercise): LoadedExercise =>
    one.exercise
      ? {
          ...one,
          findings: [
            ...one.findings,
            ...impossibleJoints(one.exercise),
            ...(one.findings.length === 0 ? levelsWithoutTime(one.exercise, practice) : []),
          ],
          ...(one.findings.length === 0 ? { translations: judgedTranslations(one, practice) } : {}),
        }
      : one;
  return {
    ...library,
    load: (id) => {
      const loaded = library.load(id);
      if (loaded && !judgedById.has(id)) judgedById.set(id, judge(loaded));
      return judgedById.get(id);
    },
  };
}

function inLanguages(plans: readonly CompiledPlan[]): readonly PlanInLanguage[] {
  return plans.flatMap(({ plan, numbers, file, language, untranslated }) =>
    plan ? [{ plan, file, language, untranslated, parts: numbers && sheetParts(numbers) }] : [],
  );
}

function translationFindings({ translations }: LoadedExercise): readonly Finding[] {
  return [...translations.values()].flatMap(({ findings }) => findings);
}

const LOOKS_UP: Readonly<Partial<Record<CheckName, readonly LookedUp[]>>> = {
  'unknown-practitioner': ['practitioners'],
  'unknown-band': ['bands'],
  'unknown-kit': ['words', 'bands'],
  'unknown-muscle': ['words'],
  'unknown-position': ['words'],
  'unknown-demand': ['words'],
  'unknown-concern': ['words'],
};

/** A word that is only unknown because the list of practice.yaml that would have it could not be read. */
function followsFromSettings({ check, place }: Finding, unread: ReadonlySet<LookedUp>): boolean {
  return (
    place.source.file !== PRACTICE_FILE &&
    (LOOKS_UP[check]?.some((list) => unread.has(list)) ?? false)
  );
}

function isSamePlace({ place: one }: Finding, { place: other }: Finding): boolean {
  return one.source.file === other.source.file && one.start < other.end && other.start < one.end;
}

/** What is found in the files that were read; in a build of everything, in the diaries and between plans too. */
function folderFindings(
  folder: Folder,
  { practice, people }: Pick<Compiled, 'practice' | 'people'>,
  library: Library,
  compiled: readonly CompiledPlan[],
  isWhole: boolean,
): readonly Finding[] {
  const plans = compiled.flatMap(({ plan }) => (plan ? [plan] : []));
  const diaries = isWhole ? folder.list('diaries').filter(({ path }) => path.endsWith('.csv')) : [];
  const sources = [
    practice.source,
    ...library.loaded().flatMap(({ exercise }) => (exercise ? [exercise.source] : [])),
    ...library
      .loaded()
      .flatMap(({ translations }) => [...translations.values()])
      .flatMap(({ texts }) => (texts ? [texts.source] : [])),
    ...plans.map(({ source }) => source),
    ...diaries.flatMap(({ path }) => readText(folder, path).value ?? []),
  ];
  const names = [...people.values()].flatMap(({ name }) => name ?? []);
  // The latest visit; of a plan whose dates are far apart the earliest, since one year of them may be mistyped.
  const referenceDay =
    plans
      .map(
        ({ visits, starts, nextVisit }) =>
          [visits.at(-1)?.date ?? '', starts, nextVisit ?? starts].sort()[0],
      )
      .sort()
      .at(-1) || null;
  const sound = compiled.flatMap(({ plan, numbers }) =>
    plan && numbers && !plan.closed ? [plan] : [],
  );
  return checkFolder(practice, {
    sources,
    names,
    referenceDay,
    plans,
    plansToCompare: isWhole ? sound : [],
    exercises: library
      .loaded()
      .flatMap(({ exercise, findings }) => (exercise && findings.length === 0 ? [exercise] : [])),
    startingTexts: startingTexts(),
  });
}

function loadSettings(folder: Folder) {
  if (!folder.entry(PRACTICE_FILE)) throw new FolderUnusable(`there is no ${PRACTICE_FILE}`);
  const { file, findings } = loadYaml(folder, PRACTICE_FILE, 'practice');
  const unread = findings.find(({ check }) => check === 'file-unreadable');
  if (unread) throw new FolderUnusable(`${PRACTICE_FILE}: ${unread.message.replace(/\.$/, '')}`);
  const version = file && schemaVersion(file);
  if (version) throw new FolderUnusable(version);
  const found: Finding[] = [];
  const practice = file ? readPractice(file) : standInPractice(PRACTICE_FILE);
  const missing = unreadLists(file);
  found.push(...(file ? file.findings : findings), ...settingFindings(practice));
  let people: ReadonlyMap<string, Person> = new Map();
  if (folder.entry(PEOPLE_FILE)) {
    const loaded = loadYaml(folder, PEOPLE_FILE, 'people');
    if (loaded.file) people = readPeople(loaded.file);
    found.push(...(loaded.file ? loaded.file.findings : loaded.findings));
  }
  return { practice, people, unread: missing, findings: found };
}

interface PlanSetting {
  readonly practice: Practice;
  readonly people: ReadonlyMap<string, Person>;
  readonly library: Library;
  readonly duplicates: readonly Finding[];
}

function compilePlan(folder: Folder, id: string, file: string, setting: PlanSetting): CompiledPlan {
  const { practice, people, library } = setting;
  const used = new Map<string, LoadedExercise>();
  const found: Finding[] = [...setting.duplicates];
  const nothing = (findings: readonly Finding[]): CompiledPlan => ({
    id,
    file,
    plan: null,
    numbers: null,
    language: practice.language,
    untranslated: [],
    uses: [file],
    findings: [...found, ...findings],
  });
  if (!CODE.test(id)) {
    const message = `"${id}" cannot be a plan's code; a file name has letters, digits and hyphens.`;
    return nothing([
      finding({ check: 'bad-id', severity: 'error', message, place: fileOnly(file) }),
    ]);
  }
  const loaded = loadYaml(folder, file, 'plan', idsFor(practice, library.ids));
  if (!loaded.file) return nothing(loaded.findings);
  const exercise = (name: string) => {
    const one = library.load(name);
    if (one) used.set(name, one);
    return one;
  };
  const { ids: exerciseIds, idOfName: exerciseOfName } = library;
  const plan = readPlan(loaded.file, id, { practice, exercise, exerciseIds, exerciseOfName });
  found.push(...loaded.file.findings);
  const files = [...used.values()].map((one) => one.file);
  const twice = library.duplicates.filter((one) =>
    one.alsoMisleads.some((path) => files.includes(path)),
  );
  const language =
    plan?.handoutLanguage ?? (plan && people.get(plan.person)?.language) ?? practice.language;
  const translations = [...used.values()].flatMap((one) => one.translations.get(language) ?? []);
  const inExercises = [
    ...twice,
    ...[...used.values()].flatMap((one) => one.findings),
    ...translations.flatMap((one) => one.findings),
  ];
  const uses = [file, ...files, ...translations.map((one) => one.file)];
  if (!plan) return { ...nothing(inExercises), uses };
  const untranslated =
    language === practice.language
      ? []
      : [...used.values()].flatMap(({ exercise, translations: others }) =>
          exercise && !others.has(language) ? [exercise] : [],
        );
  const { numbers, findings } = judged(plan, practice, [...found, ...inExercises]);
  const all = [...found, ...inExercises, ...findings];
  return { id, file, plan, numbers, language, untranslated, uses, findings: all };
}

/** Numbers are for sound items only, and checks of the whole plan for a plan without errors. */
function judged(plan: Plan, practice: Practice, before: readonly Finding[]) {
  const outcome = planNumbers(plan, practice);
  const fresh = outcome.findings.filter((one) => !followsFrom(one, before));
  if ([...before, ...fresh].some(({ severity }) => severity === 'error')) {
    return { numbers: null, findings: fresh };
  }
  return { numbers: outcome.value, findings: [...fresh, ...checkPlan(practice, outcome.value)] };
}

/** Whether a finding about an item's numbers only follows from a mistake already told of in the item or its exercise. */
function followsFrom(one: Finding, before: readonly Finding[]): boolean {
  const item = one.scope.at(-1);
  if (!item || !('extent' in item) || !('exercise' in item)) return false;
  const { extent, exercise } = item as Plan['sessions'][number]['parts'][number]['items'][number];
  return before.some(({ severity, place }) => {
    if (severity !== 'error') return false;
    if (place.source.file === exercise.source.file) return true;
    return (
      place.source.file === extent.source.file &&
      place.start >= extent.start &&
      place.start < extent.end
    );
  });
}

/** Whether a folder of plans or exercises is out of reach, so that nothing can be said to be gone. */
function isFolderLinked(check: CheckName, file: string): boolean {
  return check === 'file-linked' && !/\.ya?ml$/.test(file);
}

/** Whether an error belongs to every plan: one in the settings, the people, a template, or a private file that git tracks. */
export function belongsToAll({ check, place }: Finding): boolean {
  const { file } = place.source;
  // What the practice does not say in a language costs the sheets in that language alone.
  if (check === 'translation-missing') return false;
  return (
    file === PRACTICE_FILE ||
    file === PEOPLE_FILE ||
    file.startsWith('templates/') ||
    check === 'private-file-tracked' ||
    isFolderLinked(check, file)
  );
}

/** The errors that cost a plan its sheet. */
export function errorsOf(plan: CompiledPlan, findings: readonly Finding[]): readonly Finding[] {
  return findings.filter(
    (one) =>
      one.severity === 'error' &&
      (belongsToAll(one) ||
        [one.place.source.file, ...one.alsoMisleads].some((file) => plan.uses.includes(file))),
  );
}
