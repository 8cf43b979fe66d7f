/** Commands that write, each with a folder to do it in, and what must hold when it was stopped anywhere. Another one is another row. */
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { isWhole, manifestOf } from '../../src/site/swap/site-folder.ts';
import { jpegTaken } from '../photos/sample-pictures.ts';
import { differing, journalIn, put, start, stateOf } from './stand.ts';

export interface Writing {
  readonly name: string;
  /** Puts the folder in order before it. */
  prepare(cwd: string): Promise<void>;
  readonly argv: readonly string[];
  /** What the command may make or change, by paths from the folder; all else is the user's and stays as it was. */
  readonly writes: RegExp;
  /** What it says when it is run again after all was done; else that something is there already. */
  readonly done?: RegExp;
  /** @returns what is wrong after it was stopped; null when all is whole */
  check(cwd: string): string | null;
}

const OWN = /^(cache|dist|\.asfound-work-dist)(\/|$)/;

/** A site is whole or not there; and what the user put beside it is always there. */
function siteFault(cwd: string): string | null {
  const site = join(cwd, 'dist');
  if (!existsSync(site)) return null;
  const manifest = manifestOf(site);
  if (manifest === null) return 'the site has no marker';
  if (!isWhole(site, manifest)) return 'the site is not whole';
  return null;
}

async function rebuilt(cwd: string): Promise<void> {
  await journalIn(cwd);
  await start(['build', '--content', 'van'], cwd).ended;
  put(cwd, 'dist/CNAME', 'example.org');
  put(cwd, 'dist/.git/HEAD', 'ref: refs/heads/main');
  put(cwd, 'van/sessions/2031-03-06-more.md', '---\ndate: 2031-03-06\ntitle: More\n---\n\nMore of it.\n');
}

export const WRITING: readonly Writing[] = [
  { name: 'build', prepare: journalIn, argv: ['build', '--content', 'van'], writes: OWN, check: siteFault },
  {
    name: 'rebuild',
    prepare: rebuilt,
    argv: ['build', '--content', 'van'],
    writes: OWN,
    check: (cwd) => {
      const gone = ['CNAME', '.git/HEAD'].filter((name) => existsSync(join(cwd, 'dist')) && !existsSync(join(cwd, 'dist', name)));
      return gone.length > 0 ? `${gone.join(', ')} of the user's is gone` : siteFault(cwd);
    },
  },
  {
    name: 'new',
    prepare: journalIn,
    argv: ['new', '--content', 'van', '--title', 'Tonight'],
    writes: /^(cache(\/|$)|van\/sessions\/(2031-03-12-tonight(-\d+)?(\/|$)|\.unfinished-))/,
    check: (cwd) => fileFault(cwd, 'van/sessions/2031-03-12-tonight', 'index.md'),
  },
  {
    name: 'new from a phone',
    prepare: (cwd) => dumpedIn(cwd, '2031:03:12'),
    argv: ['new', '--content', 'van', '--title', 'Tonight', '--from', 'dump'],
    writes: /^(cache(\/|$)|van\/sessions\/(2031-03-12-tonight(-\d+)?(\/|$)|\.unfinished-))/,
    check: (cwd) => fileFault(cwd, 'van/sessions/2031-03-12-tonight', 'index.md') ?? dumpFault(cwd),
  },
  {
    name: 'intake',
    prepare: (cwd) => dumpedIn(cwd, '2031:03:05'),
    argv: ['intake', 'dump', '--content', 'van', '--move'],
    writes: /^(cache|dump)(\/|$)|^van\/sessions\/2031-03-05-shown(\/([cde]\.jpg|\.unfinished-.*))?$/,
    check: dumpFault,
  },
  {
    name: 'rename',
    prepare: journalIn,
    argv: ['rename', 'part', 'drum', 'front-drum', '--content', 'van'],
    writes: /^(cache(\/|$)|van$|van\/(parts|sessions)(\/|$)|van\/\.asfound-change)/,
    done: /There is no part `drum`/,
    check: renameFault,
  },
  {
    name: 'init',
    prepare: async () => undefined,
    argv: ['init', 'fresh'],
    writes: /^(cache|fresh)(\/|$)/,
    check: (cwd) => (existsSync(join(cwd, 'fresh/journal.yaml')) ? fileFault(cwd, 'fresh/parts', 'brakes.yaml') : null),
  },
  {
    name: 'statement',
    prepare: journalIn,
    argv: ['statement', '--content', 'van', '--out', 'paper.csv'],
    writes: /^(cache(\/|$)|paper\.csv$|\.unfinished-)/,
    check: () => null,
  },
  {
    name: 'labels',
    prepare: journalIn,
    argv: ['labels', '--content', 'van', '--bags', '1-3', '--out', 'labels.pdf'],
    writes: /^(cache(\/|$)|labels\.pdf$|\.unfinished-)/,
    check: () => null,
  },
];

