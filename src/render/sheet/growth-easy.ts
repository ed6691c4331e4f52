// What an easy week eases, exercise by exercise: under the number that the plan has come to, and under
// those before it at which she may still be. Said apart from the steps, which go on after it.

import { easedDose } from '../../compute/easy-week.ts';
import type { ItemWeek, SideWork, WeekNumbers } from '../../compute/numbers.ts';
import { numberText } from '../words/amounts.ts';
import { type Slot, wordedDose } from './exercise-slots.ts';
import { type Stage, said, say, type Track, type Walk } from './growth-walk.ts';

export function ease(walk: Walk, week: WeekNumbers, slot: Slot, { now, behind }: Track): void {
  // A note is no less in an easy week, and was told of with the step that brought it.
  easeStage(walk, week, now, slot);
  for (const stage of behind) {
    // What only an easy week showed cannot be eased once more.
    if (!stage.isFromEasyWeek) easeStage(walk, week, stage, easedSlot(walk, stage.last));
  }
}

function easeStage(walk: Walk, week: WeekNumbers, { number, last }: Stage, eased: Slot): void {
  if (eased.dose === last.dose) return;
  const { words } = walk;
  const exercise = words.say('growth.exercise', { number: numberText(words, number) });
  say(walk.easy, number, week.week, eased, {
    lead: words.say('growth.line', { lead: exercise }),
    text: said(walk, eased, last),
  });
}

/** A slot of an earlier week as its easy week would be. */
function easedSlot(walk: Walk, slot: Slot): Slot {
  const { words, practice, numbers } = walk;
  const easy = numbers.plan.easyWeeks;
  if (!easy) return slot;
  const isCircuit = slot.part.rounds !== null;
  const eased = (work: SideWork | null) =>
    work && { ...work, dose: easedDose(work.dose, easy, practice.timing.breath, isCircuit) };
  const { left, right, middle } = slot.item;
  const item: ItemWeek = {
    ...slot.item,
    left: eased(left),
    right: eased(right),
    middle: eased(middle),
  };
  return { ...slot, item, ...wordedDose(words, numbers.plan, slot.part, item) };
}
