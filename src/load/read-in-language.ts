// What a practice says in further languages: `in_language:` of practice.yaml to records. Whether it says
// enough is asked of the plans whose sheets need it.
import type { CheckName } from '../finding/checks.ts';
import type { PracticeTexts } from '../model/practice.ts';
import { KIT, POSITIONS } from '../model/vocabulary.ts';
import {
  type At,
  pairs,
  pairsUnder,
  placeOf,
  startPlace,
  tellAt,
  textOf,
  textsUnder,
  textUnder,
  under,
} from './at.ts';
import { wordHints } from './did-you-mean.ts';
import type { PracticeFile, PracticeTextsFile } from './written.ts';

export function readInLanguage(
  practice: At<PracticeFile> | undefined,
): ReadonlyMap<string, PracticeTexts> {
  const languages = pairsUnder(practice, 'in_language') as readonly At<PracticeTextsFile>[];
  return new Map(languages.map((at) => [at.key, readTexts(at, practice)]));
}

function readTexts(
  at: At<PracticeTextsFile>,
  practice: At<PracticeFile> | undefined,
): PracticeTexts {
  const words = under(practice, 'words');
  const ids = (kind: 'positions' | 'kit') => pairsUnder(words, kind).map(({ key }) => key);
  return {
    contact: textUnder(at, 'contact'),
    emergencyIf: textsUnder(at, 'emergency_if'),
    getInTouch: textsUnder(at, 'get_in_touch'),
    stopIf: textsUnder(at, 'stop_if'),
    bands: namedIn(at, 'bands', 'unknown-band', textsUnder(practice, 'bands')),
    practitioners: namedIn(
      at,
      'practitioners',
      'unknown-practitioner',
      pairsUnder(practice, 'practitioners').map(({ key }) => key),
    ),
    positions: namedIn(at, 'positions', 'unknown-position', [...POSITIONS, ...ids('positions')]),
    kit: namedIn(at, 'kit', 'unknown-kit', [...KIT, ...ids('kit')]),
    place: at.keyPlace ?? startPlace(at),
    keyPlaces: new Map(pairs(at).map((one) => [one.key, one.keyPlace ?? placeOf(one)])),
  };
}

/** Words under names that the practice has; a name that it has not would never be printed. */
function namedIn(
  at: At<PracticeTextsFile>,
  key: 'bands' | 'practitioners' | 'positions' | 'kit',
  check: CheckName,
  known: readonly string[],
): ReadonlyMap<string, string> {
  const named = pairsUnder(at, key);
  for (const one of named) {
    if (known.includes(one.key)) continue;
    const message = `"${one.key}" is not among the ${key} of the practice, so these words would stand nowhere.`;
    const place = one.keyPlace ?? placeOf(one);
    tellAt(one, check, message, { place, hints: wordHints(one.key, known) });
  }
  return new Map(named.map((one) => [one.key, textOf(one)]));
}
