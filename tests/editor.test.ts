// The schemas in a real YAML language server: completion, hover text and errors, and the folder's own
// ids among the values, as an editor shows them.
import { type ChildProcess, spawn } from 'node:child_process';
import { mkdtempSync, readFileSync, realpathSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { runIn } from './support/cases.ts';

const SERVER = join(
  import.meta.dirname,
  '..',
  'node_modules',
  'yaml-language-server',
  'bin',
  'yaml-language-server',
);

interface Message {
  readonly id?: number;
  readonly method?: string;
  readonly params?: unknown;
  readonly result?: unknown;
}

interface Diagnostic {
  readonly message: string;
  readonly range: { readonly start: { readonly line: number } };
}

/** A language server and the few requests that an editor makes of it. */
function startServer(folder: string) {
  const server: ChildProcess = spawn(process.execPath, [SERVER, '--stdio'], {
    stdio: ['pipe', 'pipe', 'ignore'],
  });
  const answers = new Map<number, (result: unknown) => void>();
  const diagnostics = new Map<string, (found: readonly Diagnostic[]) => void>();
  let buffer = Buffer.alloc(0);
  let lastId = 0;
  const send = (message: object) => {
    const body = JSON.stringify({ jsonrpc: '2.0', ...message });
    server.stdin?.write(`Content-Length: ${Buffer.byteLength(body)}\r\n\r\n${body}`);
  };
  const settings = JSON.parse(readFileSync(join(folder, '.vscode', 'settings.json'), 'utf8'))[
    'yaml.schemas'
  ];
  const schemas = Object.fromEntries(
    Object.entries(settings as Record<string, string>).map(([path, glob]) => [
      pathToFileURL(join(folder, path)).href,
      glob,
    ]),
  );
  const receive = (message: Message) => {
    if (message.method === 'workspace/configuration') {
      const { items } = message.params as { items: { section: string }[] };
      const yaml = { schemas, validate: true, completion: true, hover: true };
      send({
        id: message.id,
        result: items.map(({ section }) => (section === 'yaml' ? yaml : {})),
      });
    } else if (message.method === 'textDocument/publishDiagnostics') {
      const { uri, diagnostics: found } = message.params as {
        uri: string;
        diagnostics: Diagnostic[];
      };
      diagnostics.get(uri)?.(found);
    } else if (message.method !== undefined && message.id !== undefined)
      send({ id: message.id, result: null });
    else if (message.id !== undefined) answers.get(message.id)?.(message.result);
  };
  server.stdout?.on('data', (chunk: Buffer) => {
    buffer = Buffer.concat([buffer, chunk]);
    for (;;) {
      const head = /^Content-Length: (\d+)\r\n(?:.*\r\n)*?\r\n/.exec(buffer.toString('latin1'));
      if (!head) return;
      const end = head[0].length + Number(head[1]);
      if (buffer.length < end) return;
      const body = buffer.subarray(head[0].length, end).toString('utf8');
      buffer = buffer.subarray(end);
      receive(JSON.parse(body) as Message);
    }
  });
  const ask = (method: string, params: object) =>
    new Promise<unknown>((resolve) => {
      lastId += 1;
      answers.set(lastId, resolve);
      send({ id: lastId, method, params });
    });
  return {
    start: async () => {
      const root = pathToFileURL(folder).href;
      const capabilities = {
        workspace: { configuration: true },
        textDocument: { completion: { completionItem: { snippetSupport: false } } },
      };
      await ask('initialize', {
        processId: process.pid,
        rootUri: root,
        capabilities,
        workspaceFolders: [{ uri: root, name: 'folder' }],
      });
      send({ method: 'initialized', params: {} });
      send({
        method: 'workspace/didChangeConfiguration',
        params: { settings: { yaml: { schemas, validate: true, completion: true, hover: true } } },
      });
    },
    /** Opens a text under a path of the folder; answers with what the editor underlines. */
    open: (path: string, text: string) =>
      new Promise<readonly Diagnostic[]>((resolve) => {
        const uri = pathToFileURL(join(folder, path)).href;
        diagnostics.set(uri, resolve);
        send({
          method: 'textDocument/didOpen',
          params: { textDocument: { uri, languageId: 'yaml', version: 1, text } },
        });
      }),
    ask: (method: string, path: string, line: number, character: number) =>
      ask(`textDocument/${method}`, {
        textDocument: { uri: pathToFileURL(join(folder, path)).href },
        position: { line, character },
      }),
    stop: () => server.kill(),
  };
}

const outside = realpathSync(mkdtempSync(join(tmpdir(), 'carryover-editor-')));
const folder = join(outside, 'practice');
let server: ReturnType<typeof startServer>;

beforeAll(async () => {
  expect(runIn(outside, ['init', 'practice']).status).toBe(0);
  server = startServer(folder);
  await server.start();
});

afterAll(() => {
  server?.stop();
  rmSync(outside, { recursive: true, force: true });
});

function labels(result: unknown): string[] {
  const items = Array.isArray(result)
    ? result
    : ((result as { items?: unknown[] } | null)?.items ?? []);
  return (items as { label: string }[]).map(({ label }) => label);
}

describe('an editor with a YAML language server', () => {
  it.each(['practice.yaml', 'plans/P-0001.yaml', 'exercises/calf-stretch.yaml'])(
    'underlines nothing in the starting %s',
    async (path) => {
      expect(await server.open(path, readFileSync(join(folder, path), 'utf8'))).toEqual([]);
    },
  );

  it('underlines a key that is not known, and a number without its unit', async () => {
    const text =
      'exercise: wall-slide\nname: Wall slide\npurpose: strength\nposition: standing\nsides: both\nsteps:\n  - Slide\nlevels:\n  - level: one\n    dose: {reps: 8, hold: 5}\n    bound: {reps: 1-9}\n';
    const found = await server.open('exercises/wall-slide.yaml', text);
    expect(found.map(({ range }) => range.start.line).sort((a, b) => a - b)).toEqual([9, 10]);
  });

  it('takes the words of an exercise in another language for what they are', async () => {
    const text = 'exercise: calf-stretch\nlanguage: es\nname: Estirar\npurpose: stretch\n';
    const found = await server.open('exercises/calf-stretch.es.yaml', text);
    expect(found.map(({ range }) => range.start.line)).toEqual([3]);
  });

  it("offers the folder's own exercises, and the words of a closed list", async () => {
    await server.open(
      'plans/P-0002.yaml',
      'plan: P-0002\naffected: \nsessions:\n  - session: a\n    parts:\n      - part: strength\n        items:\n          - do: \n',
    );
    expect(labels(await server.ask('completion', 'plans/P-0002.yaml', 7, 16))).toEqual(
      expect.arrayContaining(['calf-stretch', 'sit-to-stand']),
    );
    expect(labels(await server.ask('completion', 'plans/P-0002.yaml', 1, 10))).toEqual(
      expect.arrayContaining(['left', 'right', 'both', 'none']),
    );
  });

  it('says what a key is for', async () => {
    await server.open('plans/P-0003.yaml', 'plan: P-0003\nweeks: 6\n');
    const hover = JSON.stringify(await server.ask('hover', 'plans/P-0003.yaml', 1, 2));
    expect(hover).toContain('weeks');
  });
});
