// The box: what to do at which pain, when to stop, when to get in touch, when to call for help.
// A plan may have pain ranges of its own and more reasons to stop; it never has fewer.
import type { Plan } from '../../model/plan.ts';
import type { PainRanges, Practice } from '../../model/practice.ts';
import { rangeText } from '../words/amounts.ts';
import type { Words } from '../words/words.ts';
import type { SafetyView } from './sheet-view.ts';

export function painOf(plan: Plan, practice: Practice): PainRanges {
  return plan.pain ?? practice.pain;
}

export function safetyView(words: Words, plan: Plan, practice: Practice): SafetyView {
  const { carryOn, easeOff, stop } = painOf(plan, practice);
  const settles = words.say(`sheet.settles-${practice.settlesBy}`);
  return {
    heading: words.say('sheet.safety'),
    pain: [
      words.say('sheet.pain-scale'),
      words.say('sheet.pain-carry-on', { pain: rangeText(words, carryOn), settles }),
      words.say('sheet.pain-ease-off', { pain: rangeText(words, easeOff) }),
      words.say('sheet.pain-stop', { pain: rangeText(words, stop) }),
      words.say('sheet.effort-scale'),
    ],
    stopIf: {
      lead: words.say('sheet.stop-if'),
      reasons: [...practice.stopIf, ...plan.stopIfAlso],
    },
    getInTouchIf:
      practice.getInTouch.length === 0
        ? null
        : { lead: words.say('sheet.get-in-touch-if'), reasons: practice.getInTouch },
    contact: words.say(
      practice.getInTouch.length === 0 ? 'sheet.reach-us' : 'sheet.get-in-touch-at',
      { contact: practice.contact },
    ),
    emergencyIf: {
      lead: words.say('sheet.emergency-if', { emergency: practice.emergency }),
      reasons: practice.emergencyIf,
    },
    dial: {
      contact: dialled(practice.contact),
      emergency: /^\d{2,6}$/.test(practice.emergency) ? `tel:${practice.emergency}` : null,
    },
  };
}

/** Enough digits for a telephone number; a house or an hour has fewer. */
const LEAST_DIGITS = 5;

/** The one telephone number in a text, to be dialled as it is written; null where there is none, or a choice. */
function dialled(text: string): string | null {
  const runs = [...text.matchAll(/\+?\d(?:[ -]?\d)*/g)].map(([run]) => run.replace(/[ -]/g, ''));
  const numbers = runs.filter((run) => run.replace('+', '').length >= LEAST_DIGITS);
  return numbers.length === 1 ? `tel:${numbers[0]}` : null;
}
