// The facts of the practice's settings that can reach a sheet.
import type { Practice, VocabularyKind } from '../../model/practice.ts';
import { plainNumber, plainRange, secondsOf } from '../words/plain-number.ts';
import type { Words } from '../words/words.ts';
import { type Fact, type Section, whole } from './fact.ts';
import { painText } from './plan-facts.ts';

const DOSED: readonly Section[] = ['days', 'exercises', 'growth'];

export function practiceFacts(practice: Practice, words: Words): readonly Fact[] {
  const { timing } = practice;
  const seconds = (ms: readonly [number, number]) =>
    words.say('clinic.seconds', { number: plainRange(secondsOf(ms), 3, words) });
  return [
    whole('practice', practice.name, ['head']),
    whole('contact', practice.contact, ['head', 'safety', 'footer']),
    whole('emergency', practice.emergency, ['safety']),
    whole('emergency-if', practice.emergencyIf, ['safety']),
    whole('get-in-touch', practice.getInTouch, ['safety']),
    whole('stop-if', practice.stopIf, ['safety']),
    whole('language', practice.language, ['language']),
    whole('pain', painText(practice.pain, words), []),
    whole('settles-by', words.say(`changes.settles-by.${practice.settlesBy}`), ['safety']),
    whole('timing-move', seconds(timing.move), DOSED),
    whole('timing-pause', seconds(timing.pause), DOSED),
    whole('timing-rest', seconds(timing.rest), DOSED),
    whole('timing-change-sides', seconds(timing.changeSides), DOSED),
    whole('timing-between-items', seconds(timing.betweenItems), DOSED),
    whole(
      'timing-breath',
      words.say('clinic.seconds', { number: plainNumber(timing.breath / 1000, 3, words) }),
      DOSED,
    ),
    whole('bands', practice.bands, []),
    whole(
      'practitioners',
      [...practice.practitioners].map(([id, name]) => `${id}: ${name}`),
      ['head'],
    ),
    whole('vocabulary', vocabularyLines(practice), ['putReady', 'exercises', 'growth']),
  ];
}

function vocabularyLines({ vocabulary }: Practice): readonly string[] {
  const kinds = Object.entries(vocabulary.words) as [VocabularyKind, ReadonlyMap<string, string>][];
  return kinds.flatMap(([kind, words]) =>
    [...words].map(([id, text]) => `${kind}, ${id}: ${text}`),
  );
}
