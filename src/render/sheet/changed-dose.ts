// What of a dose differs from the one before it: a tired person reads no sentence twice. What stays is
// not said (the section's lead says so), so what falls away has to be.
import type { Plan } from '../../model/plan.ts';
import { sentencesText } from '../words/amounts.ts';
import { type DoseSettings, doseExtras, dosePieces, roundsPiece } from '../words/dose-sentence.ts';
import type { Extra } from '../words/turn-words.ts';
import type { Words } from '../words/words.ts';
import type { Slot } from './exercise-slots.ts';

export function changedDose(words: Words, plan: Plan, before: Slot, now: Slot): string {
  const once = now.isOneRound && !before.isOneRound ? words.say('growth.one-round') : '';
  const [was, is] = [settingsOf(words, plan, before), settingsOf(words, plan, now)];
  const stays = unchanged(was, is);
  // Rounds may be said in the turns: the last piece alone does not tell that they are gone.
  const isGone = before.pieces.slice(0, -1).some((one, at) => one !== '' && now.pieces[at] === '');
  if (isGone || stays === null) {
    return words.say('growth.whole', { text: sentencesText(words, [now.dose, once]) });
  }
  const last = now.pieces.length - 1;
  const isOther = (at: number) => now.pieces[at] !== before.pieces[at];
  const rounds = isOther(last) && now.pieces[last] !== '' ? roundsPiece(is) : null;
  const brief = dosePieces({ ...is, unsaid: stays });
  // A round is the turn before it, unless the rounds stand for themselves.
  const isTurnSaid = isOther(0) || (isOther(last) && now.pieces[last] !== '' && rounds === null);
  const changed = brief.flatMap((piece, at) => {
    if (at === 0) return isTurnSaid ? [piece] : [];
    if (!isOther(at)) return [];
    return [at === last && rounds !== null ? rounds : piece];
  });
  return sentencesText(words, [...changed, once]);
}

function settingsOf(words: Words, plan: Plan, { item, part }: Slot): DoseSettings {
  const oneRepMax = plan.oneRepMax.get(item.item.exercise.id) ?? null;
  return { item, words, oneRepMax, isCircuit: part.rounds !== null };
}

/** What follows the turns of every side as it did before; null where something does not follow any more. */
function unchanged(before: DoseSettings, now: DoseSettings): ReadonlySet<Extra> | null {
  const [was, is] = [doseExtras(before), doseExtras(now)];
  const stays = new Set<Extra>(['load', 'hold', 'pause']);
  for (const [side, extras] of is) {
    for (const extra of ['load', 'hold', 'pause'] as const) {
      const [a, b] = [was.get(side)?.get(extra), extras.get(extra)];
      if (a !== undefined && b === undefined) return null;
      if (a !== b) stays.delete(extra);
    }
  }
  // Left unsaid on two sides that differ in it, their turns would read as the same.
  for (const extra of [...stays]) {
    const texts = new Set([...is.values()].map((extras) => extras.get(extra)));
    if (texts.size > 1) stays.delete(extra);
  }
  return stays;
}
