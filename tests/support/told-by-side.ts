// A sheet's text read back as what it tells each side of the body to do. "10 times with the left leg,
// then 8 times with the right leg" tells the left "10 times" and the right "8 times"; "the same" is
// what the side before was told. Made for the English pack's sentences.

export type Side = 'left' | 'right';

export interface Told {
  readonly left: readonly string[];
  readonly right: readonly string[];
  /** What is told without a side, or of both at once. */
  readonly all: readonly string[];
}

interface Telling {
  readonly left: string[];
  readonly right: string[];
  readonly all: string[];
  /** The side that stands alone before its sentences: "Left leg first. Do 3 rounds: …". */
  current: Side | null;
  /** What a side was told last: what "the same" stands for. */
  last: string[];
}

const LIMBS = 'leg|arm|foot in front|foot|hand|knee|shoulder|side';
/** "with the left leg", "left", "to the left"; not "they felt right". */
const PHRASE = new RegExp(
  `(?:(?:with|on|to) )?(?:the )?\\b(?<!felt )(left|right)\\b(?: (?:${LIMBS}))?`,
  'g',
);

/** What a text tells each side; each list in order of its words. */
export function toldBySide(text: string): Told {
  const telling: Telling = { left: [], right: [], all: [], current: null, last: [] };
  const sentences = text.toLowerCase().replace(/\.$/, '').split(/\. /);
  for (const sentence of sentences) tell(telling, sentence);
  const { left, right, all } = telling;
  return { left: left.sort(), right: right.sort(), all: all.sort() };
}

export function namesASide(text: string): boolean {
  return sidesOf(text.toLowerCase()).length > 0;
}

function sidesOf(text: string): Side[] {
  return [...text.matchAll(PHRASE)].map(([, side]) => side as Side);
}

const unnamed = (text: string) => text.replace(PHRASE, '◊');

function tell(telling: Telling, sentence: string): void {
  const { lead, rest } = parted(sentence, telling);
  const [side, ...more] = sidesOf(rest);
  if (side === undefined) {
    const isGoingOn = telling.current !== null && /^(do |rest |\d+ rounds)/.test(rest);
    if (isGoingOn && telling.current) {
      telling[telling.current].push(rest);
      telling.last.push(rest);
    } else telling.all.push(`${lead}${rest}`);
    return;
  }
  // "Left leg first: 3 rounds of 8 times, with …", "Then the right leg."
  const alone = /^(?:then )?◊(?: first)?(?:: (.*))?$/.exec(unnamed(rest));
  if (alone && more.length === 0) {
    telling.current = alone[1] === undefined ? side : null;
    telling.last = alone[1] === undefined ? [] : [alone[1]];
    telling[side].push(...telling.last);
    return;
  }
  telling.current = null;
  for (const piece of piecesOf(rest)) tellPiece(telling, lead, piece);
}

/** Words before a colon that are for all: a date, "in each round"; "round 2" belongs to what follows. */
function parted(sentence: string, telling: Telling): { lead: string; rest: string } {
  let rest = sentence;
  let lead = '';
  for (;;) {
    const [whole, words = ''] = /^([^:]*): /.exec(rest) ?? [];
    const isForAll = whole !== undefined && !/^do |^go slowly/.test(words);
    if (!isForAll) return { lead, rest };
    const sides = sidesOf(words);
    if (sides.length === 1) return { lead, rest };
    if (sides.length === 2) inOrder(sides, sentence);
    if (/^round \d+$/.test(words)) lead = whole;
    else telling.all.push(unnamed(words));
    rest = rest.slice(whole.length);
  }
}

function piecesOf(rest: string): string[] {
  return rest
    .split(/; |, then |, (?=[\d.]+(?: to [\d.]+| or \d+)? out of)|, and, (?=if you )/)
    .flatMap((piece) => {
      const both = /^do (.*) and (.*?)(, .*)?$/.exec(piece);
      const [, one = '', other = '', tail = ''] = both ?? [];
      const isOneEach = [one, other].every((part) => sidesOf(part).length === 1);
      return both && isOneEach ? [`do ${one}`, `do ${other}`, tail] : [piece];
    });
}

function tellPiece(telling: Telling, lead: string, piece: string): void {
  const sides = sidesOf(piece);
  const [side, other] = sides;
  if (side === undefined) {
    if (piece !== '') telling.all.push(`${lead}${piece}`);
  } else if (other !== undefined) {
    inOrder(sides, piece);
    telling.all.push(`${lead}${unnamed(piece)}`);
  } else {
    const words = unnamed(piece).replace(/^then /, '');
    if (words !== 'the same ◊') telling.last = [words];
    else if (telling.last.length === 0) throw new Error(`the same as nothing: ${piece}`);
    telling[side].push(...telling.last.map((one) => `${lead}${one}`));
  }
}

function inOrder(sides: readonly Side[], text: string): void {
  if (sides.join() !== 'left,right') throw new Error(`sides in no order: ${text}`);
}
