// The practitioner's own pictures: found, checked to be what their names say, and read.
import type { Picture } from '../model/exercise.ts';
import { type At, tellAt, textOf } from './at.ts';
import { wordHints } from './did-you-mean.ts';
import type { Folder } from './folder.ts';

const MOST_BYTES = 5 * 1024 * 1024;

const KINDS: Readonly<
  Record<string, { readonly mediaType: string; readonly isIt: (bytes: Uint8Array) => boolean }>
> = {
  png: { mediaType: 'image/png', isIt: (bytes) => startsWith(bytes, [0x89, 0x50, 0x4e, 0x47]) },
  jpg: { mediaType: 'image/jpeg', isIt: (bytes) => startsWith(bytes, [0xff, 0xd8, 0xff]) },
  webp: {
    mediaType: 'image/webp',
    isIt: (bytes) =>
      startsWith(bytes, [0x52, 0x49, 0x46, 0x46]) &&
      startsWith(bytes.slice(8), [0x57, 0x45, 0x42, 0x50]),
  },
  svg: {
    mediaType: 'image/svg+xml',
    isIt: (bytes) => /<svg[\s>]/.test(new TextDecoder().decode(bytes.slice(0, 4096))),
  },
};

function startsWith(bytes: Uint8Array, signature: readonly number[]): boolean {
  return signature.every((byte, i) => bytes[i] === byte);
}

/** The picture that a key names; null where it cannot be used, with the reason told. */
export function readPicture(at: At<unknown> | undefined, folder: Folder): Picture | null {
  if (!at) return null;
  const file = textOf(at);
  const unusable = (why: string) => {
    tellAt(at, 'picture-unusable', `"${file}" cannot be used: ${why}.`);
    return null;
  };
  if (file.split('/').some((step) => step === '..' || step === '.' || step === ''))
    return unusable('it lies outside pictures/');
  const entry = folder.entry(file);
  if (!entry) {
    const there = folder.list('pictures').map(({ path }) => path);
    tellAt(at, 'picture-missing', `There is no picture "${file}".`, {
      hints: wordHints(file, there),
    });
    return null;
  }
  if (entry.kind === 'link') return unusable('it is a link; put the picture itself there');
  if (entry.kind !== 'file') return unusable('it is not a file');
  if (entry.size > MOST_BYTES) return unusable('it is larger than 5 MiB; save it smaller');
  const kind = KINDS[file.slice(file.lastIndexOf('.') + 1)];
  let bytes: Uint8Array;
  try {
    bytes = folder.read(file);
  } catch {
    return unusable('it cannot be read');
  }
  if (!kind?.isIt(bytes)) return unusable('it is not the kind of picture that its name says');
  return { file, mediaType: kind.mediaType, bytes };
}
