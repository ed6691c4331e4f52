// Whether the editor's schemas in a practice folder still offer the ids that the folder has.
import { type Compiled, PRACTICE_FILE } from '../build.ts';
import { type Finding, finding } from '../finding/finding.ts';
import { fileOnly } from '../finding/place.ts';
import { editorSchemas, type OwnIds, ownIds } from '../load/editor-schemas.ts';
import type { Folder } from '../load/folder.ts';

/** The ids of a folder whose exercises have all been loaded. */
export function idsOf({ practice, library }: Compiled): OwnIds {
  return ownIds(
    practice,
    library.loaded().flatMap(({ exercise }) => exercise ?? []),
  );
}

/** A note where they are old; nothing where the folder has none, or errors in its settings or exercises. */
export function oldEditorIds(folder: Folder, compiled: Compiled): readonly Finding[] {
  // A file with mistakes lacks ids that it will have once it is mended.
  const files = [PRACTICE_FILE, ...compiled.library.loaded().map(({ file }) => file)];
  const isUnsound = compiled.findings.some(
    ({ severity, place }) => severity === 'error' && files.includes(place.source.file),
  );
  if (isUnsound) return [];
  for (const [path, text] of editorSchemas(idsOf(compiled))) {
    const entry = folder.entry(path);
    if (entry?.kind !== 'file') continue;
    if (new TextDecoder().decode(folder.read(path)) === text) continue;
    const message =
      'The editor offers ids that this folder had earlier; run "carryover init --refresh".';
    return [finding({ check: 'editor-ids-old', severity: 'note', message, place: fileOnly(path) })];
  }
  return [];
}
