// An exercise file to a record: every level with all that it says after overriding its exercise.
import type { Place } from '../finding/place.ts';
import {
  type Exercise,
  type Level,
  LIMBS,
  type Limb,
  type Muscles,
  type Picture,
  type Purpose,
} from '../model/exercise.ts';
import type { Figure } from '../model/figure.ts';
import {
  EMPTY_DOSE,
  hasShape,
  mergeLayer,
  mergeProblem,
  mergeProblemSentence,
} from '../model/merge.ts';
import type { Practice } from '../model/practice.ts';
import type { Order, Sides } from '../units/side.ts';
import {
  type At,
  entries,
  hasKey,
  isList,
  placeOf,
  rootOf,
  startPlace,
  tellAt,
  textOf,
  textsUnder,
  textUnder,
  under,
  wordUnder,
} from './at.ts';
import type { Folder } from './folder.ts';
import { isKnown, knownWords } from './known-words.ts';
import { readPicture } from './pictures.ts';
import { printedTexts } from './printed-texts.ts';
import { readBounds, readDose, readMoveOnWhen } from './read-dose.ts';
import { readFigure } from './read-figure.ts';
import type { ExerciseFile, LevelFile } from './written.ts';
import type { YamlFile } from './yaml-file.ts';

export interface ExerciseSetting {
  readonly practice: Practice;
  readonly folder: Folder;
}

/** The keys that an exercise and its levels share. */
type Shared = Omit<
  Level,
  | 'id'
  | 'name'
  | 'place'
  | 'exerciseName'
  | 'exerciseDose'
  | 'levelDose'
  | 'bounds'
  | 'moveOnWhen'
  | 'translations'
>;

/** The exercise of a file; null where too little of it could be read to go on. */
export function readExercise(
  file: YamlFile,
  id: string,
  setting: ExerciseSetting,
): Exercise | null {
  const at = rootOf<ExerciseFile>(file);
  if (!at) return null;
  const written = textUnder(at, 'exercise');
  if (written !== null && written !== id) {
    tellAt(
      under(at, 'exercise') ?? at,
      'id-differs',
      `"exercise: ${written}" stands in a file called ${id}.yaml; write "exercise: ${id}", or give the file the other name.`,
    );
  }
  const shared = readShared(at, setting);
  const exerciseDose = readDose(under(at, 'dose'), setting.practice.bands) ?? null;
  const name = textUnder(at, 'name') ?? id;
  const levels: Level[] = [];
  for (const levelAt of entries(under(at, 'levels'))) {
    const own = readShared(levelAt, setting);
    const levelId = textUnder(levelAt, 'level');
    if (levelId === null) continue;
    const before = levels.find((one) => one.id === levelId);
    if (before) {
      tellAt(
        under(levelAt, 'level') ?? levelAt,
        'duplicate-level',
        `Level "${levelId}" stands twice; give one of them another id.`,
        {
          related: [{ message: 'The first one.', place: before.place }],
        },
      );
      continue;
    }
    const level: Level = {
      ...DEFAULTS,
      ...shared,
      ...own,
      id: levelId,
      name: textUnder(levelAt, 'name'),
      place: under(levelAt, 'level')
        ? placeOf(under(levelAt, 'level') as At<unknown>)
        : placeOf(levelAt),
      exerciseName: name,
      exerciseDose,
      levelDose: readDose(under(levelAt, 'dose'), setting.practice.bands) ?? null,
      bounds: readBounds(under(levelAt, 'bounds'), setting.practice.bands),
      moveOnWhen: readMoveOnWhen(under(levelAt, 'move_on_when'), setting.practice.bands),
      // Read from files of their own, beside this one.
      translations: new Map(),
    };
    tellSides(at, levelAt, level);
    tellDose(at, levelAt, level);
    levels.push(level);
  }
  if (levels.length === 0) return null;
  return {
    id,
    name,
    source: file.source,
    place: placeOf(under(at, 'exercise') ?? at),
    levels,
    printed: printedTexts(at, 'exercise'),
  };
}

const DEFAULTS = {
  purposes: ['strength'] as readonly Purpose[],
  position: '',
  sides: 'both' as Sides,
  limb: null as Limb | null,
  limbPlace: null as Place | null,
  order: null as Order | null,
  tempoWords: 'down-up' as const,
  muscles: { prime: [], assist: [] } as Muscles,
  kit: [] as readonly (readonly string[])[],
  demands: [] as readonly string[],
  tags: [] as readonly string[],
  setup: [] as readonly string[],
  steps: [] as readonly string[],
  feel: null as string | null,
  avoid: [] as readonly string[],
  easier: null as string | null,
  harder: null as string | null,
  picture: null as Picture | null,
  figure: null as Figure | null,
  link: null as string | null,
};

