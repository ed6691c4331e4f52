// What follows a turn: the pace of a tempo, how far the joint goes, how hard it should feel, and
// that one may stop earlier. Where the sides differ, each is named.

import { milliseconds } from '../../units/duration.ts';
import { exactly } from '../../units/interval.ts';
import type { Tempo } from '../../units/measure.ts';
import { commaText, durationText, numberText, rangeText, sentencesText } from './amounts.ts';
import type { Lane } from './side-words.ts';
import type { Words } from './words.ts';

/** The names of the first and the third number of a tempo. */
export type TempoWords = 'down-up' | 'up-down';

/** What follows the turn, in order: pace, how far, effort, when to stop; empty where it is not said. */
export function afterTurn(
  words: Words,
  lanes: readonly Lane[],
  tempoWords: TempoWords,
): readonly string[] {
  return [
    sentencesText(words, tempoSentences(words, lanes, tempoWords)),
    sentencesText(words, rangeSentences(words, lanes)),
    sentencesText(words, effortSentences(words, lanes)),
    lanes.some(({ dose }) => dose.values.until === 'tired') ? words.say('dose.until-tired') : '',
  ];
}

function tempoSentences(
  words: Words,
  lanes: readonly Lane[],
  tempoWords: TempoWords,
): readonly string[] {
  const paces = lanes.map(({ dose }) =>
    dose.values.tempo ? phasesText(words, dose.values.tempo, tempoWords) : '',
  );
  const [first = '', second] = paces;
  if (second === undefined || first === second) {
    return first === '' ? [] : [words.say('dose.tempo', { phases: first })];
  }
  return lanes.flatMap((lane, at) =>
    paces[at] ? [words.say('dose.tempo-side', { side: lane.side ?? '', phases: paces[at] })] : [],
  );
}

/** The four phases in the order done; one that takes no time is not said. */
function phasesText(words: Words, tempo: Tempo, tempoWords: TempoWords): string {
  const ways =
    tempoWords === 'down-up' ? ['down', 'still', 'up', 'still'] : ['up', 'still', 'down', 'still'];
  const phases = tempo.flatMap((ms, at) =>
    ms === 0
      ? []
      : [
          words.say(`dose.phase-${ways[at]}`, {
            seconds: durationText(words, milliseconds(exactly(ms))),
          }),
        ],
  );
  return commaText(words, phases);
}

function rangeSentences(words: Words, lanes: readonly Lane[]): readonly string[] {
  const range = lanes[0]?.dose.values.range;
  if (!range) return [];
  return [
    words.say('dose.range', { from: numberText(words, range[0]), to: numberText(words, range[1]) }),
  ];
}

function effortSentences(words: Words, lanes: readonly Lane[]): readonly string[] {
  const efforts = lanes.map(({ dose }) =>
    dose.values.effort ? rangeText(words, dose.values.effort) : '',
  );
  const [left = '', right] = efforts;
  if (right === undefined || left === right) {
    return left === '' ? [] : [words.say('dose.effort', { effort: left })];
  }
  const sides = { left_side: lanes[0]?.side ?? '', right_side: lanes[1]?.side ?? '' };
  if (left !== '' && right !== '')
    return [words.say('dose.effort-sides', { left, right, ...sides })];
  return [
    words.say('dose.effort-side', {
      effort: left === '' ? right : left,
      side: left === '' ? sides.right_side : sides.left_side,
    }),
  ];
}
