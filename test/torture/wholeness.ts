/** What is wrong with a folder after a command was stopped in it: half written, lost, or changed without being asked. */
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { isWhole, manifestOf } from '../../src/site/swap/site-folder.ts';
import { CORRECTION } from './evening.ts';
import { stateOf, sumOf } from './stand.ts';

const EMPTY = sumOf('');

/** A site is whole or not there. */
export function siteFault(cwd: string): string | null {
  const site = join(cwd, 'dist');
  if (!existsSync(site)) return null;
  const manifest = manifestOf(site);
  if (manifest === null) return 'the site has no marker';
  return isWhole(site, manifest) ? null : 'the site is not whole';
}

/** What the user put beside a site is always there. */
export function besideFault(cwd: string): string | null {
  const gone = ['CNAME', '.git/HEAD'].filter((name) => existsSync(join(cwd, 'dist')) && !existsSync(join(cwd, 'dist', name)));
  return gone.length > 0 ? `${gone.join(', ')} of the user's is gone` : null;
}

/** A folder that is there holds its file, and the file holds something. */
export function fileFault(cwd: string, folder: string, name: string): string | null {
  if (!existsSync(join(cwd, folder))) return null;
  const digest = stateOf(join(cwd, folder)).get(name);
  return digest === undefined || digest === EMPTY ? `${folder}/${name} is half written` : null;
}

/** A file is not there, or goes on to its end. */
export function endFault(cwd: string, path: string, end: RegExp): string | null {
  if (!existsSync(join(cwd, path))) return null;
  return end.test(readFileSync(join(cwd, path), 'latin1')) ? null : `${path} is half written`;
}

/** Every picture of the dump is somewhere, and whole wherever it is. */
export function dumpFault(cwd: string): string | null {
  const wanted = JSON.parse(readFileSync(join(cwd, 'dumped.json'), 'utf8')) as string[];
  const inJournal = [...stateOf(join(cwd, 'van/sessions'))].filter(([path]) => /^[^.].*\/[cde]\.jpg$/.test(path));
  const half = inJournal.find(([, digest]) => !wanted.includes(digest));
  if (half) return `${half[0]} is half written`;
  const somewhere = new Set([...inJournal.map(([, digest]) => digest), ...stateOf(join(cwd, 'dump')).values()]);
  const lost = wanted.filter((digest) => !somewhere.has(digest));
  return lost.length > 0 ? `${lost.length} of the pictures are lost` : null;
}

/** All files have the one name or all the other, unless the next run has still to finish it. */
export function renameFault(cwd: string): string | null {
  if (existsSync(join(cwd, 'van/.asfound-change/plan'))) return null;
  const files = [...stateOf(join(cwd, 'van')).keys()].filter((path) => /^(?:parts|sessions)\/[^.].*\.(?:yaml|md)$/.test(path));
  const texts = files.map((path) => readFileSync(join(cwd, 'van', path), 'utf8'));
  const isNamed = (name: string) => texts.some((text) => new RegExp(`(?:id|part|off|shows): ?\\[?${name}\\b(?!-)`).test(text));
  return isNamed('drum') && isNamed('front-drum') ? 'some files have the old name and some the new one' : null;
}

/** An archive is there with every file that its manifest lists (RFC 8493, 2.1.3), or not there. */
export function archiveFault(cwd: string): string | null {
  const bag = join(cwd, 'kept');
  if (!existsSync(bag)) return null;
  const manifest = join(bag, 'manifest-sha512.txt');
  if (!existsSync(manifest)) return 'the archive has no manifest';
  const lines = readFileSync(manifest, 'utf8').trim().split('\n');
  const bad = lines.filter((line) => !isAsListed(bag, line));
  return bad.length > 0 ? `the archive is not whole: ${bad[0]}` : null;
}

function isAsListed(bag: string, line: string): boolean {
  const [, sum = '', path = ''] = /^([0-9a-f]+) +(.+)$/.exec(line) ?? [];
  const file = join(bag, decodeURIComponent(path));
  return existsSync(file) && sumOf(readFileSync(file), 'sha512') === sum;
}

/** What was sent from the page is a whole note or none; the note that is corrected is the old one or the new one. */
export function eveningFault(cwd: string): string | null {
  const sessions = join(cwd, 'van/sessions');
  const fixed = readFileSync(join(sessions, '2031-03-02-drum.md'), 'utf8');
  if (!fixed.endsWith('\nOff it came.\n') && !fixed.endsWith(`\n${CORRECTION}\n`)) return 'the corrected note is half written';
  const state = stateOf(join(cwd, 'van'));
  const made = [...state.keys()].filter((path) => /^sessions\/2031-03-12-by-thumb(-\d+)?$/.test(path));
  if (made.length > 1) return `the note was made ${made.length} times`;
  const missing = made.flatMap((path) => ['index.md', 'drum.jpg'].map((name) => `${path}/${name}`)).filter((path) => !state.has(path));
  if (missing.length > 0) return `${missing.join(', ')} is missing`;
  const empty = [...state].find(([, digest]) => digest === EMPTY);
  return empty ? `${empty[0]} is empty` : null;
}
