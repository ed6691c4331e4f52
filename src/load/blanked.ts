// A starting file made from an earlier one, as text: what belongs to that person or that exercise is
// blanked, all else stays as it was written, comments too.

/** A key of the file's own with all that stands under it, and the comments above it. */
interface Block {
  readonly key: string | null;
  readonly text: string;
}

function blocksOf(text: string): readonly Block[] {
  const blocks: { key: string | null; text: string }[] = [{ key: null, text: '' }];
  let comments = '';
  for (const line of text.split(/(?<=\n)/)) {
    const key = /^([a-z_]+):/.exec(line)?.[1];
    if (line.startsWith('#') || line.trim() === '') comments += line;
    else if (key !== undefined) {
      blocks.push({ key, text: comments + line });
      comments = '';
    } else {
      const last = blocks.at(-1);
      if (last) last.text += comments + line;
      comments = '';
    }
  }
  return [...blocks, { key: null, text: comments }];
}

/** What takes the place of a key's block: text, or nothing. */
export type Replacements = Readonly<Record<string, string | null>>;

/** The text with the blocks of some keys replaced; a key that is not there is left out. */
export function withBlocks(text: string, replacements: Replacements): string {
  return blocksOf(text)
    .map(({ key, text: block }) => {
      if (key === null || !Object.hasOwn(replacements, key)) return block;
      const replacement = replacements[key];
      return replacement === null || replacement === undefined ? '' : `${replacement}\n`;
    })
    .join('');
}
