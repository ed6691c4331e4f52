// A practitioner's text inside a page's style: what stands at the foot of each printed page.

/**
 * The text for between the quotes of a CSS string. Every sign but letters, digits and blanks of
 * ASCII is given by its number, so that neither a style nor the page around it can be broken out of.
 */
export function cssText(text: string): string {
  return [...text]
    .map((sign) => (/[A-Za-z0-9 ]/.test(sign) ? sign : `\\${sign.codePointAt(0)?.toString(16)} `))
    .join('');
}
