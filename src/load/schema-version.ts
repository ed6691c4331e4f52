// The edition of a practice folder, read before anything else is made of it.
import { rootOf, textUnder } from './at.ts';
import type { PracticeFile } from './written.ts';
import type { YamlFile } from './yaml-file.ts';

const EDITION = 1;

/** Why this program cannot use the folder: it is of a newer edition. Null where it can. */
export function schemaVersion(file: YamlFile): string | null {
  const unflagged = { ...file, flagged: new Set<unknown>() };
  const written = textUnder(rootOf<PracticeFile>(unflagged), 'schema');
  if (written === null || !/^[1-9]\d*$/.test(written) || Number(written) <= EDITION) return null;
  return `practice.yaml says "schema: ${written}", which a newer carryover wrote; this one reads "schema: ${EDITION}". Use the newer one`;
}
