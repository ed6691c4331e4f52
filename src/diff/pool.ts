// Pairing two lists by keys, from the surest key to the vaguest; the same both ways.

export interface Pair<T> {
  readonly before: T;
  readonly after: T;
}

export interface Matched<T> {
  readonly pairs: readonly Pair<T>[];
  readonly removed: readonly T[];
  readonly added: readonly T[];
}

/** What has no counterpart yet, and what has found one. */
export interface Pool<T> {
  /** Pairs, in order, what has the same key, where there are as many on either side; an empty key never pairs. */
  readonly pairUp: (keyBefore: (one: T) => string, keyAfter?: (one: T) => string) => void;
  /** Takes out what is settled otherwise. */
  readonly take: (settled: readonly T[]) => void;
  readonly matched: () => Matched<T>;
}

export function poolOf<T>(before: readonly T[], after: readonly T[]): Pool<T> {
  let removed = [...before];
  let added = [...after];
  const pairs: Pair<T>[] = [];
  const take = (settled: readonly T[]) => {
    removed = removed.filter((one) => !settled.includes(one));
    added = added.filter((one) => !settled.includes(one));
  };
  return {
    take,
    matched: () => ({ pairs: [...pairs], removed, added }),
    pairUp: (keyBefore, keyAfter = keyBefore) => {
      const old = grouped(removed, keyBefore);
      const fresh = grouped(added, keyAfter);
      for (const [name, ones] of old) {
        const others = fresh.get(name) ?? [];
        if (name === '' || ones.length !== others.length) continue;
        for (const [at, one] of ones.entries()) pairs.push({ before: one, after: others[at] as T });
        take([...ones, ...others]);
      }
    },
  };
}

/** In order of first coming. */
export function grouped<T>(
  all: readonly T[],
  keyOf: (one: T) => string,
): ReadonlyMap<string, readonly T[]> {
  const groups = new Map<string, T[]>();
  for (const one of all) {
    const key = keyOf(one);
    groups.set(key, [...(groups.get(key) ?? []), one]);
  }
  return groups;
}
