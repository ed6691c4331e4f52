// Whether a written page is still as it was written: its last line holds a fingerprint of all
// before it, so that "edited by hand" can be told from "stale". What to do about it is not here.

/** A hash of a text's UTF-8 bytes (SHA-256); handed in, since this floor computes none. */
export type Hash = (text: string) => Uint8Array;

const SEAL = /<!-- page ([0-9a-f]+) -->\n$/;
// Half of a SHA-256 is plenty against an edit that happens by accident.
const SEAL_BYTES = 16;

/** The page with its fingerprint as the last line: a comment that HTML and Markdown both take. */
export function sealed(page: string, hash: Hash): string {
  const body = page.endsWith('\n') ? page : `${page}\n`;
  return `${body}<!-- page ${fingerprint(body, hash)} -->\n`;
}

/** True where a page is byte for byte what was sealed; a page without a fingerprint is not. */
export function isSealIntact(page: string, hash: Hash): boolean {
  const seal = SEAL.exec(page);
  return seal !== null && seal[1] === fingerprint(page.slice(0, seal.index), hash);
}

/** The fingerprint that a sealed page holds; null where it holds none. */
export function sealOf(page: string): string | null {
  return SEAL.exec(page)?.[1] ?? null;
}

/** The fingerprint of a text. */
export function fingerprint(body: string, hash: Hash): string {
  return [...hash(body).subarray(0, SEAL_BYTES)]
    .map((byte) => byte.toString(16).padStart(2, '0'))
    .join('');
}
