// What a comma does inside { } and [ ]: it splits a sentence, or a number with a decimal comma.
import {
  type Document,
  isMap,
  isPair,
  isScalar,
  isSeq,
  visit,
  type YAMLMap,
  type YAMLSeq,
} from 'yaml';
import type { CheckName } from '../finding/checks.ts';
import type { Finding } from '../finding/finding.ts';
import type { SourceText } from '../finding/place.ts';
import { ENTRY } from './prose-scanning.ts';
import { quoted } from './quoted-sentence.ts';
import { type FileKind, proseOf } from './schemas.ts';

/** Tells of a mistake from one place of the text to another. */
export type Tell = (check: CheckName, message: string, start: number, end: number) => void;

/** What is looked at and told of here, of a file. */
interface FlowFile {
  readonly kind: FileKind;
  readonly source: SourceText;
  readonly flagged: Set<unknown>;
  readonly findings: readonly Finding[];
}

interface Comma {
  readonly start: number;
  readonly end: number;
  /** Whether it stands straight inside [ ], where a list could be meant. */
  readonly isEntry: boolean;
  /** Whether it is the value of "tempo", whose numbers have hyphens between them. */
  readonly isTempo: boolean;
}

/** What to write for a number with a comma. */
export function commaSentence(
  number: string,
  { isEntry, isTempo }: Pick<Comma, 'isEntry' | 'isTempo'>,
): string {
  if (isTempo && number.split(',').length === 4)
    return `${number} has commas between its numbers; write "tempo: ${number.replaceAll(',', '-')}".`;
  const decimal = /^\d+,\d+$/.test(number)
    ? [`a decimal with a point (${number.replace(',', '.')})`]
    : [];
  const list =
    isEntry || decimal.length === 0
      ? [`a list with a space after each comma (${number.replaceAll(',', ', ')})`]
      : [];
  return `${number} has a comma between digits; write ${[...decimal, ...list].join(', or ')}.`;
}

/** Inside brackets a comma between digits could be a decimal or part two entries; each such number. */
export function flowCommas(document: Document, text: string): readonly Comma[] {
  const found: Comma[] = [];
  visit(document, {
    Collection: (_, node) => {
      if (!node.flow) return undefined;
      const [start, end] = node.range ?? [0, 0, 0];
      const bare = text
        .slice(start, end)
        .replace(/"(?:\\.|[^"\\])*"|'(?:''|[^'])*'/g, (quote) => ' '.repeat(quote.length));
      for (const { 0: number, index } of bare.matchAll(/\d+(?:,\d+)+/g)) {
        const before = bare.slice(0, index);
        found.push({
          start: start + index,
          end: start + index + number.length,
          isEntry: /\[[^[\]{}]*$/.test(before),
          isTempo: /\btempo:\s*$/.test(before),
        });
      }
      return visit.SKIP;
    },
  });
  return found;
}

/** The text with such a number held together, so that what stands around it is still read. */
export function withoutCommas(text: string, commas: readonly Comma[]): string {
  let mended = text;
  for (const { start, end } of commas)
    mended =
      mended.slice(0, start) + mended.slice(start, end).replaceAll(',', '.') + mended.slice(end);
  return mended;
}

/** Leaves unread what was told of already and stands otherwise in the tree than in the file. */
export function flagRanges(
  { flagged }: FlowFile,
  document: Document,
  ranges: readonly Pick<Comma, 'start' | 'end'>[],
): void {
  visit(document, {
    Scalar: (_, node) => {
      const [from, to] = node.range ?? [0, 0, 0];
      if (ranges.some(({ start, end }) => start < to && end > from)) flagged.add(node);
    },
  });
}

/** What a comma inside brackets does to sentences: it splits them. */
export function tellFlow(file: FlowFile, document: Document, tell: Tell): void {
  const proseAt = proseOf(file.kind);
  visit(document, {
    Collection: (_, node, above) => {
      if (!node.flow || above.some((one) => file.flagged.has(one))) return;
      if (isMap(node)) tellStrayKeys(file, node, tell);
      else if (isSeq(node) && proseAt(stepsTo(above)) === 'sentences')
        tellUnquoted(file, node, tell);
    },
  });
}

/** The keys and list entries that lead to a node. */
function stepsTo(above: readonly unknown[]): readonly string[] {
  return above.flatMap((one) =>
    isSeq(one) ? [ENTRY] : isPair(one) && isScalar(one.key) ? [String(one.key.value)] : [],
  );
}

function tellUnquoted(file: FlowFile, list: YAMLSeq, tell: Tell): void {
  const words = list.items.map((one) => (isScalar(one) ? one : null));
  if (!words.some((one) => one?.type === 'PLAIN')) return;
  file.flagged.add(list);
  const [start, end] = list.range ?? [0, 0, 0];
  if (
    file.findings.some(
      ({ check, place }) => check === 'text-cut-off' && place.start >= start && place.end <= end,
    )
  )
    return;
  const each = words.flatMap((one) => (one ? [quoted(String(one.source ?? one.value))] : []));
  const rest = each.length === 1 ? '' : ', or round the whole if it is one sentence';
  tell(
    'text-cut-off',
    `Inside [ ] every comma ends a sentence, so each needs quotes round it: [${each.join(', ')}]${rest}.`,
    start,
    end,
  );
}

/** Inside { } a key with nothing after it is the rest of the sentence before it. */
function tellStrayKeys(file: FlowFile, map: YAMLMap, tell: Tell): void {
  for (const [i, pair] of map.items.entries()) {
    if (!isPair(pair) || !isScalar(pair.key) || pair.value !== null) continue;
    const [start, end] = pair.key.range ?? [0, 0, 0];
    const rest = String(pair.key.source ?? pair.key.value);
    const before = map.items[i - 1];
    file.flagged.add(pair.key);
    if (!/^[\w-]+:\S/.test(rest) && before && isScalar(before.key) && isScalar(before.value)) {
      const from = before.value.range?.[0] ?? start;
      const whole = file.source.text.slice(from, end).replace(/\s+/g, ' ');
      file.flagged.add(before.value);
      tell(
        'text-cut-off',
        `Inside { } a comma ends a value, so "${rest}" was split off; put quotes round the whole: "${String(before.key.value)}: ${quoted(whole).slice(1, -1)}" becomes ${String(before.key.value)}: ${quoted(whole)}.`,
        start,
        end,
      );
    } else if (/^[\w-]+:\S/.test(rest)) {
      tell(
        'yaml-broken',
        `A key has a space after its colon: "${rest.replace(':', ': ')}".`,
        start,
        end,
      );
    } else {
      tell(
        'text-cut-off',
        `Inside { } "${rest}" has nothing after it; write "${rest}: …", or put quotes round the sentence that it belongs to.`,
        start,
        end,
      );
    }
  }
}