/** What a level or an exercise says itself: a key that is not written is not there, so that it overrides nothing. */
function readShared(
  at: At<ExerciseFile> | At<LevelFile>,
  setting: ExerciseSetting,
): Partial<Shared> {
  const one = at as At<LevelFile>;
  const { vocabulary } = setting.practice;
  const shared: { -readonly [K in keyof Shared]?: Shared[K] } = {};
  const purposes = readPurposes(under(one, 'purpose'));
  if (purposes.length > 0) shared.purposes = purposes;
  const position = under(one, 'position');
  if (position && isKnown(position, 'unknown-position', vocabulary.positions))
    shared.position = textOf(position);
  const sides = wordUnder(one, 'sides');
  if (sides) shared.sides = sides as Sides;
  const limb = under(one, 'limb');
  if (limb) {
    shared.limb = textOf(limb) as Limb;
    shared.limbPlace = placeOf(limb);
  }
  const order = wordUnder(one, 'order');
  if (order) shared.order = order as Order;
  const tempoWords = textsUnder(one, 'tempo_words');
  if (tempoWords.length > 0) shared.tempoWords = tempoWords[0] === 'up' ? 'up-down' : 'down-up';
  const muscles = under(one, 'muscles');
  if (muscles) {
    shared.muscles = {
      prime: knownWords(under(muscles, 'prime'), 'unknown-muscle', vocabulary.muscles) ?? [],
      assist: knownWords(under(muscles, 'assist'), 'unknown-muscle', vocabulary.muscles) ?? [],
    };
  }
  const kit = under(one, 'kit');
  if (kit) shared.kit = readKit(kit, setting.practice);
  const demands = knownWords(under(one, 'demands'), 'unknown-demand', vocabulary.demands);
  if (demands) shared.demands = demands;
  for (const key of ['tags', 'setup', 'steps', 'avoid'] as const) {
    if (under(one, key)) shared[key] = textsUnder(one, key);
  }
  for (const key of ['feel', 'easier', 'harder', 'link'] as const) {
    const text = textUnder(one, key);
    if (text !== null) shared[key] = text;
  }
  const picture = readPicture(under(one, 'picture'), setting.folder);
  if (picture) shared.picture = picture;
  const figure = readFigure(under(one, 'figure'));
  if (figure) {
    shared.figure = figure;
    // A level's own figure is nearer than a picture of the whole exercise.
    if (!under(one, 'picture')) shared.picture = null;
  }
  return shared;
}

function readPurposes(at: At<unknown> | undefined): readonly Purpose[] {
  if (!at) return [];
  const words = isList(at) ? entries(at as At<readonly unknown[]>).map(textOf) : [textOf(at)];
  return words as readonly Purpose[];
}

function readKit(
  at: At<readonly unknown[]>,
  { vocabulary, bands }: Practice,
): readonly (readonly string[])[] {
  const isKit = (one: At<unknown>) => {
    const word = textOf(one);
    if (!bands.includes(word)) return isKnown(one, 'unknown-kit', vocabulary.kit);
    const message = `"${word}" is a band, and a band is not listed under "kit": it goes under "load" in the dose, as "load: ${word}".`;
    tellAt(one, 'unknown-kit', message);
    return false;
  };
  return entries(at).flatMap((one) => {
    const alternatives = isList(one) ? entries(one as At<readonly unknown[]>) : [one];
    const ids = alternatives.filter(isKit).map(textOf);
    return ids.length > 0 ? [ids] : [];
  });
}

const LIMB_MISSING = '"limb" is missing';

function tellSides(exercise: At<ExerciseFile>, at: At<LevelFile>, level: Level): void {
  if (level.sides === 'each') {
    const isTold = at.file.findings.some(({ message }) => message.startsWith(LIMB_MISSING));
    if (level.limb === null && !isTold && !hasKey(exercise, 'limb') && !hasKey(at, 'limb')) {
      tellAt(
        at,
        'missing-key',
        `${LIMB_MISSING}: level "${level.id}" is done one side at a time, and the sheet has to say what a side is called; write "limb:" with one of ${LIMBS.join(', ')}.`,
        { place: startPlace(at) },
      );
    }
    return;
  }
  const order = under(at, 'order');
  if (order) {
    tellAt(
      order,
      'sides-not-each',
      `"order" is for an exercise done one side at a time, but level "${level.id}" has "sides: ${level.sides}".`,
    );
  }
}

function tellDose(exercise: At<ExerciseFile>, at: At<LevelFile>, level: Level): void {
  let dose = EMPTY_DOSE;
  for (const [layer, origin] of [
    [level.exerciseDose, 'exercise'],
    [level.levelDose, 'level'],
  ] as const) {
    if (!layer) continue;
    const problem = mergeProblem(dose, layer, false);
    if (problem) {
      const place = layer.keyPlaces.get(problem.key) ?? layer.place;
      tellAt(at, problem.check, mergeProblemSentence(problem), { place });
    }
    dose = mergeLayer(dose, layer, { layer: origin });
  }
  if (hasShape(dose)) return;
  // A value that was misread has been told of; without it nothing can be said of the shape.
  const isUnread =
    (hasKey(exercise, 'dose') && !level.exerciseDose) || (hasKey(at, 'dose') && !level.levelDose);
  if (isUnread) return;
  const [start, end] = at.node.range ?? [0, 0, 0];
  const isMisplaced = at.file.findings.some(
    ({ check, place }) => check === 'unknown-key' && place.start >= start && place.start < end,
  );
  if (isMisplaced) return;
  const layers = [level.exerciseDose, level.levelDose].filter((layer) => layer !== null);
  const isMisread = at.file.findings.some(({ place }) =>
    layers.some((layer) => place.start >= layer.place.start && place.end <= layer.place.end),
  );
  if (isMisread) return;
  tellAt(
    at,
    'dose-without-shape',
    `The dose of level "${level.id}" does not say how much; write how many reps, or a hold or a time, such as "dose: {sets: 2, reps: 8-12}".`,
    { place: startPlace(at) },
  );
}
