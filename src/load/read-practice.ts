// practice.yaml and people.yaml to records.
import {
  type CheckName,
  isCheckName,
  SETTLED_CHECKS,
  type Severity,
  severityOf,
} from '../finding/checks.ts';
import { type Place, startOf } from '../finding/place.ts';
import { ID } from '../model/ids.ts';
import type {
  CheckSetting,
  Concern,
  NumberKind,
  PainRanges,
  Person,
  Practice,
  SettlesBy,
  Timing,
  Vocabulary,
  VocabularyKind,
} from '../model/practice.ts';
import { CONCERNS, DEMANDS, KIT, MUSCLES, POSITIONS } from '../model/vocabulary.ts';
import { exactly, type Interval } from '../units/interval.ts';
import { parsePainRange, parsePercent } from '../units/measure.ts';
import { parseThousandths, THOUSANDTHS } from '../units/number.ts';
import {
  type At,
  hasKey,
  isGroup,
  pairs,
  placeOf,
  quantity,
  rootOf,
  tellAt,
  textOf,
  textsUnder,
  textUnder,
  under,
  wordUnder,
} from './at.ts';
import { wordHints } from './did-you-mean.ts';
import { knownWords } from './known-words.ts';
import { printedTexts } from './printed-texts.ts';
import { gapMs, oneLength } from './read-dose.ts';
import { readInLanguage } from './read-in-language.ts';
import type { ConcernFile, PeopleFile, PracticeFile, WordsFile } from './written.ts';
import type { YamlFile } from './yaml-file.ts';

const DEFAULT_TIMING: Timing = {
  move: exactly(3_000),
  pause: exactly(2_000),
  rest: exactly(30_000),
  changeSides: exactly(5_000),
  betweenItems: exactly(30_000),
  breath: 5_000,
};
const DEFAULT_PAIN: PainRanges = { carryOn: [0, 3], easeOff: [4, 5], stop: [6, 10] };
const DEFAULT_SETTLES_BY: SettlesBy = 'next-morning';

/** The practice as its file says; what could not be read has been told of, and stands at its default. */
export function readPractice(file: YamlFile): Practice {
  const at = rootOf<PracticeFile>(file);
  return {
    source: file.source,
    name: textUnder(at, 'practice') ?? '',
    contact: textUnder(at, 'contact') ?? '',
    emergency: textUnder(at, 'emergency') ?? '',
    emergencyIf: textsUnder(at, 'emergency_if'),
    getInTouch: textsUnder(at, 'get_in_touch'),
    stopIf: textsUnder(at, 'stop_if'),
    language: textUnder(at, 'language') ?? 'en',
    inLanguage: readInLanguage(at),
    paper: wordUnder(at, 'paper') ?? 'a4',
    timing: readTiming(under(at, 'timing')),
    pain: readPain(under(at, 'pain'), DEFAULT_PAIN),
    settlesBy: wordUnder(under(at, 'pain'), 'settles_by') ?? DEFAULT_SETTLES_BY,
    bands: textsUnder(at, 'bands'),
    practitioners: textMap(under(at, 'practitioners')),
    vocabulary: readVocabulary(under(at, 'words')),
    plainWords: textsUnder(under(at, 'words'), 'plain'),
    printed: at ? printedTexts(at, 'practice') : [],
    checks: readCheckSettings(under(at, 'checks')),
  };
}

function readTiming(at: At<NonNullable<PracticeFile['timing']>> | undefined): Timing {
  const breath = quantity(under(at, 'breath'), oneLength) ?? DEFAULT_TIMING.breath;
  const gap = (
    key: 'move' | 'pause' | 'rest' | 'change_sides' | 'between_items',
    otherwise: Interval,
  ) => quantity(under(at, key), gapMs(breath)) ?? otherwise;
  return {
    move: gap('move', DEFAULT_TIMING.move),
    pause: gap('pause', DEFAULT_TIMING.pause),
    rest: gap('rest', DEFAULT_TIMING.rest),
    changeSides: gap('change_sides', DEFAULT_TIMING.changeSides),
    betweenItems: gap('between_items', DEFAULT_TIMING.betweenItems),
    breath,
  };
}

interface PainKeys {
  readonly carry_on?: unknown;
  readonly ease_off?: unknown;
  readonly stop?: unknown;
}

/** Three ranges that cover 0 to 10 without gap or overlap; ranges that are not named stay. */
export function readPain(at: At<PainKeys> | undefined, otherwise: PainRanges): PainRanges {
  if (!at) return otherwise;
  const ranges: PainRanges = {
    carryOn: quantity(under(at, 'carry_on'), parsePainRange) ?? otherwise.carryOn,
    easeOff: quantity(under(at, 'ease_off'), parsePainRange) ?? otherwise.easeOff,
    stop: quantity(under(at, 'stop'), parsePainRange) ?? otherwise.stop,
  };
  const isMisread = at.file.findings.some(
    ({ place }) => place.start >= placeOf(at).start && place.end <= placeOf(at).end,
  );
  const { carryOn, easeOff, stop } = ranges;
  const covers =
    carryOn[0] === 0 &&
    easeOff[0] === carryOn[1] + 1 &&
    stop[0] === easeOff[1] + 1 &&
    stop[1] === 10;
  if (!covers && !isMisread) {
    tellAt(
      at,
      'pain-ranges',
      `The ranges ${carryOn.join('-')}, ${easeOff.join('-')} and ${stop.join('-')} leave a gap or overlap between 0 and 10; each begins one after the last of the one before, for example "carry_on: 0-3", "ease_off: 4-5", "stop: 6-10".`,
    );
    return otherwise;
  }
  return ranges;
}

