// The checks of the folder as a whole, as against one plan: whether anything in it looks
// personal, or was left to be replaced. A plan's own accepts settle what is found in its file.
import type { Finding } from '../finding/finding.ts';
import type { Plan } from '../model/plan.ts';
import type { Practice } from '../model/practice.ts';
import { settled } from './accept.ts';
import { type FolderUnderCheck, looksPersonal } from './looks-personal.ts';
import { placeholderLeft } from './placeholder-left.ts';
import { asSet, settingOf } from './plan-checks.ts';

/** What is found in the folder, with the practice's settings and what its plans accept. */
export function checkFolder(
  practice: Practice,
  folder: Omit<FolderUnderCheck, 'setting'>,
  plans: readonly Plan[],
): Finding[] {
  const setting = settingOf(practice);
  const found = [
    ...looksPersonal({ ...folder, setting: (name) => setting('looks-personal', name) }),
    ...placeholderLeft(folder.sources),
  ];
  const planByFile = new Map(plans.map((plan) => [plan.source.file, plan]));
  return asSet(found, practice).flatMap((one) => {
    const plan = planByFile.get(one.place.source.file);
    return plan ? settled([{ ...one, scope: [plan] }], plan) : [one];
  });
}
