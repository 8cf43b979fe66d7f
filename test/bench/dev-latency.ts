import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { readdir, readFile, writeFile } from 'node:fs/promises';
import { createServer } from 'node:net';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { asfoundDev } from './contenders.ts';
import { writeJournal } from './generate.ts';
import { median } from './measure-process.ts';

const POLL_MS = 20;
const START_MS = 120_000;
const SHOWN_MS = 30_000;
const SAVES = 5;

/**
 * How long a saved note takes to be on the page that `asfound dev` serves, in seconds: the median of five saves, each of
 * another note. It is seen as an open page sees it: told to load again, it asks for itself.
 *
 * @throws when the server does not start or the change never shows
 */
export async function devLatency(folder: string, sessions: number, how: { readonly seed: number }): Promise<number> {
  const journal = join(folder, 'journal');
  await writeJournal(journal, sessions, how.seed);
  const port = await freePort();
  const { argv, env } = asfoundDev(journal, join(folder, 'ours'), port);
  const server = spawn(process.execPath, argv, { env: { ...process.env, ...env }, stdio: 'ignore' });
  try {
    const notes = (await readdir(join(journal, 'sessions'))).sort();
    const chosen = Array.from({ length: SAVES }, (_, n) => notes[Math.floor(((n + 0.5) * notes.length) / SAVES)] ?? '');
    const times: number[] = [];
    const origin = `http://127.0.0.1:${port}`;
    for (const note of chosen) times.push(await saveAndSee(join(journal, 'sessions', note), { origin, note }));
    return median(times);
  } finally {
    await stop(server);
  }
}

async function saveAndSee(file: string, { origin, note }: { readonly origin: string; readonly note: string }): Promise<number> {
  const page = `${origin}/sessions/${note.replace(/\.md$/, '')}.html`;
  await seen(page, '', START_MS);
  const told = await listening(origin);
  const mark = `Saved as number ${Math.floor(performance.now())}.`;
  const text = await readFile(file, 'utf8');
  const start = performance.now();
  await writeFile(file, `${text}\n${mark}\n`);
  await told.toLoadAgain;
  await seen(page, mark, SHOWN_MS);
  const seconds = (performance.now() - start) / 1000;
  told.close();
  return seconds;
}

/** Listens as the script in every served page does. */
async function listening(origin: string): Promise<{ readonly toLoadAgain: Promise<void>; close(): void }> {
  const script = await (await fetch(`${origin}/@vite/client`)).text();
  const token = /wsToken = "([^"]+)"/.exec(script)?.[1] ?? '';
  const socket = new WebSocket(`${origin.replace('http', 'ws')}/?token=${token}`, 'vite-hmr');
  const toLoadAgain = new Promise<void>((resolve) => {
    socket.addEventListener('message', ({ data }) => {
      if (JSON.parse(String(data)).type === 'full-reload') resolve();
    });
  });
  await once(socket, 'open');
  return { toLoadAgain, close: () => socket.close() };
}

async function seen(page: string, text: string, limit: number): Promise<void> {
  const end = performance.now() + limit;
  while (performance.now() < end) {
    const html = await fetch(page).then(
      (answer) => (answer.ok ? answer.text() : null),
      () => null,
    );
    if (html?.includes(text)) return;
    await sleep(POLL_MS);
  }
  throw new Error(`${page} did not show ${text === '' ? 'at all' : `"${text}"`} within ${limit / 1000} s.`);
}

async function freePort(): Promise<number> {
  const probe = createServer().listen(0, '127.0.0.1');
  await once(probe, 'listening');
  const address = probe.address();
  probe.close();
  await once(probe, 'close');
  if (address === null || typeof address === 'string') throw new Error('No port to be had.');
  return address.port;
}

async function stop(server: ChildProcess): Promise<void> {
  if (server.exitCode !== null) return;
  server.kill('SIGTERM');
  await once(server, 'exit');
}
