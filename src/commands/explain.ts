// `carryover explain`: why a check exists, its source, how to settle it.
import { CHECK_NAMES, CHECKS, isCheckName } from '../finding/checks.ts';
import { nearest } from '../load/did-you-mean.ts';
import { prose } from '../render/terminal/terminal-text.ts';
import { type CommandResult, type Session, UsageError } from './session.ts';

export function explain({ paint, width }: Session, check: string | undefined): CommandResult {
  const nothing = { status: 0, findings: [], log: '' } as const;
  if (check === undefined) {
    const checks = CHECK_NAMES.map((name) => ({ check: name, severity: CHECKS[name].severity }));
    const width = Math.max(...CHECK_NAMES.map((name) => name.length));
    const lines = checks.map((one) => `${one.check.padEnd(width)}  ${one.severity}`);
    return { ...nothing, data: { checks }, out: `${lines.join('\n')}\n` };
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
      : [
          'Or accept it where it stands, with the reason:',
          `  accept: [{check: ${check}, why: "…"}]`,
        ]),
    '',
    prose(`${paint.bold('Source:')} ${source}`, width),
  ].join('\n');
  return { ...nothing, data: { check, severity, meaning, source, remedy }, out: `${out}\n` };
}
