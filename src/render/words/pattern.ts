// One sentence pattern of a words pack: ICU MessageFormat with named placeholders, made usable or
// refused with a reason. Numbers come in as finished text, so nothing here asks the machine how it
// writes numbers or dates; only the plural rules of the language are looked up.
import { type Formatters, IntlMessageFormat } from 'intl-messageformat';

export type WordValues = Readonly<Record<string, string | number>>;

export interface Pattern {
  readonly text: string;
  readonly placeholders: ReadonlySet<string>;
  readonly fill: (values: WordValues) => string;
}

export type PatternReading =
  | { readonly ok: true; readonly pattern: Pattern }
  | { readonly ok: false; readonly why: string };

type Elements = ReturnType<IntlMessageFormat['getAst']>;

/** As in the parser: what an element of a pattern is. */
const KIND = {
  literal: 0,
  argument: 1,
  number: 2,
  date: 3,
  time: 4,
  select: 5,
  plural: 6,
  pound: 7,
  tag: 8,
};

/** Reads a pattern for one language. */
export function parsePattern(text: string, language: string): PatternReading {
  let message: IntlMessageFormat;
  try {
    message = new IntlMessageFormat(text, language, undefined, {
      ignoreTag: true,
      formatters: formattersFor(language),
    });
  } catch (error) {
    return { ok: false, why: reasonOf(error) };
  }
  const placeholders = new Set<string>();
  const why = collect(message.getAst(), placeholders);
  if (why) return { ok: false, why };
  const fill = (values: WordValues) => String(message.format({ ...values }));
  const pieces = plainPieces(message.getAst());
  return {
    ok: true,
    pattern: { text, placeholders, fill: pieces ? plainFill(pieces, fill) : fill },
  };
}

/** A text, or the name of a placeholder. */
type Piece = { readonly text: string } | { readonly name: string };

/** The pieces of a pattern that chooses nothing, as most are; null for one that does. */
function plainPieces(elements: Elements): readonly Piece[] | null {
  const pieces = elements.map((element): Piece | null => {
    if (!('value' in element) || typeof element.value !== 'string') return null;
    if (element.type === KIND.literal) return { text: element.value };
    return element.type === KIND.argument ? { name: element.value } : null;
  });
  return pieces.every((piece) => piece !== null) ? pieces : null;
}

/** Puts pieces together: a build fills a million patterns, and this is ten times as quick. */
function plainFill(pieces: readonly Piece[], refusing: Pattern['fill']): Pattern['fill'] {
  return (values) => {
    let filled = '';
    for (const piece of pieces) {
      const value = 'text' in piece ? piece.text : values[piece.name];
      // What is missing is told of in the formatter's own way.
      if (value === undefined) return refusing(values);
      filled += value;
    }
    return filled;
  };
}

/** Gathers the placeholders; says why where an element is of a kind that depends on the machine. */
function collect(elements: Elements, into: Set<string>): string | null {
  for (const element of elements) {
    const kind = element.type as number;
    if (kind === KIND.number || kind === KIND.date || kind === KIND.time) {
      return 'it formats a number or a date itself, but gets both as finished text: write {name} alone';
    }
    if (kind === KIND.pound) return 'it has a # for the number: write {count} instead';
    if ('options' in element) {
      into.add(element.value);
      for (const { value } of Object.values(element.options)) {
        const why = collect(value, into);
        if (why) return why;
      }
    } else if (kind === KIND.argument && 'value' in element) {
      into.add(element.value);
    }
  }
  return null;
}

function reasonOf(error: unknown): string {
  const text = error instanceof Error ? error.message : String(error);
  return `it cannot be read as a pattern (${text.split('\n')[0]})`;
}

/** Only plurals are left to the language's rules; a language without rules has one and many. */
function formattersFor(language: string): Formatters {
  const isKnown = Intl.PluralRules.supportedLocalesOf(language).length > 0;
  const refuse = () => {
    throw new Error('a words pattern formats no numbers or dates');
  };
  // Looked up once and kept: making the rules costs more than filling a thousand patterns.
  const rules = new Map<string, Intl.PluralRules>();
  const rulesFor = (options: Intl.PluralRulesOptions = {}): Intl.PluralRules => {
    const type = options.type ?? 'cardinal';
    const known = rules.get(type) ?? new Intl.PluralRules(language, options);
    rules.set(type, known);
    return known;
  };
  return {
    getNumberFormat: refuse,
    getDateTimeFormat: refuse,
    getPluralRules: (_locales, options) =>
      isKnown
        ? rulesFor(options)
        : ({ select: (n: number) => (n === 1 ? 'one' : 'other') } as Intl.PluralRules),
  };
}
