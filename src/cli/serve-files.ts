/** Answers what is no page while a journal is served, and says which addresses are pages: those of the site, and nothing else of the program. */
import { existsSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import type { IncomingMessage, ServerResponse } from 'node:http';
import { extname, join } from 'node:path';
import { pathWithin } from '../disk/path-within.ts';
import { dataFilesOf } from '../exports/data-files.ts';
import type { JournalRecord } from '../journal/record.ts';
import type { PicturePlan } from '../photos/plan.ts';
import type { OnDemand } from '../photos/render-on-demand.ts';
import { fileAddress, RECORD_SCRIPTS } from '../site/addresses.ts';
import { clipFiles } from '../site/place-clips.ts';
import { PROGRAM } from '../site/tool-digest.ts';
import { packagesFolder } from '../site/workshop.ts';
import { sendClip } from './send-clip.ts';

export interface ServedFiles {
  /** The journal folder. */
  readonly folder: string;
  /** Scripts, served from here. */
  readonly files: string;
  /** Pictures are rendered when a page asks for them. */
  readonly pictures: OnDemand;
  readonly plan: PicturePlan;
  readonly record: JournalRecord | null;
}

/**
 * Answers a request for anything but a page.
 *
 * @returns the address that Astro knows a page by; null when the request has been answered
 */
export async function answer(served: ServedFiles, request: IncomingMessage, response: ServerResponse): Promise<string | null> {
  const path = pathOf(request.url ?? '/');
  const clip = path === null ? null : clipAt(served, path);
  if (clip !== null) {
    sendClip(clip, request, response);
    return null;
  }
  const found = path === null ? null : await fileAt(served, path);
  if (found !== null) {
    response.setHeader('Content-Type', found.type);
    response.end(found.body);
    return null;
  }
  const asked = path === null ? null : knownTo(path);
  if (asked === null) response.writeHead(404, { 'Content-Type': 'text/plain' }).end('There is no such page.\n');
  return asked;
}

/** Lets pass what can be read as an address of this server: two slashes at its beginning would name another. */
export function refuseMalformed(request: IncomingMessage, response: ServerResponse, next: () => void): void {
  const url = request.url ?? '/';
  if (pathOf(url) === null || /^[/\\]{2}/.test(url)) response.writeHead(400, { 'Content-Type': 'text/plain' }).end('That is no address.\n');
  else next();
}

/** Without its first slash and what stands behind it; null when it is badly encoded. */
function pathOf(url: string): string | null {
  try {
    return decodeURIComponent(url.split(/[?#]/)[0] ?? '').slice(1);
  } catch {
    return null;
  }
}

/** What a page loads of the server itself, to be told of changes. */
const OF_THE_SERVER = new Set([
  '@vite/client',
  `@fs${packagesFolder()
    .replaceAll('\\', '/')
    .replace(/^(?!\/)/, '/')}/vite/dist/client/env.mjs`,
]);

const OF_THE_RECORD: ReadonlySet<string> = new Set(Object.values(RECORD_SCRIPTS));

/** Astro's own addresses have no ending; ours name files, here as in the built site. Questions behind an address could ask for sources. */
function knownTo(path: string): string | null {
  if (OF_THE_SERVER.has(path)) return `/${path}`;
  if (OF_THE_RECORD.has(path)) return `/${path}`;
  if (path === '' || /^[a-z0-9/-]+\.html$/.test(path)) return `/${path.replace(/(?:index)?\.html$/, '')}`;
  try {
    return existsSync(pathWithin(join(PROGRAM, 'public'), path)) ? `/${path}` : null;
  } catch {
    return null;
  }
}

const TYPES: Readonly<Record<string, string>> = {
  '.js': 'text/javascript',
  '.csv': 'text/csv; charset=utf-8',
  '.xlsx': 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet',
  '.jpg': 'image/jpeg',
  '.webp': 'image/webp',
  '.pdf': 'application/pdf',
};

/** The file of a clip of the journal; null for any other address. */
function clipAt({ record, folder }: ServedFiles, path: string): string | null {
  const clip = record ? clipFiles(record.journal).find((file) => fileAddress(file) === path) : undefined;
  return clip === undefined ? null : join(folder, clip);
}

async function fileAt(served: ServedFiles, path: string): Promise<{ type: string; body: string | Uint8Array } | null> {
  const type = TYPES[extname(path)] ?? 'application/octet-stream';
  const { record } = served;
  const data = record && dataFilesOf(record).find((each) => each.path === path);
  if (record && data) return { type, body: await data.make(record) };
  const picture = /^(?:pictures|papers)\//.test(path) ? await served.pictures.fileFor(served.plan, path) : null;
  if (picture !== null) return { type, body: await readFile(picture) };
  return /^scripts\/[a-z-]+\.js$/.test(path) && existsSync(join(served.files, path))
    ? { type, body: await readFile(join(served.files, path)) }
    : null;
}
