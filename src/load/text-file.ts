// A file's bytes to text: right kind of file, size, encoding, no hidden characters. And whether that
// text is within the limits beyond which a parser is slow or ends the process.
import { type CST, Lexer, Parser } from 'yaml';
import type { CheckName } from '../finding/checks.ts';
import { type Finding, finding, type Outcome } from '../finding/finding.ts';
import { fileOnly, type Place, type SourceText } from '../finding/place.ts';
import type { Folder } from './folder.ts';

const MIB = 1024 * 1024;
const MOST_BYTES = MIB;
const MOST_TOKENS = 50_000;
const MOST_KEYS = 2_000;
const DEEPEST = 32;
// C0 and C1 controls but tab and line feed; direction overrides and isolates.
// biome-ignore lint/suspicious/noControlCharactersInRegex: these are what is looked for
export const HIDDEN = /[\u0000-\u0008\u000b-\u001f\u007f-\u009f\u202a-\u202e\u2066-\u2069]/;

function fileError(check: CheckName, message: string, place: Place): Outcome<null> {
  return { value: null, findings: [finding({ check, severity: 'error', message, place })] };
}

/** The text of a file of the folder; null where it cannot be used, with the reason. */
export function readText(folder: Folder, path: string): Outcome<SourceText | null> {
  const { value: bytes, findings } = readBytes(folder, path, MOST_BYTES);
  return bytes ? textOf(path, bytes) : { value: null, findings };
}

/** The bytes of a file of the folder, up to so many; null where it cannot be used, with the reason. */
export function readBytes(
  folder: Folder,
  path: string,
  mostBytes: number,
): Outcome<Uint8Array | null> {
  const entry = folder.entry(path);
  const place = fileOnly(path);
  if (!entry) return fileError('file-unreadable', 'This file is not there.', place);
  if (entry.kind === 'link')
    return fileError('file-linked', 'This file is a link; put the file itself here.', place);
  if (entry.kind !== 'file')
    return fileError('file-unreadable', 'This is not a file that can be read.', place);
  if (entry.size > mostBytes) {
    const message = `This file is larger than ${mostBytes / MIB} MiB, which no plan needs.`;
    return fileError('file-too-big', message, place);
  }
  try {
    return { value: folder.read(path), findings: [] };
  } catch (cause) {
    return fileError(
      'file-unreadable',
      `This file cannot be read (${systemReason(cause)}).`,
      place,
    );
  }
}

function systemReason(cause: unknown): string {
  const code = cause instanceof Error && 'code' in cause ? String(cause.code) : '';
  return (
    { EACCES: 'no permission', EISDIR: 'it is a folder', ENOENT: 'it is gone' }[code] ??
    (code || 'unknown reason')
  );
}

function textOf(path: string, bytes: Uint8Array): Outcome<SourceText | null> {
  const place = fileOnly(path);
  let decoded: string;
  try {
    decoded = new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    const isUtf16 =
      (bytes[0] === 0xff && bytes[1] === 0xfe) || (bytes[0] === 0xfe && bytes[1] === 0xff);
    const what = isUtf16 ? 'is saved as UTF-16' : 'is not saved as UTF-8';
    return fileError('file-not-utf8', `This file ${what}; save it as UTF-8.`, place);
  }
  const source: SourceText = { file: path, text: decoded.replaceAll('\r\n', '\n') };
  const hidden = HIDDEN.exec(source.text);
  if (hidden) {
    const at = { source, start: hidden.index, end: hidden.index + 1 };
    if (hidden[0] === '\r')
      return fileError(
        'hidden-character',
        'The lines of this file end with CR alone, an old way; save it with line ends LF or CRLF.',
        at,
      );
    return fileError(
      'hidden-character',
      `Here stands a character that does not show (${codeOf(hidden[0])}); delete it.`,
      at,
    );
  }
  return { value: source, findings: [] };
}

/** `U+202E`, as a character is named. */
export function codeOf(character: string): string {
  return `U+${character.charCodeAt(0).toString(16).toUpperCase().padStart(4, '0')}`;
}

/** A list may be longer: it is gone through once, while each key is held against all others. */
function keysIn(open: CST.Token | undefined): number {
  if (open?.type === 'block-map') return open.items.length;
  return open?.type === 'flow-collection' && open.start.type === 'flow-map-start'
    ? open.items.length
    : 0;
}

/** What keeps a text from the parser, if anything. Counted while the text is cut into tokens, so that nothing beyond a limit is ever built. */
export function beyondLimits(source: SourceText): Finding | null {
  const parser = new Parser();
  let tokens = 0;
  let offset = 0;
  const at = (check: CheckName, message: string) =>
    finding({ check, severity: 'error', message, place: { source, start: offset, end: offset } });
  for (const token of new Lexer().lex(source.text)) {
    tokens += 1;
    if (tokens > MOST_TOKENS)
      return at('file-too-long', `This file has more than 50,000 words and signs.`);
    for (const _ of parser.next(token)) {
      // A finished document needs no look here: its depth was seen while it was open.
    }
    offset = parser.offset;
    const open = parser.stack.filter(
      ({ type }) => type === 'block-map' || type === 'block-seq' || type === 'flow-collection',
    );
    if (open.length > DEEPEST)
      return at('file-too-deep', `Brackets or indents nest more than ${DEEPEST} deep here.`);
    if (keysIn(open.at(-1)) > MOST_KEYS) {
      return at('file-too-long', `More than 2,000 keys stand in one place here.`);
    }
  }
  return null;
}
