/**
 * Pictures, measured in one run: the picture stage of Asfound, a bare sharp loop that makes the same files, and
 * a plain Astro site that makes the same sizes by its own picture pipeline.
 */
import { readdirSync, statSync } from 'node:fs';
import { cp, link, mkdir, rename, symlink } from 'node:fs/promises';
import { join } from 'node:path';
import type { Aim } from './aims.ts';
import { measureProcess, type Usage } from './measure-process.ts';

/** The time of the bare loop. */
const AIM_OF_BARE = 0.8;
/** Flat, but for what garbage a longer run happens to hold at its peak. */
const AIM_OF_GROWTH = 1.25;
/** A second build into a new site, beyond what it takes for one picture, for so many. */
const AIM_AGAIN = { seconds: 0.5, pictures: 2000 };
const PROJECT = join(import.meta.dirname, '../..');

/** Which pictures are measured, and beside what. */
export interface PictureRun {
  readonly count: number;
  readonly megapixels: number;
  readonly seed: number;
  /** The plain site as well: its memory grows with every picture. */
  readonly astro: boolean;
  /** The first so many of them by themselves too, for the peak of memory. */
  readonly fewer: readonly number[];
}

/** Few enough to be waited for. */
export const A_FEW: PictureRun = { count: 32, megapixels: 12, seed: 1952, astro: true, fewer: [12] };
/** Those of a whole restoration. */
export const AT_SIZE: PictureRun = { count: 2000, megapixels: 12, seed: 1952, astro: false, fewer: [60, 600] };

/**
 * Measures them and prints a line for each.
 *
 * @param folder for everything that is written; made when it is not there
 * @returns the aims that so many pictures can be judged by
 */
export async function measurePictures(folder: string, asked: PictureRun = A_FEW): Promise<Aim[]> {
  await mkdir(folder, { recursive: true });
  const bench = benchIn(folder);
  const { count } = asked;
  await bench.take('pictures', asked, count);
  const bytes = readdirSync(bench.at('pictures')).reduce((sum, name) => sum + statSync(join(bench.at('pictures'), name)).size, 0);
  console.log(`${count} pictures of ${asked.megapixels} megapixels, ${Math.round(bytes / count / 1e3)} kB each`);
  const check = await bench.run('check.ts', 'pictures', 'cache-of-check');
  const few = await peaksOfFewer(bench, asked.fewer);
  const bare = await bench.run('bare-loop.ts', 'pictures', 'bare');
  const ours = await bench.run('ours.ts', 'pictures', 'cache', 'site');
  const again = await bench.run('ours.ts', 'pictures', 'cache', 'site-again');
  const ofOne = await secondOfOne(bench);
  line('bare sharp loop', bare, null);
  line('Asfound, first build', ours, bare);
  line('Asfound, second build', again, bare);
  line('Asfound, second build of one picture', ofOne, bare);
  line('Asfound, check of all headers', check, bare);
  const some = `${count} pictures of ${asked.megapixels} MP`;
  const judged = count >= AIM_AGAIN.pictures ? AIM_AGAIN.seconds : null;
  const aims: Aim[] = [
    { what: `${some}: first build`, figure: ours.wall, below: null, unit: ' s' },
    { what: `${some}: first build, to the bare loop`, figure: ours.wall / bare.wall, below: AIM_OF_BARE, unit: '' },
    { what: `${some}: the same in user time of processors`, figure: ours.user / bare.user, below: null, unit: '' },
    { what: `${some}: peak of memory`, figure: ours.peak / 1e6, below: null, unit: ' MB' },
    ...few.map(
      ([n, peak]): Aim => ({ what: `${some}: peak of memory, to that of ${n}`, figure: ours.peak / peak, below: AIM_OF_GROWTH, unit: '' }),
    ),
    { what: `${some}: second build`, figure: again.wall, below: null, unit: ' s' },
    { what: `${some}: second build, beyond that of one`, figure: again.wall - ofOne.wall, below: judged, unit: ' s' },
  ];
  if (asked.astro) aims.push(await plainSite(bench, some, ours));
  return aims;
}

type Bench = ReturnType<typeof benchIn>;

function benchIn(folder: string) {
  const at = (name: string): string => join(folder, name);
  const start = (program: string, args: readonly string[]): Promise<Usage> =>
    measureProcess({ argv: [join(import.meta.dirname, 'pictures', program), ...args], env: {} }, folder);
  return {
    folder,
    at,
    /** Runs one of the programs over folders of the bench. */
    run: (program: string, ...names: readonly string[]): Promise<Usage> => start(program, names.map(at)),
    /** Takes pictures, in a process of its own: a child is charged with what its parent held when it was started. */
    take: (name: string, { megapixels, seed }: PictureRun, count: number): Promise<Usage> =>
      start('camera.ts', [at(name), String(count), String(megapixels), String(seed)]),
  };
}

/** The start of the process, and what does not grow with the pictures. */
async function secondOfOne(bench: Bench): Promise<Usage> {
  await firstOf(bench, 1);
  await bench.run('ours.ts', 'first-1', 'cache-of-1', 'site-of-1');
  return bench.run('ours.ts', 'first-1', 'cache-of-1', 'site-again-of-1');
}

/** The first so many of the pictures, in a folder of their own. */
async function firstOf({ at }: Bench, count: number): Promise<void> {
  const names = readdirSync(at('pictures')).sort().slice(0, count);
  await mkdir(at(`first-${count}`));
  for (const name of names) await link(join(at('pictures'), name), join(at(`first-${count}`), name));
}

/** Memory is to stay what a few pictures take, however many there are. */
async function peaksOfFewer(bench: Bench, counts: readonly number[]): Promise<(readonly [count: number, peak: number])[]> {
  const peaks: (readonly [number, number])[] = [];
  for (const count of counts) {
    await firstOf(bench, count);
    const { peak } = await bench.run('ours.ts', `first-${count}`, `cache-of-${count}`, `site-of-${count}`);
    peaks.push([count, peak]);
  }
  return peaks;
}

/** Astro resolves its pictures and packages from its own folder, so the site is copied to where they are. */
async function plainSite({ at, folder }: Bench, some: string, ours: Usage): Promise<Aim> {
  const root = at('plain');
  await cp(join(import.meta.dirname, 'pictures/plain-site'), root, { recursive: true });
  await symlink(join(PROJECT, 'node_modules'), join(root, 'node_modules'), 'junction');
  await rename(at('pictures'), join(root, 'src/pictures'));
  const astro = join(PROJECT, 'node_modules/astro/bin/astro.mjs');
  const build = { argv: [astro, 'build', '--silent', '--root', root], env: { ASTRO_TELEMETRY_DISABLED: '1' } };
  const plain = await measureProcess(build, folder);
  line('plain Astro site, first build', plain, null);
  return { what: `${some}: first build, to Astro by itself`, figure: ours.wall / plain.wall, below: null, unit: '' };
}

function line(what: string, usage: Usage, bare: Usage | null): void {
  const ratio = bare === null ? '' : `  × ${(usage.wall / bare.wall).toFixed(2)}`;
  const figures = [`${usage.wall.toFixed(2)} s`, `${usage.user.toFixed(2)} s CPU`, `${Math.round(usage.peak / 1e6)} MB`];
  console.log(`${what.padEnd(50)}${figures.map((one) => one.padStart(14)).join('')}${ratio}`);
}
