// A sentence as it is to be written so that YAML takes it whole: what the messages show.
// Which sentences need it is for the readers of text to say.

/** A sentence in double quotes as YAML takes it; double quotes inside become single ones. */
export function quoted(text: string): string {
  const sentence = withoutOuterQuotes(text).replace(/\s+/g, ' ').trim();
  return JSON.stringify(sentence.replaceAll('"', "'"));
}

/** Quotes that were meant to go round the whole: one that never closes, or a pair with more inside ('Don't stop'). */
function withoutOuterQuotes(text: string): string {
  if (/^"[^"]*$/.test(text) || /^'[^']*$/.test(text)) return text.slice(1);
  const isRoundAll =
    /^'(?:[^']*'\p{L}|[^']*\s').*'$/u.test(text) || /^"(?:[^"]*"\p{L}|[^"]*\s").*"$/u.test(text);
  return isRoundAll ? text.slice(1, -1) : text;
}
