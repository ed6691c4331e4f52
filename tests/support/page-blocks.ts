// A page read back into its blocks, in order: headings, paragraphs, list entries, cells, pictures.
// Two readers, of HTML and of Markdown, that come to the same form, so that the two can be compared.
import MarkdownIt from 'markdown-it';

export interface Block {
  readonly kind: string;
  readonly text: string;
}

const NAMED: Record<string, string> = { amp: '&', lt: '<', gt: '>', quot: '"', nbsp: '\u00a0' };

function plainText(html: string): string {
  const decoded = html.replace(/&(?:#x([0-9a-f]+)|#(\d+)|(\w+));/gi, (_, hex, decimal, name) => {
    if (name) {
      const sign = NAMED[name];
      if (sign === undefined) throw new Error(`&${name}; is not known here`);
      return sign;
    }
    return String.fromCodePoint(hex ? Number.parseInt(hex, 16) : Number(decimal));
  });
  return decoded.replace(/\s+/g, ' ').trim();
}

/** In bold by the sheet's own style, where Markdown has stars. */
const STRONG = /^(dose|lead|when)$/;

/** Whether a picture inside a page is a figure drawn from joint angles: those describe themselves. */
export function isDrawn(source: string): boolean {
  const base64 = source.replace(/^data:image\/svg\+xml;base64,/, '');
  return Buffer.from(base64, 'base64').toString('utf8').includes('</title><desc>');
}

/** The blocks of a sheet's body; tags that only group or style are passed over. */
export function htmlBlocks(page: string): Block[] {
  const body = /<body>([\s\S]*)<\/body>/.exec(page)?.[1];
  if (body === undefined) throw new Error('the page has no body');
  const blocks: Block[] = [];
  const lists: { tag: string; count: number }[] = [];
  let open: { kind: string; text: string } | null = null;
  for (const [, tag = '', text = ''] of body.matchAll(/(<[^>]*>)|([^<]+)/g)) {
    if (text) {
      if (open) open.text += text;
      else if (text.trim()) throw new Error(`"${text.trim()}" stands in no block`);
      continue;
    }
    const [, slash, name = ''] = /^<(\/?)(\w*)/.exec(tag) ?? [];
    const attribute = (key: string) => new RegExp(`\\s${key}="([^"]*)"`).exec(tag)?.[1] ?? '';
    if (name === 'ul' || name === 'ol') {
      if (slash) lists.pop();
      else lists.push({ tag: name, count: 0 });
      blocks.push({ kind: `${slash ? 'end of' : 'begin'} ${name}`, text: '' });
    } else if (name === 'img') {
      // A drawn figure has no file that Markdown could lead to: its words stand for it.
      const kind = isDrawn(plainText(attribute('src'))) ? 'p' : 'picture';
      blocks.push({ kind, text: plainText(attribute('alt')) });
    } else if (/^(h\d|p|li|th|td)$/.test(name)) {
      if (slash) {
        if (open) blocks.push({ kind: open.kind, text: plainText(open.text) });
        open = null;
        continue;
      }
      const list = lists.at(-1);
      if (name === 'li' && list) list.count += 1;
      const kind =
        name === 'li'
          ? list?.tag === 'ol'
            ? `step ${list.count}`
            : 'entry'
          : name === 'th' || name === 'td'
            ? 'cell'
            : name === 'p' && STRONG.test(attribute('class'))
              ? 'strong'
              : name;
      open = { kind, text: '' };
    } else if (!/^(header|main|footer|section|div|table|thead|tbody|tr|span|a|)$/.test(name)) {
      throw new Error(`${tag} is not known here`);
    }
  }
  return blocks;
}

/** A row of a table of numbers: the name of each column, and what stands in it. */
export type FiguresRow = readonly (readonly [column: string, cell: string])[];

/** The rows of a clinic copy's tables of numbers, each with its table's name as a first cell. */
export function figures(page: string): FiguresRow[] {
  const tables = [
    ...page.matchAll(/aria-label="([^"]*)"[^>]*>\s*<table class="figures">([\s\S]*?)<\/table>/g),
  ];
  if (tables.length === 0) throw new Error('the page has no tables of numbers');
  const cellsIn = (row: string) =>
    [...row.matchAll(/<t[hd][^>]*>([\s\S]*?)<\/t[hd]>/g)].map(([, cell = '']) => plainText(cell));
  return tables.flatMap(([, name = '', table = '']) => {
    const [head = '', ...rows] = table.split('</tr>');
    const columns = cellsIn(head);
    const filled = rows.map(cellsIn).filter((cells) => cells.length > 0);
    return filled.map(
      (cells): FiguresRow => [
        ['table', name],
        ...cells.map((cell, at) => [columns[at] ?? '', cell] as const),
      ],
    );
  });
}

/** The blocks of a Markdown page, as CommonMark with tables reads it. */
export function markdownBlocks(page: string): Block[] {
  const reader = new MarkdownIt('commonmark').enable('table');
  const blocks: Block[] = [];
  const kinds: string[] = [];
  for (const token of reader.parse(page, {})) {
    const { type, tag, info, content } = token;
    if (type === 'hr' || (type === 'html_block' && /^<!--[^>]*-->\s*$/.test(content))) continue;
    if (type.endsWith('list_open') || type.endsWith('list_close')) {
      blocks.push({ kind: `${type.endsWith('close') ? 'end of' : 'begin'} ${tag}`, text: '' });
    } else if (/^(heading|td|th|paragraph|list_item)_open$/.test(type)) {
      const kind =
        tag === 'li'
          ? info
            ? `step ${info}`
            : 'entry'
          : tag === 'td' || tag === 'th'
            ? 'cell'
            : tag;
      // A list entry's own paragraph is the entry.
      kinds.push(tag === 'p' && token.level > 0 ? (kinds.at(-1) ?? kind) : kind);
    } else if (/^(heading|td|th|paragraph|list_item)_close$/.test(type)) {
      kinds.pop();
    } else if (type === 'inline') {
      const inside = (token.children ?? []).filter((one) => one.type !== 'text' || one.content);
      blocks.push(inlineBlock(inside, kinds.at(-1) ?? ''));
    } else if (!/^(table|thead|tbody|tr)_(open|close)$/.test(type)) {
      throw new Error(`${type} has no place on a sheet: ${content}`);
    }
  }
  return blocks;
}

type Inline = ReturnType<InstanceType<typeof MarkdownIt>['parse']>[number];

function inlineBlock(inside: readonly Inline[], kind: string): Block {
  const [first] = inside;
  if (inside.length === 1 && first?.type === 'image') {
    return { kind: 'picture', text: first.content.replace(/\\(?=[!-/:-@[-`{-~])/g, '') };
  }
  const isStrong = first?.type === 'strong_open' && inside.at(-1)?.type === 'strong_close';
  const words = isStrong ? inside.slice(1, -1) : inside;
  const text = words.map((one) => {
    if (one.type !== 'text' && one.type !== 'text_special') {
      throw new Error(`${one.type} in a sentence: ${one.content || one.markup}`);
    }
    return one.content;
  });
  return { kind: isStrong ? 'strong' : kind, text: text.join('') };
}
