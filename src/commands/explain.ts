// `carryover explain`: why a check exists, its source, how to settle it.
import {
  CHECK_NAMES,
  CHECKS,
  FOLDER_CHECKS,
  isCheckName,
  type Severity,
} from '../finding/checks.ts';
import { nearest } from '../load/did-you-mean.ts';
import { prose } from '../render/terminal/terminal-text.ts';
import { type CommandResult, type Session, UsageError } from './session.ts';

export function explain({ paint, width }: Session, check: string | undefined): CommandResult {
  const nothing = { status: 0, findings: [], log: '' } as const;
  if (check === undefined) {
    const checks = CHECK_NAMES.map((name) => ({ check: name, severity: CHECKS[name].severity }));
    return { ...nothing, data: { checks }, out: `${allChecks({ paint, width })}\n` };
  }
  if (!isCheckName(check)) {
    const near = nearest(check, CHECK_NAMES);
    const hint =
      near === undefined ? '"carryover explain" lists them all' : `did you mean "${near}"?`;
    throw new UsageError(`there is no check "${check}"; ${hint}`);
  }
  const { severity, meaning, source, remedy } = CHECKS[check];
  const out = [
    `${paint.bold(check)}  ${paint[severity](severity)}`,
    '',
    prose(meaning, width),
    '',
    prose(`${paint.bold('To settle it:')} ${remedy}`, width),
    ...(severity === 'error'
      ? []
      : FOLDER_CHECKS.has(check)
        ? ['Or turn it off in practice.yaml:', `  checks: {${check}: off}`]
        : [
            'Or accept it where it stands, with the reason:',
            `  accept: [{check: ${check}, why: "…"}]`,
          ]),
    '',
    prose(`${paint.bold('Source:')} ${source}`, width),
  ].join('\n');
  return { ...nothing, data: { check, severity, meaning, source, remedy }, out: `${out}\n` };
}

const GROUPS: readonly (readonly [Severity, string])[] = [
  ['error', 'Errors: a plan with one gets no sheet'],
  ['warning', 'Warnings: mend them, or accept them with the reason'],
  ['note', 'Notes: good to know'],
];

/** Every check with what it means, in a line or two. */
function allChecks({ paint, width }: Pick<Session, 'paint' | 'width'>): string {
  const groups = GROUPS.map(([severity, heading]) => {
    const names = CHECK_NAMES.filter((name) => CHECKS[name].severity === severity);
    const lines = names.flatMap((name) => [
      paint[severity](name),
      ...prose(firstSentence(CHECKS[name].meaning), width - 4)
        .split('\n')
        .map((line) => `    ${line}`),
    ]);
    return [paint.bold(heading), ...lines].join('\n');
  });
  return [...groups, 'More on each: carryover explain <check>'].join('\n\n');
}

function firstSentence(text: string): string {
  return /^.*?[.](?=\s|$)/.exec(text)?.[0] ?? text;
}
