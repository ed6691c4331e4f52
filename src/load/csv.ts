// One record of a CSV file (RFC 4180). A record here is a line: no field of ours holds a line end, so a
// quote that was never closed costs its own line and no other.

export interface CsvField {
  readonly text: string;
  /** In UTF-16 units from the start of the line, quotes included, `end` exclusive. */
  readonly start: number;
  readonly end: number;
}

// Quoted, with "" for a quote; or plain, without one.
const FIELD = /"((?:[^"]|"")*)"|([^",]*)/y;

/** The fields of a line; null where its quotes do not pair. */
export function csvFields(line: string): readonly CsvField[] | null {
  const fields: CsvField[] = [];
  for (let at = 0; ; at += 1) {
    FIELD.lastIndex = at;
    const [whole = '', quoted, plain = ''] = FIELD.exec(line) ?? [];
    const end = at + whole.length;
    fields.push({ text: quoted?.replaceAll('""', '"') ?? plain, start: at, end });
    if (end === line.length) return fields;
    if (line[end] !== ',') return null;
    at = end;
  }
}

/** A line of these fields, without its line end. */
export function csvLine(fields: readonly string[]): string {
  return fields
    .map((text) => (/[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text))
    .join(',');
}
