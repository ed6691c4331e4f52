// The lists whose entries are groups of keys: the key that an entry begins with, and what it is called.

export interface EntryKey {
  readonly key: string;
  readonly noun: string;
}

const BY_LIST: Readonly<Record<string, EntryKey>> = {
  visits: { key: 'date', noun: 'visit' },
  sessions: { key: 'session', noun: 'session' },
  parts: { key: 'part', noun: 'part' },
  items: { key: 'do', noun: 'exercise' },
  levels: { key: 'level', noun: 'level' },
  from_week: { key: 'week', noun: 'entry' },
  accept: { key: 'check', noun: 'entry' },
};

export function entryKeyOf(list: string): EntryKey | undefined {
  return Object.hasOwn(BY_LIST, list) ? BY_LIST[list] : undefined;
}

/** What an entry is called that begins with a key; undefined for a key that begins none. */
export function nounOfEntry(key: string): string | undefined {
  return Object.values(BY_LIST).find((one) => one.key === key)?.noun;
}
