// The checks of the folder as a whole, as against one plan: whether anything in it looks
// personal, was left to be replaced, or was copied from one person to another; and those of the
// library, an exercise at a time. A plan's own accepts settle what is found in its file.
import type { Finding } from '../finding/finding.ts';
import type { Exercise } from '../model/exercise.ts';
import type { Plan } from '../model/plan.ts';
import type { Practice } from '../model/practice.ts';
import { settled } from './accept.ts';
import { limbUnlikely } from './limb-unlikely.ts';
import { looksCopied } from './looks-copied.ts';
import { type FolderUnderCheck, looksPersonal } from './looks-personal.ts';
import { placeholderLeft } from './placeholder-left.ts';
import { asSet, settingOf } from './plan-checks.ts';
import { readingGradeOfExercises } from './reading-grade.ts';
import { tradeWordsIn } from './trade-word.ts';

export interface WholeFolder extends Omit<FolderUnderCheck, 'setting'> {
  readonly exercises: readonly Exercise[];
  readonly plans: readonly Plan[];
  /** Those to hold against each other: none where single plans are named. */
  readonly plansToCompare: readonly Plan[];
  /** What ships only to be replaced. */
  readonly startingTexts: readonly string[];
}

/** What is found in the folder, with the practice's settings and what its plans accept. */
export function checkFolder(practice: Practice, folder: WholeFolder): Finding[] {
  const setting = settingOf(practice);
  const found = [
    ...looksPersonal({ ...folder, setting: (name) => setting('looks-personal', name) }),
    ...placeholderLeft(folder.sources, folder.startingTexts),
    ...limbUnlikely(folder.exercises),
    ...looksCopied(folder.plansToCompare),
    ...readingGradeOfExercises(folder.exercises, practice, setting('reading-grade', 'above')),
    ...[practice, ...folder.exercises].flatMap(({ printed }) => tradeWordsIn(printed, practice)),
  ];
  const planByFile = new Map(folder.plans.map((plan) => [plan.source.file, plan]));
  return asSet(found, practice).flatMap((one) => {
    const plan = planByFile.get(one.place.source.file);
    return plan ? settled([{ ...one, scope: [plan] }], plan) : [one];
  });
}
