/** A small journal with pictures, papers and a film on disk, and processes of the program over it. */
import { type ChildProcess, spawn } from 'node:child_process';
import { createHash } from 'node:crypto';
import { cpSync, existsSync, lstatSync, mkdirSync, readdirSync, readFileSync, readlinkSync, symlinkSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { JOURNAL } from '../cli/journal.ts';
import { onePagePdf } from '../photos/one-page-pdf.ts';
import { film } from '../photos/sample-film.ts';
import { jpegTaken } from '../photos/sample-pictures.ts';

const LAUNCHER = fileURLToPath(new URL('../../src/cli/asfound.mjs', import.meta.url));
/** The middle of a day after all of its notes. */
const DAY = String(Date.UTC(2031, 2, 12, 12) / 1000);

const SETTINGS = JOURNAL['van/journal.yaml']?.replace('rate: 0', 'rate: 30.00').replace('[shelf A1]', '[shelf A1, shelf B2]') ?? '';

const SHOWN = `---
date: 2031-03-05
title: Shown
hours: [{ by: me, on: brakes, time: 19:00-21:00 }]
parts: [{ part: pipe, did: removed, to: shelf A1 }]
pictures: [{ file: a.jpg, shows: [drum], caption: As it came off. }, { file: b.jpg, shows: [pipe], caption: The pipe. }]
papers: [{ paper: bill.pdf, kind: receipt }]
film: [{ clip: reel.mp4, title: Strip, shows: { "0:12": drum } }]
---
![The drum](a.jpg) came off.
`;

/** Makes `van` in a folder, and `tmp` for what the program lays down outside. */
export async function journalIn(folder: string): Promise<void> {
  const beside = 'van/sessions/2031-03-05-shown';
  const files = {
    ...JOURNAL,
    'van/journal.yaml': SETTINGS,
    [`${beside}/index.md`]: SHOWN,
    [`${beside}/a.jpg`]: await pictureAt('2031:03:05 20:00:00'),
    [`${beside}/b.jpg`]: await pictureAt('2031:03:05 20:10:00'),
    [`${beside}/reel.mp4`]: film(),
    'van/papers/bill.pdf': onePagePdf(),
  };
  for (const [path, bytes] of Object.entries(files)) put(folder, path, bytes);
  mkdirSync(join(folder, 'tmp'), { recursive: true });
}

const pictures = new Map<string, Promise<Buffer>>();

/** A picture of a time, made once. */
export function pictureAt(time: string, width?: number): Promise<Buffer> {
  const key = `${time} ${width}`;
  const made = pictures.get(key) ?? jpegTaken(time, null, width);
  pictures.set(key, made);
  return made;
}

/**
 * Gives a folder the cache that another one has, as if the program had run there before. Compiled code of the program
 * itself is Node's matter, and shared.
 */
export function warmed(cwd: string, from: string): void {
  mkdirSync(join(cwd, 'cache'), { recursive: true });
  for (const name of readdirSync(join(from, 'cache'))) {
    if (name === 'code') symlinkSync(join(from, 'cache/code'), join(cwd, 'cache/code'));
    else cpSync(join(from, 'cache', name), join(cwd, 'cache', name), { recursive: true, preserveTimestamps: true });
  }
}

export function put(folder: string, path: string, bytes: string | Uint8Array): void {
  mkdirSync(dirname(join(folder, path)), { recursive: true });
  writeFileSync(join(folder, path), bytes);
}

export interface Ended {
  readonly code: number | null;
  readonly said: string;
}

export interface Started {
  readonly child: ChildProcess;
  readonly ended: Promise<Ended>;
}

/** @param node options of Node's own */
export function start(argv: readonly string[], cwd: string, env: NodeJS.ProcessEnv = {}, node: readonly string[] = []): Started {
  const own = { ASFOUND_CACHE: join(cwd, 'cache'), SOURCE_DATE_EPOCH: DAY, NODE_ENV: '' };
  const temporary = existsSync(join(cwd, 'tmp')) ? { TMPDIR: join(cwd, 'tmp') } : {};
  const all = { ...process.env, ...own, ...temporary, ...env };
  const child = spawn(process.execPath, [...node, LAUNCHER, ...argv], { cwd, env: all, stdio: ['ignore', 'pipe', 'pipe'] });
  let said = '';
  for (const stream of [child.stdout, child.stderr]) stream?.on('data', (text) => (said += String(text)));
  return { child, ended: new Promise((resolve) => child.once('close', (code) => resolve({ code, said }))) };
}

/** Everything below a folder by its path, with a digest of what it holds. */
export function stateOf(folder: string, leaveOut: (path: string) => boolean = () => false): ReadonlyMap<string, string> {
  const paths = readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter((path) => !leaveOut(path));
  return new Map(paths.sort().map((path) => [path, digestOf(join(folder, path))]));
}

function digestOf(path: string): string {
  const stat = lstatSync(path);
  if (stat.isDirectory()) return 'folder';
  if (stat.isSymbolicLink()) return `link to ${readlinkSync(path)}`;
  return sumOf(readFileSync(path));
}

export function sumOf(bytes: string | Uint8Array, algorithm = 'sha256'): string {
  return createHash(algorithm).update(bytes).digest('hex');
}

/** Paths that differ between two states. */
export function differing(a: ReadonlyMap<string, string>, b: ReadonlyMap<string, string>): string[] {
  return [...new Set([...a.keys(), ...b.keys()])].filter((path) => a.get(path) !== b.get(path));
}

/** What a fault of the program looks like, as against a refusal of the system or a fault of the journal. */
export const OWN_FAULT = /a fault of its own|\n {4}at /;
