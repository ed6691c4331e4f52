// The schemas as a practice's editor uses them: the shipped ones, with the practice's own ids offered
// as values. An id that is not offered is still taken: `check` says whether it is known.

import { CHECK_NAMES, SETTLED_CHECKS } from '../finding/checks.ts';
import { compareText } from '../finding/finding.ts';
import type { Exercise } from '../model/exercise.ts';
import type { Practice } from '../model/practice.ts';
import { readShipped, shippedFiles } from './shipped-files.ts';
import type { IdsOf } from './wanted-form.ts';

/** Where the schemas lie in a practice folder. */
export const EDITOR_SCHEMAS = '.schemas';

/** What the `ids` annotation of a schema names, each with the ids that a practice has. */
export type OwnIds = Readonly<Record<string, readonly string[]>>;

export function ownIds(
  { vocabulary, bands, practitioners }: Practice,
  exercises: readonly Exercise[],
): OwnIds {
  const sorted = (ids: Iterable<string>) => [...new Set(ids)].sort(compareText);
  return {
    exercises: sorted(exercises.map(({ id }) => id)),
    levels: sorted(exercises.flatMap(({ levels }) => levels.map(({ id }) => id))),
    practitioners: sorted(practitioners.keys()),
    positions: sorted(vocabulary.positions),
    kit: sorted(vocabulary.kit),
    'kit-and-bands': sorted([...vocabulary.kit, ...bands]),
    bands: [...bands],
    muscles: sorted(vocabulary.muscles),
    demands: sorted(vocabulary.demands),
    concerns: sorted(vocabulary.concerns.keys()),
    checks: sorted(CHECK_NAMES),
  };
}

/** The ids that a message may list; put together when the first one does. */
export function idsFor(practice: Practice, exercises: readonly string[] = []): IdsOf {
  let ids: OwnIds | undefined;
  return (list) => {
    ids ??= { ...ownIds(practice, []), exercises, checks: SETTLED_CHECKS };
    return ids[list] ?? [];
  };
}

/** Path in the practice folder to text; without ids, the schemas as they ship. */
export function editorSchemas(ids: OwnIds | null): ReadonlyMap<string, string> {
  const names = shippedFiles('schemas').filter((name) => name !== 'output.schema.json');
  return new Map(
    names.map((name) => {
      const schema: unknown = JSON.parse(readShipped(`schemas/${name}`));
      return [
        `${EDITOR_SCHEMAS}/${name}`,
        `${JSON.stringify(ids ? offering(schema, ids) : schema, null, 2)}\n`,
      ];
    }),
  );
}

function offering(schema: unknown, ids: OwnIds): unknown {
  if (Array.isArray(schema)) return schema.map((one) => offering(one, ids));
  if (typeof schema !== 'object' || schema === null) return schema;
  const inner = Object.fromEntries(
    Object.entries(schema).map(([key, value]) => [key, offering(value, ids)]),
  );
  const { ids: kind, description, ...rest } = inner;
  const offered = typeof kind === 'string' ? ids[kind] : undefined;
  if (!offered || offered.length === 0) return inner;
  return {
    ...(description === undefined ? {} : { description }),
    anyOf: [{ enum: offered }, rest],
  };
}
