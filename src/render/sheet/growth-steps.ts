// How the exercises change after the week shown, week by week: steps within a level, levels and
// exercises that come later (numbered on), endings. One line a change; the wording of a whole section
// is the growth view's, what an easy week eases growth-easy's.
import type { WeekNumbers } from '../../compute/numbers.ts';
import { numberText, sentencesText } from '../words/amounts.ts';
import {
  type Condition,
  levelCondition,
  startCondition,
  stepCondition,
  WENT_WELL,
} from '../words/condition-words.ts';
import { sessionName } from './days-view.ts';
import type { Slot } from './exercise-slots.ts';
import { ease } from './growth-easy.ts';
import {
  type GrowthInput,
  type GrowthSteps,
  isNewSession,
  lineLead,
  said,
  say,
  slotsIn,
  type Track,
  track,
  type Walk,
} from './growth-walk.ts';

const NO_MORE = 'growth.no-more';
const IN_ANY_CASE = 'growth.in-any-case';

export function growthSteps(input: GrowthInput): GrowthSteps {
  const walk: Walk = {
    ...input,
    tracks: new Map(),
    lines: new Map(),
    easy: new Map(),
    laterByKey: new Map(),
    carriers: new Map(),
    numberAt: new Map(),
    orderAt: new Map(),
    lastNumber: input.numbering.last,
  };
  for (const slot of slotsIn(walk, input.shown.week)) {
    const number = input.numbering.bySlot.get(slot.id);
    if (number !== undefined) track(walk, slot, number, input.shown);
  }
  for (const week of input.later) stepInto(walk, week);
  return {
    lines: walk.lines,
    easy: walk.easy,
    later: [...walk.laterByKey.values()],
    carriers: walk.carriers,
    numberIn: (slotId, week) => walk.numberAt.get(`${slotId} ${week}`),
    orderIn: (session, week) => walk.orderAt.get(`${session} ${week}`) ?? [],
  };
}

function stepInto(walk: Walk, week: WeekNumbers): void {
  const slots = slotsIn(walk, week.week);
  const here = new Set(slots.map(({ id }) => id));
  for (const slot of slots) {
    const known = walk.tracks.get(slot.id);
    if (!known) begin(walk, week, slot);
    else if (known.now.last.item.level.id !== slot.item.level.id) {
      changeLevel(walk, week, slot, known);
    } else if (!week.isEasy || !known.isThere) step(walk, week, slot, known);
    const now = walk.tracks.get(slot.id);
    if (!now) continue;
    walk.numberAt.set(`${slot.id} ${week.week}`, now.now.number);
    if (week.isEasy) ease(walk, week, slot, now);
  }
  for (const { session } of week.sessions) {
    const own = slots.filter((slot) => slot.session.session === session);
    const order = own.map(({ id }) => numbersOf(walk.tracks.get(id)));
    walk.orderAt.set(`${session.id} ${week.week}`, order);
  }
  endings(walk, week, here);
}

/** The numbers that she may be at in a slot. */
function numbersOf(known: Track | undefined): readonly number[] {
  return known ? [...known.behind, known.now].map(({ number }) => number) : [];
}

function endings(walk: Walk, week: WeekNumbers, here: ReadonlySet<string>): void {
  const sessions = new Set(week.sessions.map(({ session }) => session.id));
  const lead = lineLead(walk, week.week, WENT_WELL, IN_ANY_CASE);
  const text = walk.words.say('growth.leave-out');
  for (const [id, known] of walk.tracks) {
    if (!known.isThere || here.has(id)) continue;
    known.isThere = false;
    // A session that ends is told once, with the days.
    if (!sessions.has(known.now.last.session.session.id)) continue;
    for (const { number, last } of [...known.behind, known.now]) {
      say(walk.lines, number, week.week, last, { lead, text });
    }
  }
}

function begin(walk: Walk, week: WeekNumbers, slot: Slot): void {
  const twin = slotsIn(walk, week.week).find(
    (one) =>
      one.identity === slot.identity &&
      one.session !== slot.session &&
      isCurrent(walk, one, week.week),
  );
  const number = twin && walk.tracks.get(twin.id)?.now.number;
  if (number !== undefined && slot.item.item.startWhen === null) share(walk, week, slot, number);
  else addLater(walk, week, slot, startCondition(walk.words, slot.item), null);
}

/** Whether the number that is known of a slot is its number in that week too. */
function isCurrent(walk: Walk, slot: Slot, week: number): boolean {
  const known = walk.tracks.get(slot.id);
  if (walk.numberAt.has(`${slot.id} ${week}`)) return true;
  return known?.isThere === true && known.now.last.item.level.id === slot.item.level.id;
}

