// Whether a language is English: what a check that knows English words alone asks first.

export function isEnglish(language: string): boolean {
  return /^en\b/i.test(language);
}
