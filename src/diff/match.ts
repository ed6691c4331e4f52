// Which session, part and item of one version of a plan is which of another. The rules are the same
// both ways, so that the way back pairs the same. What differs within a pair is told elsewhere.
import type { Item, Part, Plan, Session } from '../model/plan.ts';
import { sideMeant } from '../units/side.ts';
import { grouped, type Matched, type Pair, type Pool, poolOf } from './pool.ts';

/** An item where it stands. */
export interface ItemPlace {
  readonly session: Session;
  readonly part: Part;
  readonly item: Item;
  /** The only side that is done; null where both are, or there are none. */
  readonly only: 'left' | 'right' | null;
}

/** One item for both sides became two, a side each, or the other way round. */
export interface Split {
  readonly whole: ItemPlace;
  readonly left: ItemPlace;
  readonly right: ItemPlace;
  readonly isJoined: boolean;
}

export interface MatchedPlan {
  readonly sessions: Matched<Session>;
  readonly parts: Matched<{ readonly session: Session; readonly part: Part }>;
  readonly items: Matched<ItemPlace>;
  readonly splits: readonly Split[];
}

export function matchPlans(
  before: Plan,
  after: Plan,
  renamed: ReadonlyMap<string, string>,
): MatchedPlan {
  // Both versions are spoken of in the later one's ids.
  const idNow = (id: string) => renamed.get(id) ?? id;
  const sessions = matchSessions(before, after, idNow);
  const sessionKey = pairKeys(sessions.pairs);
  const parts = matchParts(before, after, sessionKey);
  const partKey = pairKeys(
    parts.pairs.map(({ before: one, after: two }) => ({ before: one.part, after: two.part })),
  );
  const { items, splits } = matchItems(placesOf(before), placesOf(after), {
    idNow,
    sessionKey,
    partKey,
  });
  return { sessions, parts, items, splits };
}

export function placesOf(plan: Plan): readonly ItemPlace[] {
  return plan.sessions.flatMap((session) =>
    session.parts.flatMap((part) =>
      part.items.map((item) => ({ session, part, item, only: onlyOf(item, plan) })),
    ),
  );
}

function onlyOf({ only }: Item, { affected }: Plan): ItemPlace['only'] {
  return (only && sideMeant(only, affected)) ?? null;
}

/** One name for both of a pair; what has no counterpart is its own. */
type KeyOf = (thing: Session | Part) => string;

function pairKeys(pairs: readonly Pair<Session | Part>[]): KeyOf {
  const keys = new Map<Session | Part, string>();
  for (const [at, { before, after }] of pairs.entries()) {
    keys.set(before, `pair ${at}`);
    keys.set(after, `pair ${at}`);
  }
  return (thing) => keys.get(thing) ?? '';
}

/** By id; then, where the same exercises are in it, under another id. */
function matchSessions(before: Plan, after: Plan, idNow: (id: string) => string): Matched<Session> {
  const pool = poolOf(before.sessions, after.sessions);
  pool.pairUp(({ id }) => id);
  const contents = (of: (id: string) => string) => (session: Session) =>
    session.parts
      .flatMap(({ items }) => items.map(({ exercise }) => of(exercise.id)))
      .sort()
      .join(' ');
  pool.pairUp(
    contents(idNow),
    contents((id) => id),
  );
  return pool.matched();
}

/** Within paired sessions, the first of a kind with the first, the second with the second. */
function matchParts(before: Plan, after: Plan, sessionKey: KeyOf) {
  const partsOf = (plan: Plan) =>
    plan.sessions.flatMap((session) =>
      session.parts.map((part, at) => ({
        session,
        part,
        nth: session.parts.slice(0, at).filter(({ kind }) => kind === part.kind).length,
      })),
    );
  const pool = poolOf(partsOf(before), partsOf(after));
  pool.pairUp(({ session, part, nth }) => key(sessionKey(session), part.kind, nth));
  return pool.matched();
}

interface ItemSetting {
  readonly idNow: (id: string) => string;
  readonly sessionKey: KeyOf;
  readonly partKey: KeyOf;
}

