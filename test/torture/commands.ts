/** Commands that write, each with a folder to do it in, and what must hold when it was stopped anywhere. Another one is another row. */
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { writingAnEvening } from './evening.ts';
import { differing, journalIn, pictureAt, put, type Started, start, stateOf } from './stand.ts';
import { archiveFault, besideFault, dumpFault, endFault, eveningFault, fileFault, renameFault, siteFault } from './wholeness.ts';

export interface Writing {
  readonly name: string;
  /** Puts the folder in order before it. */
  prepare(cwd: string): Promise<void>;
  /** @param node options of Node's own */
  run(cwd: string, env?: NodeJS.ProcessEnv, node?: readonly string[]): Started;
  /** What the command may make or change, by paths from the folder; all else is the user's and stays as it was. */
  readonly writes: RegExp;
  /** What it says when it is run again after all was done; else that something is there already. */
  readonly done?: RegExp;
  /** @returns what is wrong after it was stopped; null when all is whole */
  check(cwd: string): string | null;
}

/** What is the program's own, wherever it writes: a cache, and what it lays down outside while it works. */
const OWN = /^(cache|tmp)(\/|$)/;
const SITE = /^(cache|tmp|dist|\.asfound-work-dist)(\/|$)/;
const NOTE = /^van\/sessions\/(2031-03-12-[a-z0-9-]+(\/|$)|\.unfinished-)/;

const command =
  (...argv: readonly string[]): Writing['run'] =>
  (cwd, env, node) =>
    start(argv, cwd, env, node);

const either = (...patterns: readonly RegExp[]): RegExp => new RegExp(patterns.map(({ source }) => `(?:${source})`).join('|'));

export const WRITING: readonly Writing[] = [
  { name: 'build', prepare: journalIn, run: command('build', '--content', 'van'), writes: SITE, check: siteFault },
  {
    name: 'rebuild',
    prepare: rebuilt,
    run: command('build', '--content', 'van'),
    writes: SITE,
    check: (cwd) => besideFault(cwd) ?? siteFault(cwd),
  },
  {
    name: 'new',
    prepare: journalIn,
    run: command('new', '--content', 'van', '--title', 'Tonight'),
    writes: either(OWN, NOTE),
    check: (cwd) => fileFault(cwd, 'van/sessions/2031-03-12-tonight', 'index.md'),
  },
  {
    name: 'new from a phone',
    prepare: (cwd) => dumpedIn(cwd, '2031:03:12'),
    run: command('new', '--content', 'van', '--title', 'Tonight', '--from', 'dump'),
    writes: either(OWN, NOTE),
    check: (cwd) => fileFault(cwd, 'van/sessions/2031-03-12-tonight', 'index.md') ?? dumpFault(cwd),
  },
  {
    name: 'write',
    prepare: journalIn,
    run: writingAnEvening,
    writes: either(
      OWN,
      NOTE,
      /^van\/papers\/(seller\.pdf$|\.unfinished-)/,
      /^van\/sessions\/2031-03-02-drum\.md$/,
      /^van\/(papers|sessions)$/,
    ),
    check: eveningFault,
  },
  {
    name: 'intake',
    prepare: (cwd) => dumpedIn(cwd, '2031:03:05'),
    run: command('intake', 'dump', '--content', 'van', '--move'),
    writes: /^(cache|dump|tmp)(\/|$)|^van\/sessions\/2031-03-05-shown(\/([cde]\.jpg|\.unfinished-.*))?$/,
    check: dumpFault,
  },
  {
    name: 'rename',
    prepare: journalIn,
    run: command('rename', 'part', 'drum', 'front-drum', '--content', 'van'),
    writes: either(OWN, /^(van$|van\/(parts|sessions)(\/|$)|van\/\.asfound-change)/),
    done: /There is no part `drum`/,
    check: renameFault,
  },
  {
    name: 'move',
    prepare: journalIn,
    run: command('move', 'shelf A1', 'to', 'shelf B2', '--content', 'van'),
    writes: either(OWN, NOTE),
    done: /nothing lies on shelf A1/,
    check: (cwd) => fileFault(cwd, 'van/sessions/2031-03-12-everything-from-shelf-a1-to-shelf-b2', 'index.md'),
  },
  {
    name: 'init',
    prepare: async () => undefined,
    run: command('init', 'fresh'),
    writes: /^(cache|fresh)(\/|$)/,
    check: (cwd) => (existsSync(join(cwd, 'fresh/journal.yaml')) ? fileFault(cwd, 'fresh/parts', 'brakes.yaml') : null),
  },
  {
    name: 'statement',
    prepare: journalIn,
    run: command('statement', '--content', 'van', '--out', 'paper.csv'),
    writes: either(OWN, /^(paper\.csv$|\.unfinished-)/),
    check: (cwd) => endFault(cwd, 'paper.csv', /\n$/),
  },
  {
    name: 'statement --close',
    prepare: journalIn,
    run: command('statement', '--content', 'van', '--close', '--out', 'sent.pdf'),
    writes: either(OWN, /^(sent\.pdf$|\.unfinished-|van\/statements(\/|$)|van$)/),
    done: /nothing to close|is there already/,
    check: (cwd) => endFault(cwd, 'van/statements/0001.yaml', /\n$/) ?? endFault(cwd, 'sent.pdf', /%%EOF\s*$/),
  },
  {
    name: 'archive',
    prepare: journalIn,
    run: command('archive', '--content', 'van', '--out', 'kept'),
    writes: either(OWN, /^(kept(\/|$)|\.unfinished-)/),
    check: archiveFault,
  },
  {
    name: 'archive as one file',
    prepare: journalIn,
    run: command('archive', '--content', 'van', '--out', 'kept.zip'),
    writes: either(OWN, /^(kept\.zip$|\.unfinished-)/),
    // The end of the central directory, of 22 bytes with no comment behind it (APPNOTE, 4.3.16).
    check: (cwd) => endFault(cwd, 'kept.zip', /PK[\s\S]{20}$/),
  },
  {
    name: 'labels',
    prepare: journalIn,
    run: command('labels', '--content', 'van', '--bags', '1-3', '--out', 'labels.pdf'),
    writes: either(OWN, /^(labels\.pdf$|\.unfinished-)/),
    check: (cwd) => endFault(cwd, 'labels.pdf', /%%EOF\s*$/),
  },
];

