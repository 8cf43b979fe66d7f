/** An editor's side of the protocol, by a client library of its own, over the standard streams of the program. */
import { spawn } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { onTestFinished } from 'vitest';
import * as lsp from 'vscode-languageserver-protocol/node';

const PROGRAM = fileURLToPath(new URL('../../src/cli/asfound.mjs', import.meta.url));

/** `|` stands where the cursor is. */
export interface Typed {
  readonly text: string;
  readonly position: lsp.Position;
}

export function typed(marked: string): Typed {
  const at = marked.indexOf('|');
  const lines = marked.slice(0, at).split('\n');
  return { text: marked.replace('|', ''), position: { line: lines.length - 1, character: lines.at(-1)?.length ?? 0 } };
}

export class Client {
  readonly connection: lsp.ProtocolConnection;
  readonly #folder: string;
  readonly #faults = new Map<string, lsp.PublishDiagnosticsParams>();
  readonly #waiting = new Set<() => void>();
  /** What the server had shown in a message. */
  readonly shown: string[] = [];
  #version = 0;

  constructor(folder: string, connection: lsp.ProtocolConnection) {
    this.#folder = folder;
    this.connection = connection;
    connection.onNotification(lsp.ShowMessageNotification.type, ({ message }) => void this.shown.push(message));
    connection.onNotification(lsp.PublishDiagnosticsNotification.type, (told) => {
      this.#faults.set(told.uri, told);
      for (const look of this.#waiting) look();
    });
  }

  uri(path: string): string {
    return pathToFileURL(join(this.#folder, path)).href;
  }

  async open(path: string, text = readFileSync(join(this.#folder, path), 'utf8')): Promise<void> {
    const languageId = path.endsWith('.md') ? 'markdown' : 'yaml';
    const textDocument = { uri: this.uri(path), languageId, version: ++this.#version, text };
    await this.connection.sendNotification(lsp.DidOpenTextDocumentNotification.type, { textDocument });
  }

  async change(path: string, text: string): Promise<void> {
    const textDocument = { uri: this.uri(path), version: ++this.#version };
    await this.connection.sendNotification(lsp.DidChangeTextDocumentNotification.type, { textDocument, contentChanges: [{ text }] });
  }

  /** The faults told of a file, as soon as they are such as are waited for. */
  faults(path: string, areMeant: (codes: readonly string[]) => boolean): Promise<lsp.Diagnostic[]> {
    return new Promise((resolve) => {
      const look = (): void => {
        const told = this.#faults.get(this.uri(path));
        if (told === undefined || !areMeant(told.diagnostics.map(({ code }) => String(code)))) return;
        this.#waiting.delete(look);
        resolve(told.diagnostics);
      };
      this.#waiting.add(look);
      look();
    });
  }

  spot(path: string, position: lsp.Position): lsp.TextDocumentPositionParams {
    return { textDocument: { uri: this.uri(path) }, position };
  }

  /** What is offered where `|` stands in a file, as `label: what it is called`. */
  async offered(path: string, marked: string): Promise<string[]> {
    const { text, position } = typed(marked);
    await this.change(path, text);
    const found = await this.connection.sendRequest(lsp.CompletionRequest.type, this.spot(path, position));
    const items = found === null ? [] : Array.isArray(found) ? found : found.items;
    return items.map(({ label, detail }) => (detail === undefined ? label : `${label}: ${detail}`));
  }

  relative(uri: string): string {
    return uri.slice(this.uri('').length).replace(/^\//, '');
  }
}

/** Starts the program on a journal; it ends with the test. */
export async function connected(
  folder: string,
  capabilities: lsp.ClientCapabilities = {},
  opened?: Pick<lsp.InitializeParams, 'rootUri' | 'workspaceFolders'>,
): Promise<Client> {
  const { client, end } = await started(folder, capabilities, opened);
  onTestFinished(end);
  return client;
}

/** Starts the program on a journal, for several tests. @returns what ends it, and fails unless it ends well */
export async function started(
  folder: string,
  capabilities: lsp.ClientCapabilities = {},
  opened: Pick<lsp.InitializeParams, 'rootUri' | 'workspaceFolders'> = asFolders(folder),
): Promise<{ client: Client; end(): Promise<void> }> {
  const server = spawn(process.execPath, [PROGRAM, 'language-server', '--stdio'], {
    cwd: folder,
    env: { ...process.env, ASFOUND_CACHE: join(folder, '.cache') },
    stdio: ['pipe', 'pipe', 'inherit'],
  });
  const connection = lsp.createProtocolConnection(new lsp.StreamMessageReader(server.stdout), new lsp.StreamMessageWriter(server.stdin));
  connection.listen();
  const ended = new Promise<number | null>((resolve) => server.on('exit', resolve));
  const end = async (): Promise<void> => {
    await connection.sendRequest(lsp.ShutdownRequest.type);
    await connection.sendNotification(lsp.ExitNotification.type);
    if ((await ended) !== 0) throw new Error('the server did not end well');
    connection.dispose();
  };
  const client = new Client(folder, connection);
  await connection.sendRequest(lsp.InitializeRequest.type, { processId: process.pid, capabilities, ...opened });
  await connection.sendNotification(lsp.InitializedNotification.type, {});
  return { client, end };
}

function asFolders(folder: string): Pick<lsp.InitializeParams, 'rootUri' | 'workspaceFolders'> {
  const uri = pathToFileURL(folder).href;
  return { rootUri: uri, workspaceFolders: [{ uri, name: 'van' }] };
}
