// Does something in the folder look like a person: an e-mail address, a telephone number, a date of
// birth, or a full name of people.yaml? It looks at the text of the folder's YAML and CSV, comments
// too, since all of it goes wherever the folder goes. Which files those are is the caller's.
import { severityOf } from '../finding/checks.ts';
import { type Finding, finding } from '../finding/finding.ts';
import type { SourceText } from '../finding/place.ts';
import type { Day } from '../units/day.ts';
import { foldedName, nameStretches } from './folded-text.ts';
import { COMMON_PRACTICE, type Settings } from './plan-check.ts';
import { withoutPracticeContacts } from './practice-contacts.ts';
import { emailStretches, type Stretch, telephoneStretches } from './ways-to-reach.ts';
import { datesIn, withoutDates, yearsEarlier } from './written-dates.ts';

export const LOOKS_PERSONAL_SETTINGS = {
  digits: { kind: 'count', byDefault: 7, source: COMMON_PRACTICE },
  years: { kind: 'count', byDefault: 15, source: COMMON_PRACTICE },
} as const satisfies Settings;

export type PersonalSetting = keyof typeof LOOKS_PERSONAL_SETTINGS;

export interface FolderUnderCheck {
  readonly sources: readonly SourceText[];
  /** The full names of people.yaml. */
  readonly names: readonly string[];
  /** The day from which years are counted back; null leaves dates alone. */
  readonly referenceDay: Day | null;
  /** A number of the practice's own; the defaults where it is left out. */
  readonly setting?: (name: PersonalSetting) => number;
}

/** The one file in which names belong. */
const PEOPLE = 'people.yaml';

/** One finding at each place; what was found is not repeated in its sentence. */
export function looksPersonal(folder: FolderUnderCheck): readonly Finding[] {
  const names = folder.names.map(foldedName).filter((name) => name !== null);
  const sources = folder.sources.filter(({ file }) => file !== PEOPLE);
  return sources.flatMap((source) => {
    const text = withoutPracticeContacts(source);
    const found: readonly (readonly [string, readonly Stretch[]])[] = [
      ['This looks like an e-mail address', emailStretches(text)],
      ['This looks like a telephone number', telephones(source, text, folder)],
      [oldDateSentence(folder), oldDates(text, folder)],
      ['This is a full name that people.yaml holds', nameStretches(text, names)],
    ];
    return found.flatMap(([what, stretches]) => stretches.map((at) => personal(source, at, what)));
  });
}

function telephones(
  { file }: SourceText,
  text: string,
  folder: FolderUnderCheck,
): readonly Stretch[] {
  // A code may be all digits, and a file's own code is no telephone number.
  const code = file.slice(file.lastIndexOf('/') + 1).replace(/\.[^.]+$/, '');
  return telephoneStretches(withoutDates(text), settingOf(folder, 'digits')).filter(
    ({ start, end }) => text.slice(start, end) !== code,
  );
}

function oldDates(text: string, folder: FolderUnderCheck): readonly Stretch[] {
  if (folder.referenceDay === null) return [];
  const limit = yearsEarlier(folder.referenceDay, settingOf(folder, 'years'));
  // A date that reads two ways, 03/04/1961, counts by the later of the two.
  return datesIn(text).filter(({ days }) => days.length > 0 && days.every((day) => day < limit));
}

function oldDateSentence(folder: FolderUnderCheck): string {
  return `This date lies more than ${settingOf(folder, 'years')} years back and could be a date of birth`;
}

function settingOf({ setting }: FolderUnderCheck, name: PersonalSetting): number {
  return setting ? setting(name) : LOOKS_PERSONAL_SETTINGS[name].byDefault;
}

function personal(source: SourceText, { start, end }: Stretch, what: string): Finding {
  return finding({
    check: 'looks-personal',
    severity: severityOf('looks-personal'),
    message: `${what}; who a person is belongs in people.yaml alone.`,
    place: { source, start, end },
  });
}