/** A slot that begins with an exercise which another session does already, under its number. */
function share(walk: Walk, week: WeekNumbers, slot: Slot, number: number): void {
  const { words, numbers } = walk;
  const isNew = isNewSession(walk, slot, week.week);
  const carriers = [...(walk.carriers.get(number) ?? [])];
  track(walk, slot, number, week);
  const later = [...walk.laterByKey.values()].find(
    (one) => one.number === number && one.week === week.week,
  );
  if (later) later.places.push({ slot, isNewSession: isNew });
  else if (!isNew) {
    const session = sessionName(words, numbers.plan, slot.session);
    const text = words.say('growth.also-in', { session });
    const lead = lineLead(walk, week.week, WENT_WELL, IN_ANY_CASE);
    // It names its session itself, so it is a line of all that the number stands for.
    for (const one of [slot, ...carriers]) {
      say(walk.lines, number, week.week, one, { lead, text, isPlaced: true });
    }
  }
}

function changeLevel(walk: Walk, week: WeekNumbers, slot: Slot, known: Track): void {
  const { words } = walk;
  const { now, behind, numberByLevel, isThere } = known;
  const condition = levelCondition(words, now.last.item, slot.item, now.number);
  // What was left out for a while stands in nobody's place when it comes again.
  const stays = condition.kind === 'always' || !isThere ? [] : [...behind, now];
  const earlier = numberByLevel.get(slot.item.level.id);
  if (earlier !== undefined) {
    const text = said(walk, slot, null);
    const lead = lineLead(walk, week.week, condition, IN_ANY_CASE);
    say(walk.lines, earlier, week.week, slot, {
      lead,
      text: isThere
        ? words.say('growth.back-to', { number: numberText(words, now.number), text })
        : words.say('growth.again', { text }),
      isPlaced: !isThere,
    });
    const others = stays.filter((stage) => stage.number !== earlier);
    track(walk, slot, earlier, week, others);
    return;
  }
  const replaces = isThere ? now.number : null;
  const number = addLater(walk, week, slot, condition, replaces, stays);
  if (!isThere) return;
  const key = stays.length === 0 ? 'growth.gives-way' : 'growth.goes-on';
  const text = words.say(key, { number: numberText(words, number) });
  const lead = lineLead(walk, week.week, WENT_WELL, IN_ANY_CASE);
  for (const stage of stays.length === 0 ? [...behind, now] : [now]) {
    say(walk.lines, stage.number, week.week, slot, { lead, text });
  }
}

function addLater(
  walk: Walk,
  week: WeekNumbers,
  slot: Slot,
  condition: Condition,
  replaces: number | null,
  behind: Track['behind'] = [],
): number {
  const sameSession = replaces === null ? slot.session.session.id : '';
  const startWhen = slot.item.item.startWhen === null ? '' : sameSession;
  const key = JSON.stringify([slot.identity, week.week, condition, replaces, startWhen]);
  const place = { slot, isNewSession: isNewSession(walk, slot, week.week) };
  const known = walk.laterByKey.get(key);
  if (known && !known.places.some((one) => one.slot.session === slot.session)) {
    known.places.push(place);
    track(walk, slot, known.number, week, behind);
    return known.number;
  }
  walk.lastNumber += 1;
  const number = walk.lastNumber;
  const fresh = { number, week: week.week, slot, condition, replaces, places: [place] };
  walk.laterByKey.set(known ? `${key} ${number}` : key, fresh);
  track(walk, slot, number, week, behind);
  return number;
}

function step(walk: Walk, week: WeekNumbers, slot: Slot, known: Track): void {
  const { words } = walk;
  const { last, number } = known.now;
  const isBack = !known.isThere;
  const isSameDose = slot.dose === last.dose;
  const isSame = isSameDose && slot.note === last.note;
  // A session that comes back as it was is told with the days.
  if (isBack && !(isSame && isNewSession(walk, slot, week.week))) {
    const lead = lineLead(walk, week.week, startCondition(words, slot.item), NO_MORE);
    const isPlaced = !isNewSession(walk, slot, week.week);
    for (const stage of [...known.behind, { number, last: slot }]) {
      const text = words.say('growth.again', { text: said(walk, stage.last, null) });
      say(walk.lines, stage.number, week.week, slot, { lead, text, isPlaced });
    }
  } else if (!isSame) {
    // A note alone is neither more nor less.
    const condition = isSameDose ? WENT_WELL : stepCondition(last.item, slot.item);
    const lead = lineLead(walk, week.week, condition, NO_MORE);
    const text = sentencesText(words, [said(walk, slot, last)]);
    say(walk.lines, number, week.week, slot, { lead, text });
  }
  known.isThere = true;
  known.now.last = slot;
  known.now.isFromEasyWeek = week.isEasy;
}
