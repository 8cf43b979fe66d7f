/**
 * Pictures, measured in one run: the picture stage of Asfound, a bare sharp loop that makes the same files, and
 * a plain Astro site that makes the same sizes by its own picture pipeline.
 *
 *     --count 24         how many pictures
 *     --megapixels 12    of each
 *     --seed 1952        which pictures
 *     --no-astro         leave the plain site out: its memory grows with every picture
 *     --grow 10          build ten times as many too, in a folder of their own, and compare the peak of memory
 */
import { readdirSync, statSync } from 'node:fs';
import { cp, mkdir, mkdtemp, rename, rm, symlink } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { type Aim, aimsTable } from './aims.ts';
import { measureProcess, type Usage } from './measure-process.ts';
import { WIDTH } from './report.ts';

/** The time of the bare loop. */
const AIM_OF_BARE = 0.8;
/** Flat, but for what garbage a longer run happens to hold at its peak. */
const AIM_OF_GROWTH = 1.25;
/** A second build, the start of its process included, for so many. */
const AIM_AGAIN = { seconds: 0.5, pictures: 2000 };
const PROJECT = join(import.meta.dirname, '../..');

/** Which pictures are measured, and beside what. */
export interface PictureRun {
  readonly count: number;
  readonly megapixels: number;
  readonly seed: number;
  /** The plain site as well. */
  readonly astro: boolean;
  /** So many times as many, for the peak of memory; null for none. */
  readonly grow: number | null;
}

/** Few enough to be waited for. */
export const A_FEW: PictureRun = { count: 24, megapixels: 12, seed: 1952, astro: true, grow: null };

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
  await mkdir(bench.at('cache'));
  const check = await bench.run('check.ts', 'pictures', 'cache-of-check');
  const bare = await bench.run('bare-loop.ts', 'pictures', 'bare');
  const ours = await bench.run('ours.ts', 'pictures', 'cache', 'site');
  const again = await bench.run('ours.ts', 'pictures', 'cache', 'site');
  line('bare sharp loop', bare, null);
  line('Asfound, first build', ours, bare);
  line('Asfound, second build', again, bare);
  line('Asfound, check of all headers', check, bare);
  const aims: Aim[] = [
    { what: `${count} pictures: first build, to the bare loop`, figure: ours.wall / bare.wall, below: AIM_OF_BARE, unit: '' },
  ];
  if (count >= AIM_AGAIN.pictures) {
    aims.push({ what: `${count} pictures: second build`, figure: again.wall, below: AIM_AGAIN.seconds, unit: ' s' });
  }
  if (asked.grow !== null) aims.push(await growth(bench, asked, asked.grow, ours));
  if (asked.astro) await plainSite(bench, bare);
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

/** Memory is to stay what a few pictures take, however many there are. */
async function growth(bench: Bench, asked: PictureRun, times: number, few: Usage): Promise<Aim> {
  const count = asked.count * times;
  await bench.take('many', asked, count);
  const many = await bench.run('ours.ts', 'many', 'cache-of-many', 'site-of-many');
  const again = await bench.run('ours.ts', 'many', 'cache-of-many', 'site-of-many');
  line(`Asfound, ${count} pictures`, many, null);
  line('Asfound, second build of them', again, null);
  return {
    what: `${count} pictures: peak memory, to that of ${asked.count}`,
    figure: many.peak / few.peak,
    below: AIM_OF_GROWTH,
    unit: '',
  };
}

/** Astro resolves its pictures and packages from its own folder, so the site is copied to where they are. */
async function plainSite({ at, folder }: Bench, bare: Usage): Promise<void> {
  const root = at('plain');
  await cp(join(import.meta.dirname, 'pictures/plain-site'), root, { recursive: true });
  await symlink(join(PROJECT, 'node_modules'), join(root, 'node_modules'), 'junction');
  await rename(at('pictures'), join(root, 'src/pictures'));
  const astro = join(PROJECT, 'node_modules/astro/bin/astro.mjs');
  const build = { argv: [astro, 'build', '--silent', '--root', root], env: { ASTRO_TELEMETRY_DISABLED: '1' } };
  line('plain Astro site, first build', await measureProcess(build, folder), bare);
  line('plain Astro site, second build', await measureProcess(build, folder), bare);
}

function line(what: string, usage: Usage, bare: Usage | null): void {
  const ratio = bare === null ? '' : `  × ${(usage.wall / bare.wall).toFixed(2)}`;
  const figures = [`${usage.wall.toFixed(2)} s`, `${usage.user.toFixed(2)} s CPU`, `${Math.round(usage.peak / 1e6)} MB`];
  console.log(`${what.padEnd(WIDTH)}${figures.map((one) => one.padStart(14)).join('')}${ratio}`);
}

if (import.meta.main) {
  const { values } = parseArgs({
    options: {
      count: { type: 'string', default: String(A_FEW.count) },
      megapixels: { type: 'string', default: String(A_FEW.megapixels) },
      seed: { type: 'string', default: String(A_FEW.seed) },
      'no-astro': { type: 'boolean', default: false },
      grow: { type: 'string' },
    },
  });
  const folder = await mkdtemp(join(tmpdir(), 'pictures-measured-'));
  try {
    const aims = await measurePictures(folder, {
      count: Number(values.count),
      megapixels: Number(values.megapixels),
      seed: Number(values.seed),
      astro: !values['no-astro'],
      grow: values.grow === undefined ? null : Number(values.grow),
    });
    console.log(`\n${aimsTable(aims)}`);
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}
