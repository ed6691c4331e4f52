// Pictures and codes inside a page: as data URIs, so that the page asks for nothing and a drawing is
// never part of the page's own markup. Which picture belongs where is the view's.
import type { PictureView } from '../sheet/sheet-view.ts';
import { isLinkView, linkCode } from './link-code.ts';

// Strings are built from that many bytes at a time: a call takes only so many arguments.
const CHUNK = 8192;

/** True of the place in a view that holds a picture. */
export function isPictureView(value: unknown): value is PictureView {
  if (typeof value !== 'object' || value === null || !('picture' in value)) return false;
  const { picture } = value;
  return typeof picture === 'object' && picture !== null && 'bytes' in picture;
}

const known = new WeakMap<Uint8Array, string>();

/** The bytes as base64; a picture that many sheets show is turned into it once. */
export function base64(bytes: Uint8Array): string {
  const text = known.get(bytes) ?? encoded(bytes);
  known.set(bytes, text);
  return text;
}

function encoded(bytes: Uint8Array): string {
  let binary = '';
  for (let i = 0; i < bytes.length; i += CHUNK) {
    binary += String.fromCharCode(...bytes.subarray(i, i + CHUNK));
  }
  return btoa(binary);
}

/** The same view with every picture, and the code of every link, as a data URI for an `img`. */
export function withPicturesInside(view: unknown): unknown {
  if (Array.isArray(view)) return view.map(withPicturesInside);
  if (isPictureView(view)) {
    const { mediaType, bytes } = view.picture;
    const source = `data:${mediaType};base64,${base64(bytes)}`;
    return { source, alt: view.alt, caption: view.caption };
  }
  if (isLinkView(view)) {
    const bytes = new TextEncoder().encode(linkCode(view.address));
    return { ...view, code: `data:image/svg+xml;base64,${base64(bytes)}` };
  }
  if (view === null || typeof view !== 'object') return view;
  return Object.fromEntries(
    Object.entries(view).map(([key, value]) => [key, withPicturesInside(value)]),
  );
}