/** Three pictures of a day, as a phone leaves them; what they hold is noted beside. */
async function dumpedIn(cwd: string, day: string): Promise<void> {
  await journalIn(cwd);
  for (const [n, name] of ['c', 'd', 'e'].entries()) put(cwd, `dump/${name}.jpg`, await jpegTaken(`${day} 20:0${n}:00`, null, 200 + n));
  put(cwd, 'dumped.json', JSON.stringify([...stateOf(join(cwd, 'dump')).values()]));
}

/** Every picture is somewhere, and whole wherever it is. */
function dumpFault(cwd: string): string | null {
  const wanted = JSON.parse(readFileSync(join(cwd, 'dumped.json'), 'utf8')) as string[];
  const inJournal = [...stateOf(join(cwd, 'van/sessions'))].filter(([path]) => /^[^.].*\/[cde]\.jpg$/.test(path));
  const half = inJournal.find(([, digest]) => !wanted.includes(digest));
  if (half) return `${half[0]} is half written`;
  const somewhere = new Set([...inJournal.map(([, digest]) => digest), ...stateOf(join(cwd, 'dump')).values()]);
  const lost = wanted.filter((digest) => !somewhere.has(digest));
  return lost.length > 0 ? `${lost.length} of the pictures are lost` : null;
}

/** All files have the one name or all the other, unless the next run has still to finish it. */
function renameFault(cwd: string): string | null {
  if (existsSync(join(cwd, 'van/.asfound-change/plan'))) return null;
  const files = [...stateOf(join(cwd, 'van')).keys()].filter((path) => /^(?:parts|sessions)\/[^.].*\.(?:yaml|md)$/.test(path));
  const texts = files.map((path) => readFileSync(join(cwd, 'van', path), 'utf8'));
  const isNamed = (name: string) => texts.some((text) => new RegExp(`(?:id|part|off|shows): ?\\[?${name}\\b(?!-)`).test(text));
  return isNamed('drum') && isNamed('front-drum') ? 'some files have the old name and some the new one' : null;
}

/** A folder that is there holds its file, and the file holds something. */
function fileFault(cwd: string, folder: string, name: string): string | null {
  if (!existsSync(join(cwd, folder))) return null;
  const digest = stateOf(join(cwd, folder)).get(name);
  const empty = 'e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855';
  return digest === undefined || digest === empty ? `${folder}/${name} is half written` : null;
}

/** What a stopped command changed of the user's. */
export function trespassOf(before: ReadonlyMap<string, string>, cwd: string, { writes }: Writing): string | null {
  const changed = differing(
    before,
    stateOf(cwd, (path) => writes.test(path)),
  ).filter((path) => !writes.test(path));
  return changed.length > 0 ? `it changed ${changed.slice(0, 3).join(', ')}` : null;
}

/** What a stopped command left that the next one did not take away. */
export function rubbishIn(cwd: string): string | null {
  const left = [...stateOf(cwd, (path) => path.startsWith('cache/')).keys()].filter((path) =>
    /(^|\/)\.(asfound-work|asfound-begun|asfound-change|unfinished-)/.test(path),
  );
  return left.length > 0 ? `it left ${left.slice(0, 3).join(', ')}` : null;
}

/**
 * Runs it once more, as the user would, and sees whether that goes through and leaves nothing about.
 *
 * @returns what is wrong
 */
export async function again(cwd: string, writing: Writing): Promise<string | null> {
  const { code, said } = await start(writing.argv, cwd).ended;
  const there = (writing.done ?? /is there already|is not empty/).test(said);
  if (code !== 0 && !there) return `run again it ended with ${code}: ${said.trim().split('\n').at(-1)}`;
  return there && !writing.done ? null : (rubbishIn(cwd) ?? writing.check(cwd));
}
