// How the exercises change after the week shown, week by week: steps within a level, levels and
// exercises that come later (numbered on), easy weeks, endings. One line a change; the wording of a
// whole section is the growth view's.
import type { WeekNumbers } from '../../compute/numbers.ts';
import { numberText, sentencesText } from '../words/amounts.ts';
import { levelCondition, startCondition, stepCondition } from '../words/condition-words.ts';
import { dayText } from '../words/date-words.ts';
import type { Words } from '../words/words.ts';
import { sessionName } from './days-view.ts';
import type { Slot } from './exercise-slots.ts';
import {
  dated,
  day,
  type GrowthInput,
  type GrowthSteps,
  isNewSession,
  said,
  say,
  slotOf,
  slotsIn,
  type Track,
  track,
  type Walk,
  whenText,
} from './growth-walk.ts';
import { lastDayOf } from './shown-week.ts';

export function growthSteps(input: GrowthInput): GrowthSteps {
  const walk: Walk = {
    ...input,
    tracks: new Map(),
    lines: new Map(),
    laterByKey: new Map(),
    carriers: new Map(),
    numberAt: new Map(),
    lastNumber: input.numbering.last,
  };
  for (const slot of slotsIn(walk, input.shown.week)) {
    const number = input.numbering.bySlot.get(slot.id);
    if (number !== undefined) track(walk, slot, number, input.shown.week);
  }
  for (const week of input.later) stepInto(walk, week);
  return {
    lines: walk.lines,
    later: [...walk.laterByKey.values()],
    carriers: walk.carriers,
    numberIn: (slotId, week) => walk.numberAt.get(`${slotId} ${week}`),
  };
}

function stepInto(walk: Walk, week: WeekNumbers): void {
  const slots = slotsIn(walk, week.week);
  const here = new Set(slots.map(({ id }) => id));
  const sessions = new Set(week.sessions.map(({ session }) => session.id));
  let after: { session: string; number: number } | null = null;
  for (const slot of slots) {
    const session = slot.session.session.id;
    const before: number | null = after !== null && after.session === session ? after.number : null;
    const known = walk.tracks.get(slot.id);
    if (!known) begin(walk, week, slot, before);
    else if (known.last.item.level.id !== slot.item.level.id) changeLevel(walk, week, slot, known);
    else if (week.isEasy && known.isThere) ease(walk, week, slot, known);
    else step(walk, week, slot, known);
    const number = walk.tracks.get(slot.id)?.number;
    if (number === undefined) continue;
    walk.numberAt.set(`${slot.id} ${week.week}`, number);
    after = { session, number };
  }
  for (const [id, known] of walk.tracks) {
    if (!known.isThere || here.has(id)) continue;
    known.isThere = false;
    // A session that ends is told once, with the days.
    if (!sessions.has(known.last.session.session.id)) continue;
    say(
      walk,
      known.number,
      week.week,
      known.last,
      dated(walk, week.week, null, walk.words.say('growth.leave-out')),
    );
  }
}

function begin(walk: Walk, week: WeekNumbers, slot: Slot, after: number | null): void {
  const twin = slotsIn(walk, week.week).find(
    (one) =>
      one.identity === slot.identity &&
      one.session !== slot.session &&
      isCurrent(walk, one, week.week),
  );
  const number = twin && walk.tracks.get(twin.id)?.number;
  if (number !== undefined && slot.item.item.startWhen === null) {
    share(walk, week, slot, { number, after });
    return;
  }
  addLater(walk, week, slot, {
    condition: startCondition(walk.words, slot.item),
    replaces: null,
    after,
  });
}

/** Whether the number that is known of a slot is its number in that week too. */
function isCurrent(walk: Walk, slot: Slot, week: number): boolean {
  const known = walk.tracks.get(slot.id);
  if (walk.numberAt.has(`${slot.id} ${week}`)) return true;
  return known?.isThere === true && known.last.item.level.id === slot.item.level.id;
}

/** A slot that begins with an exercise which another session does already, under its number. */
function share(
  walk: Walk,
  week: WeekNumbers,
  slot: Slot,
  { number, after }: { number: number; after: number | null },
): void {
  const { words, numbers } = walk;
  track(walk, slot, number, week.week);
  const later = [...walk.laterByKey.values()].find(
    (one) => one.number === number && one.week === week.week,
  );
  if (later) {
    later.places.push({ slot, after, isNewSession: isNewSession(walk, slot, week.week) });
  } else if (!isNewSession(walk, slot, week.week)) {
    const session = sessionName(words, numbers.plan, slot.session);
    const text = words.say('growth.also-in', { session });
    const line = dated(walk, week.week, startCondition(words, slot.item), text);
    // It names its session itself, so it is a line of all that the number stands for.
    for (const one of walk.carriers.get(number) ?? []) say(walk, number, week.week, one, line);
  }
}

