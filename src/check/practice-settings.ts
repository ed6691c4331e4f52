// Are the numbers that practice.yaml sets for the checks ones that they have, in the unit that they
// have? A slip there would leave the default in force, or a threshold a thousand times off, unseen.
import { type Finding, finding } from '../finding/finding.ts';
import type { Practice } from '../model/practice.ts';
import type { Setting } from './plan-check.ts';
import { SETTINGS } from './plan-checks.ts';
import { listed } from './wording.ts';

const THOUSAND = 1000;
/** A share below 1 % or a time below 1 s was written without its unit; a count of 1,000 with one. */
const BELONGS: Readonly<Record<Setting['kind'], (n: number) => boolean>> = {
  share: (n) => n >= THOUSAND,
  time: (n) => n >= THOUSAND,
  count: (n) => n < THOUSAND,
};

/** An error for each setting that its check does not have, or whose number cannot be meant. */
export function settingFindings(practice: Practice): Finding[] {
  const found: Finding[] = [];
  for (const [check, { numbers, writtenAs, place: checkPlace }] of practice.checks) {
    const settings = SETTINGS.get(check) ?? {};
    const names = Object.keys(settings).map((name) => `"${name}"`);
    for (const [name, n] of numbers) {
      const setting = Object.hasOwn(settings, name) ? settings[name] : undefined;
      const written = writtenAs.get(name);
      const place = written?.place ?? checkPlace;
      if (!setting) {
        const has = names.length === 0 ? 'it has none' : `it has ${listed(names, 'and')}`;
        const message = `"${check}" has no setting "${name}"; ${has}.`;
        found.push(finding({ check: 'unknown-key', severity: 'error', message, place }));
      } else if ((written && written.kind !== setting.kind) || !BELONGS[setting.kind](n)) {
        const message = `"${name}" of "${check}" is written like "${name}: ${example(setting)}".`;
        found.push(finding({ check: 'not-understood', severity: 'error', message, place }));
      }
    }
  }
  return found;
}

function example({ kind, byDefault }: Setting): string {
  if (kind === 'count') return String(byDefault);
  return `${byDefault / THOUSAND} ${kind === 'share' ? '%' : 's'}`;
}