function matchItems(
  before: readonly ItemPlace[],
  after: readonly ItemPlace[],
  setting: ItemSetting,
) {
  const { idNow, sessionKey, partKey } = setting;
  const pool = poolOf(before, after);
  const exercise = (of: (id: string) => string) => (one: ItemPlace) => of(one.item.exercise.id);
  const [then, now] = [exercise(idNow), exercise((id) => id)];
  const asThen = ({ item }: ItemPlace) => (item.id === item.exercise.id ? idNow(item.id) : item.id);
  const asNow = ({ item }: ItemPlace) => item.id;
  const both = (
    parts: (one: ItemPlace, exerciseOf: typeof then, asOf: typeof asThen) => readonly unknown[],
  ) =>
    pool.pairUp(
      (one) => keyOf(parts(one, then, asThen)),
      (one) => keyOf(parts(one, now, asNow)),
    );

  const splits = splitsOf(pool, sessionKey, then, now);
  both((one, does, as) => [sessionKey(one.session), as(one), does(one)]);
  both((one, does, as) => [as(one), does(one)]);
  both((one, does) => [sessionKey(one.session), partKey(one.part), does(one)]);
  both((one, does) => [sessionKey(one.session), does(one)]);
  both((one, does) => [does(one)]);
  // An id of the item's own says that it is the same place on the sheet, whatever is done there.
  both((one, _, as) => (isNamed(one) ? [sessionKey(one.session), as(one)] : []));
  pairGaps(pool, before, after, partKey);
  return { items: pool.matched(), splits };
}

function isNamed({ item }: ItemPlace): boolean {
  return item.id !== item.exercise.id;
}

/** What stands in the same gap between the same neighbours was swapped for one another. */
function pairGaps(
  pool: Pool<ItemPlace>,
  before: readonly ItemPlace[],
  after: readonly ItemPlace[],
  partKey: KeyOf,
): void {
  const pairName = new Map<ItemPlace, number>();
  for (const [at, pair] of pool.matched().pairs.entries()) {
    pairName.set(pair.before, at);
    pairName.set(pair.after, at);
  }
  const gapOf = (all: readonly ItemPlace[]) => (one: ItemPlace) => {
    const inPart = all.filter(({ part }) => part === one.part);
    const at = inPart.indexOf(one);
    const last = inPart.slice(0, at).findLast((other) => pairName.has(other));
    const next = inPart.slice(at).find((other) => pairName.has(other));
    const name = (other: ItemPlace | undefined) => (other ? pairName.get(other) : 'end');
    return partKey(one.part) === '' ? '' : key(partKey(one.part), name(last), name(next));
  };
  pool.pairUp(gapOf(before), gapOf(after));
}

/** The only item of an exercise in a session, done on both sides one at a time, against two of a side each. */
function splitsOf(
  pool: Pool<ItemPlace>,
  sessionKey: KeyOf,
  then: (one: ItemPlace) => string,
  now: (one: ItemPlace) => string,
): readonly Split[] {
  const splits: Split[] = [];
  const { removed, added } = pool.matched();
  const where = (exercise: typeof then) => (one: ItemPlace) =>
    key(sessionKey(one.session), exercise(one));
  const [old, fresh] = [grouped(removed, where(then)), grouped(added, where(now))];
  for (const [name, one] of old) {
    const two = fresh.get(name) ?? [];
    const isJoined = one.length === 2;
    const [[whole, extra], halves] = isJoined ? [two, one] : [one, two];
    const left = halves.find(({ only }) => only === 'left');
    const right = halves.find(({ only }) => only === 'right');
    if (!whole || extra || halves.length !== 2 || !left || !right) continue;
    if (whole.item.level.sides !== 'each' || whole.only) continue;
    pool.take([...one, ...two]);
    splits.push({ whole, left, right, isJoined });
  }
  return splits;
}

function key(...parts: readonly unknown[]): string {
  return keyOf(parts);
}

/** An unpaired session or part, or no parts at all, gives no key. */
function keyOf(parts: readonly unknown[]): string {
  return parts.length === 0 || parts.includes('') ? '' : JSON.stringify(parts);
}