function changeLevel(walk: Walk, week: WeekNumbers, slot: Slot, known: Track): void {
  const { words } = walk;
  const condition = levelCondition(words, known.last.item, slot.item, known.number);
  const left = known.number;
  const earlier = known.numberByLevel.get(slot.item.level.id);
  if (earlier === undefined) {
    const number = addLater(walk, week, slot, { condition, replaces: left, after: null });
    const pointer = words.say('growth.goes-on', { number: numberText(words, number) });
    say(walk, left, week.week, slot, dated(walk, week.week, null, pointer));
    return;
  }
  const text = words.say('growth.back-to', {
    number: numberText(words, left),
    text: said(words, slot, null),
  });
  say(walk, earlier, week.week, slot, dated(walk, week.week, condition, text));
  track(walk, slot, earlier, week.week);
}

interface Beginning {
  readonly condition: string | null;
  readonly replaces: number | null;
  readonly after: number | null;
}

function addLater(walk: Walk, week: WeekNumbers, slot: Slot, beginning: Beginning): number {
  const { condition, replaces, after } = beginning;
  const sameSession = replaces === null ? slot.session.session.id : '';
  const startWhen = slot.item.item.startWhen === null ? '' : sameSession;
  const key = JSON.stringify([slot.identity, week.week, condition, replaces, startWhen]);
  const place = { slot, after, isNewSession: isNewSession(walk, slot, week.week) };
  const known = walk.laterByKey.get(key);
  if (known && !known.places.some((one) => one.slot.session === slot.session)) {
    known.places.push(place);
    track(walk, slot, known.number, week.week);
    return known.number;
  }
  walk.lastNumber += 1;
  const number = walk.lastNumber;
  const fresh = { number, week: week.week, slot, condition, replaces, places: [place] };
  walk.laterByKey.set(known ? `${key} ${number}` : key, fresh);
  track(walk, slot, number, week.week);
  return number;
}

function step(walk: Walk, week: WeekNumbers, slot: Slot, known: Track): void {
  const { words } = walk;
  const { last } = known;
  const isBack = !known.isThere;
  const isSame = slot.dose === last.dose && slot.note === last.note;
  // A session that comes back as it was is told with the days.
  if (isBack && !(isSame && isNewSession(walk, slot, week.week))) {
    const when = whenText(walk, week.week, startCondition(words, slot.item));
    const text = words.say('growth.again', { text: said(words, slot, null) });
    say(walk, known.number, week.week, slot, sentencesText(words, [when, text]));
  } else if (!isSame) {
    const condition = stepCondition(words, last.item, slot.item);
    // Right after an easy week "the same" could mean that week's.
    const text = said(words, slot, known.easyUntil === week.week - 1 ? null : last);
    say(walk, known.number, week.week, slot, dated(walk, week.week, condition, text));
  }
  known.isThere = true;
  known.last = slot;
}

/** Whether what comes after an easy week is what was before it, unless a condition is met. */
function isUpToHer(words: Words, before: Slot, next: Slot): boolean {
  if (before.dose === next.dose && before.note === next.note) return true;
  const isSameLevel = before.item.level.id === next.item.level.id;
  const condition = isSameLevel
    ? stepCondition(words, before.item, next.item)
    : levelCondition(words, before.item, next.item, 0);
  return condition !== null;
}

/** An easy week: one line for it and those that follow it alike, then on as before. */
function ease(walk: Walk, week: WeekNumbers, slot: Slot, known: Track): void {
  if (week.week <= known.easyUntil || slot.dose === known.last.dose) return;
  const { words, numbers } = walk;
  const after = walk.later.filter((one) => one.week > week.week);
  let until = week.week;
  for (const next of after) {
    if (!next.isEasy || slotOf(walk, next.week, slot.id)?.identity !== slot.identity) break;
    until = next.week;
  }
  known.easyUntil = until;
  const next = slotOf(walk, until + 1, slot.id);
  const text = words.say('growth.easy', {
    from: day(walk, week.week),
    to: dayText(words, lastDayOf(numbers.plan, until), walk.year),
    text: said(words, slot, known.last),
  });
  const sentences = [
    text,
    next && isUpToHer(words, known.last, next) ? words.say('growth.easy-then-as-before') : '',
  ];
  say(walk, known.number, week.week, slot, sentencesText(words, sentences));
}
