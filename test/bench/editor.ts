/**
 * How soon the language server answers in a journal of 1,000 notes: `node test/bench/editor.ts [notes]`. Each row is the
 * median of ten, in milliseconds of wall time, from the client's side of the protocol. Nothing is asserted.
 */
import { spawn } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import * as lsp from 'vscode-languageserver-protocol/node';
import { findThings } from '../../src/editor/find-things.ts';
import { keepThings, keptThings } from '../../src/editor/kept-things.ts';
import { compileJournal } from '../../src/journal/pipeline.ts';
import { loadJournal } from '../../src/load/load.ts';
import { LAST_DAY, writeJournal } from './generate.ts';

const NOTES = Number(process.argv[2] ?? 1000);
const TIMES = 10;
const PROGRAM = fileURLToPath(new URL('../../src/cli/asfound.mjs', import.meta.url));

const folder = mkdtempSync(join(tmpdir(), 'asfound-bench-'));
await writeJournal(folder, NOTES, 7);
const server = spawn(process.execPath, [PROGRAM, 'language-server', '--content', folder], { stdio: ['pipe', 'pipe', 'inherit'] });
const connection = lsp.createProtocolConnection(new lsp.StreamMessageReader(server.stdout), new lsp.StreamMessageWriter(server.stdin));
let told: (() => void) | null = null;
connection.onNotification(lsp.PublishDiagnosticsNotification.type, () => told?.());
connection.listen();

const sources = loadJournal(folder);
const notes = sources.files.filter(({ path }) => path.startsWith('sessions/'));
const path = notes[Math.floor(notes.length / 2)]?.path ?? '';
const text = readFileSync(join(folder, path), 'utf8');
const line = text.split('\n').findIndex((each) => each.includes('part:'));
const character = (text.split('\n')[line]?.indexOf('part:') ?? 0) + 6;
const uri = pathToFileURL(join(folder, path)).href;
let version = 0;

/** One change that brings a fault or takes it away, until the server tells so. */
async function change(faulty: boolean): Promise<void> {
  const answered = new Promise<void>((resolve) => {
    told = resolve;
  });
  const contentChanges = [{ text: faulty ? text.replace('part: ', 'part: zz') : text }];
  await connection.sendNotification(lsp.DidChangeTextDocumentNotification.type, {
    textDocument: { uri, version: ++version },
    contentChanges,
  });
  await answered;
}

async function median(run: (n: number) => unknown): Promise<number> {
  const taken: number[] = [];
  for (let n = 0; n < TIMES; n++) {
    const start = performance.now();
    await run(n);
    taken.push(performance.now() - start);
  }
  return taken.sort((a, b) => a - b)[TIMES / 2] ?? 0;
}

const row = (what: string, ms: number): void => console.log(`${what.padEnd(52)} ${ms.toFixed(0).padStart(6)} ms`);

const start = performance.now();
await connection.sendRequest(lsp.InitializeRequest.type, { processId: process.pid, rootUri: null, capabilities: {} });
await connection.sendNotification(lsp.InitializedNotification.type, {});
await connection.sendNotification(lsp.DidOpenTextDocumentNotification.type, {
  textDocument: { uri, languageId: 'markdown', version, text },
});
await change(true);
row(`start, until the first fault of ${NOTES} notes is told`, performance.now() - start);
for (let n = 0; n < 6; n++) await change(n % 2 === 1);
row('a change, until its faults are told (pause of typing in it)', await median((n) => change(n % 2 === 1)));
const at = { textDocument: { uri }, position: { line, character } };
await change(false);
row('what may be written', await median(() => connection.sendRequest(lsp.CompletionRequest.type, at)));
row('what a name is', await median(() => connection.sendRequest(lsp.HoverRequest.type, at)));
row(
  'all mentions',
  await median(() => connection.sendRequest(lsp.ReferencesRequest.type, { ...at, context: { includeDeclaration: true } })),
);
row('another name, its edits', await median(() => connection.sendRequest(lsp.RenameRequest.type, { ...at, newName: 'zz-other' })));
await connection.sendRequest(lsp.ShutdownRequest.type);
await connection.sendNotification(lsp.ExitNotification.type);

const { record } = compileJournal(sources, { today: LAST_DAY });
if (record !== null) keepThings(sources, record, join(folder, '.cache'));
row('find, from what is kept', await median(() => findThings(keptThings(folder, join(folder, '.cache')) ?? [], 'drum near')));
connection.dispose();
rmSync(folder, { recursive: true, force: true });
