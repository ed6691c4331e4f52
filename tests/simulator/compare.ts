// Says where two readings of the same plan differ, place by place, so that a failure can be read.

const CLOSE = 1e-9;

const isMap = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

function close(one: number, other: number): boolean {
  return Math.abs(one - other) <= CLOSE * Math.max(1, Math.abs(one), Math.abs(other));
}

function* between(expected: unknown, actual: unknown, place: string): Generator<string> {
  if (typeof expected === 'number' && typeof actual === 'number' && close(expected, actual)) return;
  if (Array.isArray(expected) && Array.isArray(actual) && expected.length === actual.length) {
    for (const [at, value] of expected.entries()) {
      yield* between(value, actual[at], `${place}[${at}]`);
    }
  } else if (isMap(expected) && isMap(actual)) {
    for (const key of new Set([...Object.keys(expected), ...Object.keys(actual)])) {
      yield* between(expected[key], actual[key], place ? `${place}.${key}` : key);
    }
  } else if (expected !== actual) {
    yield `${place}: simulator ${JSON.stringify(expected)}, carryover ${JSON.stringify(actual)}`;
  }
}

/** The places where two readings differ: none where they agree to nine digits. */
export function differences(expected: unknown, actual: unknown): string[] {
  return [...between(expected, actual, '')];
}
