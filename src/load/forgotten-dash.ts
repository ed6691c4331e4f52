// A dash that was forgotten before an entry: its keys went into the entry above, and stand there twice.
// The tree is mended as it was meant, so that nothing else is told of what follows from the slip.
import { type Document, isMap, isScalar, type Pair, visit, YAMLMap, type YAMLSeq } from 'yaml';
import { nounOfEntry } from './entry-keys.ts';
import type { Tell } from './yaml-flow.ts';

/** Parts such entries, tells of each, and gives the starts of the keys that stand twice only for that. */
export function partEntries(
  document: Document,
  twice: ReadonlySet<number>,
  tell: Tell,
): ReadonlySet<number> {
  const settled = new Set<number>();
  visit(document, {
    Seq: (_, list) => {
      if (list.flow) return;
      list.items = list.items.flatMap((entry): unknown[] =>
        isMap(entry) && !entry.flow ? [...parted(entry, twice)] : [entry],
      );
      for (const entry of list.items) if (isMap(entry)) settle(entry, twice, settled);
      tellParted(list, twice, tell);
    },
  });
  return settled;
}

function startOf({ key }: Pair): number {
  return isScalar(key) ? (key.range?.[0] ?? -1) : -1;
}

/** An entry, parted before each further key of the name that it begins with. */
function parted(entry: YAMLMap, twice: ReadonlySet<number>): readonly YAMLMap[] {
  const [first] = entry.items;
  const lead = first && isScalar(first.key) ? String(first.key.value) : '';
  if (nounOfEntry(lead) === undefined) return [entry];
  const isNew = ({ key, value }: Pair) =>
    isScalar(key) &&
    String(key.value) === lead &&
    isScalar(value) &&
    twice.has(startOf({ key } as Pair));
  const groups: Pair[][] = [[]];
  for (const pair of entry.items as Pair[]) {
    if (isNew(pair)) groups.push([]);
    groups.at(-1)?.push(pair);
  }
  if (groups.length === 1) return [entry];
  const [, end = 0, nodeEnd = 0] = entry.range ?? [];
  return groups.map((items, i) => {
    const start = i === 0 ? (entry.range?.[0] ?? 0) : startOf(items[0] as Pair);
    const next = groups[i + 1]?.[0];
    const one = new YAMLMap();
    one.items = items;
    one.range = next ? [start, startOf(next), startOf(next)] : [start, end, nodeEnd];
    return one;
  });
}

function settle(entry: YAMLMap, twice: ReadonlySet<number>, settled: Set<number>): void {
  const seen = new Set<string>();
  for (const pair of entry.items as Pair[]) {
    const name = isScalar(pair.key) ? String(pair.key.value) : '';
    if (twice.has(startOf(pair)) && !seen.has(name)) settled.add(startOf(pair));
    seen.add(name);
  }
}

function tellParted(list: YAMLSeq, twice: ReadonlySet<number>, tell: Tell): void {
  for (const entry of list.items) {
    const first = isMap(entry) ? (entry.items[0] as Pair | undefined) : undefined;
    if (!first || !isScalar(first.key) || !isScalar(first.value) || !twice.has(startOf(first)))
      continue;
    const key = String(first.key.value);
    const written = `${key}: ${String(first.value.source ?? first.value.value)}`;
    tell(
      'duplicate-key',
      `"${key}" stands twice here. A new ${nounOfEntry(key)} begins with a dash: "- ${written}"; if none is meant, keep one of the two.`,
      startOf(first),
      startOf(first) + key.length,
    );
  }
}
