// What a build would do to handouts/, as a value: pages to write, outdated pages to move. Nothing
// is touched here.
import { type Compiled, type CompiledPlan, errorsOf } from '../build.ts';
import type { Finding } from '../finding/finding.ts';
import { HANDOUTS, INDEX_FILE, OUTDATED } from './pages.ts';

/** Whether a plan gets a sheet, and if not, why. */
export type Fate =
  | { readonly kind: 'sheet' }
  /** Its old pages are moved. */
  | { readonly kind: 'no-sheet'; readonly because: readonly Finding[] }
  /** Closed: its old pages are left as they are. */
  | { readonly kind: 'closed' };

export interface FateSetting {
  readonly compiled: Compiled;
  /** Whether plans were named: then the others are not looked at, and a closed one counts. */
  readonly isNamed: boolean;
  /** Warnings that are not accepted count as errors. */
  readonly isStrict: boolean;
}

export function fateOf(plan: CompiledPlan, { compiled, isNamed, isStrict }: FateSetting): Fate {
  if (plan.plan?.closed && !isNamed) return { kind: 'closed' };
  const because = [...errorsOf(plan, [...compiled.findings, ...plan.findings])];
  if (isStrict)
    because.push(
      ...plan.findings.filter(({ severity, accepted }) => severity === 'warning' && !accepted),
    );
  return because.length > 0 || !plan.numbers ? { kind: 'no-sheet', because } : { kind: 'sheet' };
}

/** The plan that a page in handouts/ belongs to, by its name; null for the index and what is no page. */
export function planOfPage(path: string): string | null {
  if (path === INDEX_FILE || !path.startsWith(`${HANDOUTS}/`) || path.startsWith(`${OUTDATED}/`))
    return null;
  const match = /^([A-Za-z0-9][A-Za-z0-9-]{0,62})(?:\.clinic\.html|\.html|\.md|\.pdf)$/.exec(
    path.slice(HANDOUTS.length + 1),
  );
  return match?.[1] ?? null;
}

/** The pages that must not be handed out any more: of plans without a sheet, and, in a build of everything, of plans that are gone. */
export function pagesToMove(
  existing: readonly string[],
  plans: readonly CompiledPlan[],
  setting: FateSetting,
): readonly string[] {
  const fates = new Map(plans.map((plan) => [plan.id, fateOf(plan, setting).kind]));
  return existing.filter((path) => {
    const plan = planOfPage(path);
    if (plan === null) return false;
    const fate = fates.get(plan);
    return fate === undefined ? !setting.isNamed : fate === 'no-sheet';
  });
}
