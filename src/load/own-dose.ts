// A dose as it is spoken, 3 x 10 or 2 sets of 30 s, in the keys that say the same.
import { parseDuration } from '../units/duration.ts';
import { parseCounts } from '../units/number.ts';

const TIMES = /^(\d+)\s*(?:x|×|\*|sets?\s*(?:of|x|×|,)?)\s*(\S.*)$/i;

/** The forms of a dose that was written as one value; none where it cannot be told what was meant. */
export function doseForms(text: string): readonly string[] {
  const times = TIMES.exec(text);
  const sets = times ? `sets: ${times[1]}, ` : '';
  const each = (times?.[2] ?? text).trim();
  const reps = each.replace(/\s*(?:reps?|repetitions?|times|x)$/i, '');
  if (parseCounts(reps).ok) return [`{${sets}reps: ${reps}}`];
  // A length is held or kept going, and only the practitioner knows which.
  return parseDuration(each).ok ? [`{${sets}hold: ${each}}`, `{${sets}time: ${each}}`] : [];
}

interface Meant {
  readonly says: string;
  readonly write: string;
}

/** What sets or reps say that is more than one count: sets as well, or as many as can be. */
export function moreThanACount(text: string, isInBraces: () => boolean): Meant | undefined {
  const times = TIMES.exec(text);
  const reps = times?.[2]?.replace(/\s*reps?$/i, '') ?? '';
  if (times && parseCounts(times[1] as string).ok && parseCounts(reps).ok) {
    const [sets, each] = [`sets: ${times[1]}`, `reps: ${reps}`];
    return {
      says: `says "${text}", but takes one number; how many sets is said under "sets"`,
      write: isInBraces() ? `"${sets}, ${each}"` : `"${sets}" and below it "${each}"`,
    };
  }
  if (
    !/^(?:amrap|max(?:imum|imal)?|(?:to |until )?(?:failure|tired|fatigue)|as many.*)$/i.test(text)
  )
    return undefined;
  return {
    says: `says "${text}"; as many as possible is a range with "until: tired" beside it`,
    write: isInBraces()
      ? 'for example "reps: 8-12, until: tired"'
      : 'for example "reps: 8-12" and below it "until: tired"',
  };
}