async function rebuilt(cwd: string): Promise<void> {
  await journalIn(cwd);
  await start(['build', '--content', 'van'], cwd).ended;
  put(cwd, 'dist/CNAME', 'example.org');
  put(cwd, 'dist/.git/HEAD', 'ref: refs/heads/main');
  put(cwd, 'van/sessions/2031-03-06-more.md', '---\ndate: 2031-03-06\ntitle: More\n---\n\nMore of it.\n');
}

/** Three pictures of a day, as a phone leaves them; what they hold is noted beside. */
async function dumpedIn(cwd: string, day: string): Promise<void> {
  await journalIn(cwd);
  for (const [n, name] of ['c', 'd', 'e'].entries()) put(cwd, `dump/${name}.jpg`, await pictureAt(`${day} 20:0${n}:00`, 200 + n));
  put(cwd, 'dumped.json', JSON.stringify([...stateOf(join(cwd, 'dump')).values()]));
}

/** What a stopped command changed of the user's. */
export function trespassOf(before: ReadonlyMap<string, string>, cwd: string, { writes }: Writing): string | null {
  const now = stateOf(cwd, (path) => writes.test(path));
  const changed = differing(before, now).filter((path) => !writes.test(path));
  return changed.length > 0 ? `it changed ${changed.slice(0, 3).join(', ')}` : null;
}

/** Names of what is begun, anywhere; pictures and notes that can be made again are swept when they are old. */
const BEGUN = /(^|\/)\.?(asfound-(work|begun|change|archive|book)|unfinished-)|\.unfinished-/;
const SWEPT_LATER = /^cache\/(?!drafts\/)/;

/** What a stopped command left that the next one did not take away. */
export function rubbishIn(cwd: string): string | null {
  const left = [...stateOf(cwd, (path) => SWEPT_LATER.test(path)).keys()].filter((path) => BEGUN.test(path) || /^tmp\/./.test(path));
  return left.length > 0 ? `it left ${left.slice(0, 3).join(', ')}` : null;
}

/**
 * Runs it once more, as the user would, and sees whether that goes through and leaves nothing about.
 *
 * @returns what is wrong
 */
export async function again(cwd: string, writing: Writing): Promise<string | null> {
  const { code, said } = await writing.run(cwd).ended;
  const there = (writing.done ?? /is there already|is not empty/).test(said);
  if (code !== 0 && !there) return `run again it ended with ${code}: ${said.trim().split('\n').at(-1)}`;
  return there && !writing.done ? null : (rubbishIn(cwd) ?? writing.check(cwd));
}