function textMap(at: At<unknown> | undefined): ReadonlyMap<string, string> {
  return new Map(at ? pairs(at).map((one) => [one.key, textOf(one)]) : []);
}

function readVocabulary(at: At<WordsFile> | undefined): Vocabulary {
  const own = (kind: Exclude<VocabularyKind, 'concerns'>) => {
    const found = under(at, kind) as At<unknown> | undefined;
    for (const one of found ? pairs(found) : []) {
      if (!ID.test(one.key))
        tellAt(
          one,
          'bad-id',
          `"${one.key}" cannot be an id; an id has small letters, digits and hyphens.`,
          one.keyPlace ? { place: one.keyPlace } : {},
        );
    }
    return textMap(found);
  };
  const words = {
    positions: own('positions'),
    kit: own('kit'),
    muscles: own('muscles'),
    demands: own('demands'),
  };
  const positions = new Set([...POSITIONS, ...words.positions.keys()]);
  const demands = new Set([...DEMANDS, ...words.demands.keys()]);
  const concernsAt = under(at, 'concerns') as At<Record<string, ConcernFile>> | undefined;
  const concerns = new Map<string, Concern>(Object.entries(CONCERNS));
  const concernWords = new Map<string, string>();
  for (const one of concernsAt ? pairs<ConcernFile>(concernsAt) : []) {
    concernWords.set(one.key, textUnder(one, 'name') ?? one.key);
    const shipped = concerns.get(one.key);
    concerns.set(one.key, {
      limits: knownWords(under(one, 'limits'), 'unknown-demand', demands) ?? shipped?.limits ?? [],
      positions:
        knownWords(under(one, 'positions'), 'unknown-position', positions) ??
        shipped?.positions ??
        [],
    });
  }
  return {
    positions,
    kit: new Set([...KIT, ...words.kit.keys()]),
    muscles: new Set([...Object.keys(MUSCLES), ...words.muscles.keys()]),
    demands,
    concerns,
    words: { ...words, concerns: concernWords },
  };
}

function readCheckSettings(at: At<unknown> | undefined): ReadonlyMap<CheckName, CheckSetting> {
  const settings = new Map<CheckName, CheckSetting>();
  for (const one of at ? pairs(at) : []) {
    const place = one.keyPlace ?? placeOf(one);
    if (!isCheckName(one.key)) {
      tellAt(one, 'unknown-check', `There is no check called "${one.key}".`, {
        place,
        hints: wordHints(one.key, SETTLED_CHECKS),
      });
      continue;
    }
    if (isGroup(one)) {
      settings.set(one.key, { severity: null, ...readNumbers(one), place });
      continue;
    }
    const severity = textOf(one) as Severity | 'off';
    if (severityOf(one.key) === 'error' && severity !== 'error') {
      tellAt(one, 'unknown-word', `"${one.key}" is an error, which cannot be turned off or down.`);
      continue;
    }
    settings.set(one.key, { severity, numbers: new Map(), writtenAs: new Map(), place });
  }
  return settings;
}

function readNumbers(at: At<unknown>): Pick<CheckSetting, 'numbers' | 'writtenAs'> {
  const numbers = new Map<string, number>();
  const writtenAs = new Map<string, { kind: NumberKind; place: Place }>();
  for (const one of pairs(at)) {
    const text = textOf(one);
    const kind: NumberKind = /%\s*$/.test(text) ? 'share' : /[a-z]/.test(text) ? 'time' : 'count';
    const value =
      kind === 'share'
        ? quantity(one, (percent) => parsePercent(percent, 0, 1_000))
        : kind === 'time'
          ? quantity(one, (length) => oneLength(length))
          : quantity(one, (number) => {
              const reading = parseThousandths(number, 1_000_000);
              return reading.ok ? { ok: true, value: reading.value / THOUSANDTHS } : reading;
            });
    if (value === undefined) continue;
    numbers.set(one.key, value);
    writtenAs.set(one.key, { kind, place: one.keyPlace ?? placeOf(one) });
  }
  return { numbers, writtenAs };
}

const LOOKED_UP = ['practitioners', 'bands', 'words'] as const;
export type LookedUp = (typeof LOOKED_UP)[number];

/** Which lists of practice.yaml could not be read as meant, so that a word may be missing from them only for that. */
export function unreadLists(file: YamlFile | null): ReadonlySet<LookedUp> {
  const at = file?.isWhole ? rootOf<PracticeFile>(file) : undefined;
  if (!file || !at) return new Set(LOOKED_UP);
  const isMeant = (key: LookedUp) =>
    file.findings.some(
      ({ check, hints }) => check === 'unknown-key' && hints.includes(`Did you mean "${key}"?`),
    );
  const isHurt = (key: LookedUp) => {
    const found = under(at, key);
    if (!found) return hasKey(at, key) || isMeant(key);
    const { start, end } = placeOf(found);
    return file.findings.some(({ place }) => place.start >= start && place.start <= end);
  };
  return new Set(LOOKED_UP.filter(isHurt));
}

/** The people behind the codes. */
export function readPeople(file: YamlFile): ReadonlyMap<string, Person> {
  const at = rootOf<PeopleFile>(file);
  const people = new Map<string, Person>();
  for (const one of at ? pairs<{ name?: string; language?: string }>(at) : []) {
    people.set(one.key, {
      code: one.key,
      name: textUnder(one, 'name'),
      language: textUnder(one, 'language'),
      place: placeOf(under(one, 'language') ?? one),
    });
  }
  return people;
}

/** A practice that stands in where the file could not be read at all; nothing is made from it. */
export function standInPractice(file: string): Practice {
  const source = startOf({ file, text: '' }).source;
  return readPractice({
    kind: 'practice',
    source,
    root: null,
    flagged: new Set(),
    findings: [],
    isWhole: false,
  });
}
