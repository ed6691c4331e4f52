// The facts of a level of an exercise: how it is done, and what the checks know of it. Its dose shows in
// the items that do it.
import type { Level, Picture } from '../../model/exercise.ts';
import { formatRange } from '../../units/interval.ts';
import { formatLoad } from '../../units/load.ts';
import { durationShown } from '../record/clinic-dose.ts';
import { exerciseName } from '../sheet/exercise-view.ts';
import { plainRange } from '../words/plain-number.ts';
import type { Words } from '../words/words.ts';
import { type Fact, type Section, whole } from './fact.ts';
import { gateText } from './gate-text.ts';

const SHOWN: readonly Section[] = ['exercises', 'growth'];
const READY: readonly Section[] = ['putReady', 'growth'];

export function levelFacts(level: Level, words: Words): readonly Fact[] {
  const { muscles, bounds } = level;
  const looked = (kind: 'muscles' | 'kit' | 'demands', ids: readonly string[]) =>
    ids.map((id) => words.look(kind, id) ?? id);
  return [
    whole('name', exerciseName(words, level), SHOWN),
    whole('position', words.look('positions', level.position) ?? level.position, SHOWN),
    whole('limb', level.limb, SHOWN),
    whole('tempo-words', words.say(`changes.tempo-words.${level.tempoWords}`), SHOWN),
    whole('setup', level.setup, SHOWN),
    whole('steps', level.steps, SHOWN),
    whole('feel', level.feel, SHOWN),
    whole('avoid', level.avoid, SHOWN),
    whole('easier', level.easier, SHOWN),
    whole('harder', level.harder, SHOWN),
    whole('picture', level.picture && pictureText(level.picture), SHOWN),
    whole('figure', figureLines(level), SHOWN),
    whole('link', level.link, SHOWN),
    whole(
      'kit-needed',
      level.kit.map((group) => looked('kit', group).join(' / ')),
      READY,
    ),
    // The main purpose says whether a hold comes first in its sentence.
    whole('purpose', level.purposes.join(', '), SHOWN),
    whole('prime', looked('muscles', muscles.prime), []),
    whole('assist', looked('muscles', muscles.assist), []),
    whole('demands', looked('demands', level.demands), []),
    whole('tags', level.tags, []),
    whole('gate', level.moveOnWhen && gateText(level.moveOnWhen, words), ['growth']),
    whole('bounds', bounds ? boundsTexts(bounds, words) : [], []),
  ];
}

function boundsTexts(bounds: NonNullable<Level['bounds']>, words: Words): readonly string[] {
  const { sets, reps, hold, time, load } = bounds;
  const said = (aspect: string, value: string) =>
    words.say('changes.named', { aspect: words.say(`changes.aspects.${aspect}`), value });
  return [
    ...(sets ? [said('sets', formatRange(sets))] : []),
    ...(reps ? [said('reps', plainRange(reps, 0, words))] : []),
    ...(hold ? [said('hold', durationShown(hold, words))] : []),
    ...(time ? [said('time', durationShown(time, words))] : []),
    ...(load ? [said('load', formatLoad(load))] : []),
  ];
}

/** The file, and a number of its bytes, so that another drawing under the same name is told. */
function pictureText({ file, bytes }: Picture): string {
  // FNV-1a, 32 bits; the sheet itself is compared byte by byte.
  const sum = bytes.reduce((hash, byte) => Math.imul(hash ^ byte, 16_777_619) >>> 0, 2_166_136_261);
  return `${file} (${bytes.length} B, ${sum.toString(16).padStart(8, '0')})`;
}

/** Where something stands in its file. */
const PLACES = ['place', 'keyPlaces'];

/** As written, a line for each thing: "end knee_flexion 0". */
function figureLines({ figure }: Level): readonly string[] {
  const lines = (value: unknown, path: readonly string[]): readonly string[] => {
    if (value === null || value === undefined) return [];
    if (typeof value !== 'object') return [[...path, String(value)].join(' ')];
    if (value instanceof Map)
      return [...value].flatMap(([key, one]) => lines(one, [...path, String(key)]));
    if (Array.isArray(value)) return value.flatMap((one) => lines(one, path));
    return Object.entries(value)
      .filter(([key]) => !PLACES.includes(key))
      .flatMap(([key, one]) => lines(one, [...path, key]));
  };
  return figure === null ? [] : lines(figure, []);
}
