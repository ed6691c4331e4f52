// The register of handovers, `handovers.csv`: rows are added and never changed, so two branches merge by
// keeping the lines of both. A line that cannot be read is told of; it costs no other line and no sheet.
import { type Finding, finding } from '../finding/finding.ts';
import { fileOnly, type Place, type SourceText } from '../finding/place.ts';
import type { Handover } from '../model/handover.ts';
import { CODE, ID, LANGUAGE } from '../model/ids.ts';
import { isSheetNumber } from '../model/sheet-signs.ts';
import { parseDay } from '../units/day.ts';
import { type CsvField, csvFields, csvLine } from './csv.ts';
import type { Folder } from './folder.ts';
import { HIDDEN, readBytes } from './text-file.ts';

export const REGISTER = 'handovers.csv';
/** Its first line. */
export const REGISTER_HEADER = 'date,plan,sheet,commit,language,by';

/** About 180,000 rows: longer than a practice can hand over in a working life. */
const MOST_BYTES = 16 * 1024 * 1024;
const COMMIT = /^(?:[0-9a-f]{40}|[0-9a-f]{64})$/;
const CONFLICT = /^(?:<{7}|\|{7}|={7}|>{7})(?: |$)/;

export interface RegisterRow extends Handover {
  readonly place: Place;
}

export interface Register {
  /** In the order of the file; one that stands there twice comes once. */
  readonly rows: readonly RegisterRow[];
  readonly findings: readonly Finding[];
}

/** A handover as a line of the register. */
export function registerLine({ date, plan, sheet, commit, language, by }: Handover): string {
  return csvLine([date, plan, sheet, commit, language, by ?? '']);
}

/** All rows that can be read, and what cannot. */
export function loadRegister(folder: Folder): Register {
  if (!folder.entry(REGISTER)) return { rows: [], findings: [] };
  const { value: bytes, findings } = readBytes(folder, REGISTER, MOST_BYTES);
  if (!bytes) return unusable(findings[0]?.message ?? '');
  if (isUtf16(bytes)) return unusable('This file is saved as UTF-16; save it as UTF-8.');
  // What is not UTF-8 becomes signs that no field has, and so is found in its line.
  const text = new TextDecoder().decode(bytes).replaceAll('\r\n', '\n');
  return readRows({ file: REGISTER, text });
}

/** A text that no row can be added to. */
export function isUtf16(bytes: Uint8Array): boolean {
  const [first, second] = bytes;
  return (first === 0xff && second === 0xfe) || (first === 0xfe && second === 0xff);
}

function unusable(message: string): Register {
  return { rows: [], findings: [damage(message, fileOnly(REGISTER))] };
}

function readRows(source: SourceText): Register {
  const lines = linesOf(source);
  const marks = lines.filter(({ line }) => CONFLICT.test(line));
  const [first, ...others] = lines.filter(({ line }) => !CONFLICT.test(line));
  const findings = marks.slice(0, 1).map(({ place }) => damage(CONFLICT_MESSAGE, place));
  if (!first) return { rows: [], findings };
  const rows = new Map<string, RegisterRow>();
  const keep = (row: RegisterRow) => {
    const key = registerLine(row);
    if (!rows.has(key)) rows.set(key, row);
  };
  if (!isHeader(first.line)) {
    const reading = readRow(first);
    findings.push(damage(headerMessage(first.line), { ...first.place, end: first.place.start }));
    if (!('check' in reading)) keep(reading);
  }
  const separator = separatorOf(first.line);
  for (const one of others) {
    // A merge can bring the first line twice; of lines parted by something else the first line told.
    if (isHeader(one.line) || (separator !== ',' && separatorOf(one.line) === separator)) continue;
    const reading = readRow(one);
    if ('check' in reading) findings.push(reading);
    else keep(reading);
  }
  return { rows: [...rows.values()], findings };
}

const CONFLICT_MESSAGE =
  'A merge left its marks in the register; keep the rows of both sides, and delete the lines of <, =, | and >.';

function isHeader(line: string): boolean {
  return (csvFields(line) ?? []).map(({ text }) => text).join(',') === REGISTER_HEADER;
}

function headerMessage(line: string): string {
  return separatorOf(line) === ','
    ? `The first line of the register is not "${REGISTER_HEADER}"; put it back.`
    : 'The register was saved anew by a program that parts fields by other signs than commas; put the file back from version control.';
}

/** What parts the fields of a line: a comma, or what some spreadsheets put in its place. */
function separatorOf(line: string): string {
  return line.includes(',') ? ',' : (/[;\t]/.exec(line)?.[0] ?? ',');
}

interface Line {
  readonly line: string;
  readonly place: Place;
}

/** Lines with something in them. */
function linesOf(source: SourceText): readonly Line[] {
  let start = 0;
  return source.text.split('\n').flatMap((line) => {
    const place = { source, start, end: start + line.length };
    start += line.length + 1;
    return line === '' ? [] : [{ line, place }];
  });
}

function readRow({ line, place }: Line): RegisterRow | Finding {
  if (HIDDEN.test(line)) return damage('This row holds a character that does not show.', place);
  const fields = csvFields(line);
  if (!fields) return damage('The quotes of this row do not pair.', place);
  const names = REGISTER_HEADER.split(',');
  if (fields.length !== names.length)
    return damage(
      `This row has ${fields.length} ${fields.length === 1 ? 'field' : 'fields'}, and not the ${names.length} of the register: ${names.join(', ')}.`,
      place,
    );
  const wrong = fields.find((field, i) => !FITS[names[i] as FieldName](field.text));
  if (wrong) return wrongField(wrong, names[fields.indexOf(wrong)] as FieldName, place);
  const [date = '', plan = '', sheet = '', commit = '', language = '', by = ''] = fields.map(
    ({ text }) => text,
  );
  return { date, plan, sheet, commit, language, by: by === '' ? null : by, place };
}

type FieldName = 'date' | 'plan' | 'sheet' | 'commit' | 'language' | 'by';

const FITS: Readonly<Record<FieldName, (text: string) => boolean>> = {
  date: (text) => parseDay(text).ok,
  plan: (text) => CODE.test(text),
  sheet: isSheetNumber,
  commit: (text) => COMMIT.test(text),
  language: (text) => LANGUAGE.test(text),
  by: (text) => text === '' || ID.test(text),
};

const MEANT: Readonly<Record<FieldName, string>> = {
  date: 'is no date such as 2026-10-26',
  plan: "is no plan's code",
  sheet: 'is no sheet number such as KP4T 7WQM',
  commit: 'is no full commit id',
  language: 'is no language tag such as en',
  by: "is no practitioner's id; a name never belongs here",
};

function wrongField({ text, start, end }: CsvField, name: FieldName, row: Place): Finding {
  return damage(`"${name}" says "${text}", which ${MEANT[name]}.`, {
    source: row.source,
    start: row.start + start,
    end: row.start + end,
  });
}

function damage(message: string, place: Place): Finding {
  return finding({ check: 'handover-damaged', severity: 'warning', message, place });
}
