// A finding in its published form (schemas/output.schema.json, Finding).
import type { Finding } from '../../finding/finding.ts';
import { type Place, positionOf } from '../../finding/place.ts';

export function findingJson({ check, severity, message, place, hints, related }: Finding): object {
  const { line, column, endLine, endColumn } = positionOf(place);
  return {
    check,
    severity,
    message,
    file: place.source.file,
    line,
    column,
    end_line: endLine,
    end_column: endColumn,
    hints,
    related: related.map((one) => ({ message: one.message, ...start(one.place) })),
  };
}

function start(place: Place): object {
  const { line, column } = positionOf(place);
  return { file: place.source.file, line, column };
}
