// All the numbers of a plan: every week's sessions, what each side does, weekly sets by muscle,
// and the change from week to week. Total on any linked plan; what the merged doses show to be
// wrong comes back as findings.

import type { Finding, Outcome } from '../finding/finding.ts';
import type { Item, Part, PartSettings, Plan, Session, SessionSettings } from '../model/plan.ts';
import type { Practice } from '../model/practice.ts';
import { exactly, type Interval, plus, scaled, times } from '../units/interval.ts';
import { easedCount } from './easy-week.ts';
import { itemWeek, itemWeekFindings, type WeekOfItem } from './item-week.ts';
import { itemWeeks, type ResolvedWeek } from './item-weeks.ts';
import { muscleSets } from './muscle-sets.ts';
import type { PartWeek, PlanNumbers, SessionWeek, WeekNumbers } from './numbers.ts';
import { isWithin, perWeek } from './per-week.ts';
import { volumeSum, volumeTimes } from './volume.ts';
import { changeFrom, sessionVolume } from './week-volume.ts';

interface Computing {
  readonly plan: Plan;
  readonly practice: Practice;
  readonly resolved: ReadonlyMap<Item, readonly ResolvedWeek[]>;
  readonly easy: ReadonlySet<number>;
  readonly findings: Finding[];
  readonly told: Set<string>;
}

/** The numbers of a plan, week 1 to the last. */
export function planNumbers(plan: Plan, practice: Practice): Outcome<PlanNumbers> {
  const findings: Finding[] = [];
  const resolved = new Map<Item, readonly ResolvedWeek[]>();
  for (const session of plan.sessions) {
    for (const part of session.parts) {
      for (const item of part.items) {
        const outcome = itemWeeks(item, plan, practice, [plan, session, part, item]);
        resolved.set(item, outcome.weeks);
        findings.push(...outcome.findings);
      }
    }
  }
  const easy = new Set(plan.easyWeeks?.weeks ?? []);
  const computing: Computing = { plan, practice, resolved, easy, findings, told: new Set() };
  const weeks: WeekNumbers[] = [];
  for (let week = 1; week <= plan.weeks; week += 1) weeks.push(weekNumbers(computing, week, weeks));
  return { value: { plan, weeks }, findings };
}

function weekNumbers(
  computing: Computing,
  week: number,
  before: readonly WeekNumbers[],
): WeekNumbers {
  const { plan } = computing;
  const sessions = plan.sessions.flatMap((session) => {
    const one = isWithin(session.windows, week) ? sessionWeek(computing, session, week) : null;
    return one ? [one] : [];
  });
  const side = (which: 'left' | 'right' | 'middle') =>
    volumeSum(
      sessions.map((session) => volumeTimes(sessionVolume(session)[which], session.perWeek)),
    );
  const numbers = {
    week,
    isEasy: computing.easy.has(week),
    sessions,
    ms: plus(...sessions.map((session) => times(session.ms, session.perWeek))),
    left: side('left'),
    right: side('right'),
    middle: side('middle'),
    muscles: muscleSets(sessions),
  };
  return { ...numbers, change: changeFrom(before, numbers) };
}

function sessionWeek(computing: Computing, session: Session, week: number): SessionWeek | null {
  const now = inForce<SessionSettings>(session, session.fromWeek, week);
  const { plan, practice } = computing;
  const schedule = now.schedule ?? session.schedule;
  const timesADay = now.timesADay ?? exactly(1);
  const betweenItemsMs = now.betweenItemsMs ?? plan.betweenItemsMs ?? practice.timing.betweenItems;
  const parts = session.parts.flatMap((part) => {
    const one = isWithin(part.windows, week)
      ? partWeek(computing, session, part, week, betweenItemsMs)
      : null;
    return one ? [one] : [];
  });
  if (parts.length === 0) return null;
  return {
    session,
    name: now.name ?? null,
    schedule,
    timesADay,
    perWeek: perWeek(schedule, timesADay, week),
    betweenItemsMs,
    parts,
    ms: plus(...parts.map((part) => part.ms), scaled(betweenItemsMs, parts.length - 1)),
  };
}

function partWeek(
  computing: Computing,
  session: Session,
  part: Part,
  week: number,
  sessionGapMs: Interval,
): PartWeek | null {
  const { plan, practice, easy, resolved } = computing;
  const now = inForce<PartSettings>(part, part.fromWeek, week);
  const isEasy = easy.has(week);
  const easing = isEasy ? (plan.easyWeeks?.sets ?? null) : null;
  const written = now.rounds ?? null;
  const rounds = written !== null && easing !== null ? easedCount(written, easing) : written;
  const betweenItemsMs = now.betweenItemsMs ?? sessionGapMs;
  const restBetweenRoundsMs = now.restBetweenRoundsMs ?? practice.timing.rest;
  const items = part.items.flatMap((item) => {
    const one = resolved.get(item)?.[week - 1];
    if (!one || !isWithin(item.windows, week)) return [];
    const input: WeekOfItem = {
      plan,
      practice,
      item,
      resolved: one,
      week,
      isEasy,
      rounds,
      isWarmUp: part.kind === 'warm-up',
    };
    tellOnce(computing, itemWeekFindings(input, [plan, session, part, item]));
    return [itemWeek(input)];
  });
  if (items.length === 0) return null;
  const gaps = scaled(betweenItemsMs, items.length - 1);
  const itemsMs = plus(...items.map((item) => item.ms));
  const ms =
    rounds === null
      ? plus(itemsMs, gaps)
      : plus(itemsMs, scaled(gaps, rounds), scaled(restBetweenRoundsMs, rounds - 1));
  return { part, name: now.name ?? null, rounds, restBetweenRoundsMs, betweenItemsMs, items, ms };
}

/** The first week tells of a cause; later weeks would only say it again. */
function tellOnce({ findings, told }: Computing, found: readonly Finding[]): void {
  for (const one of found) {
    const cause = `${one.check} ${one.place.source.file} ${one.place.start}`;
    if (told.has(cause)) continue;
    told.add(cause);
    findings.push(one);
  }
}

/** Settings with every entry up to a week laid over them; keys that an entry does not name stay. */
function inForce<T extends object>(
  written: T,
  entries: readonly (T & { readonly week: number })[],
  week: number,
): T {
  const now = { ...written };
  for (const entry of [...entries].sort((a, b) => a.week - b.week)) {
    if (entry.week > week) break;
    for (const [key, value] of Object.entries(entry)) {
      if (value !== undefined && key !== 'place') Object.assign(now, { [key]: value });
    }
  }
  return now;
}
