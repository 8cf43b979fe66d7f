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
import { cpus, tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { measureProcess, type Usage } from './measure-process.ts';
import { verdict, WIDTH } from './report.ts';

/** Aims: the share of the bare loop's speed that is kept, and seconds of a second build for this many pictures. */
const AIM_OF_BARE = 0.9;
/** Flat, but for what garbage a longer run happens to hold at its peak. */
const AIM_OF_GROWTH = 1.25;
const AIM_AGAIN = { seconds: 2, pictures: 2000 };

const { values } = parseArgs({
  options: {
    count: { type: 'string', default: '24' },
    megapixels: { type: 'string', default: '12' },
    seed: { type: 'string', default: '1952' },
    'no-astro': { type: 'boolean', default: false },
    grow: { type: 'string' },
  },
});
const count = Number(values.count);
const PROJECT = join(import.meta.dirname, '../..');
const folder = await mkdtemp(join(tmpdir(), 'pictures-measured-'));
const at = (name: string): string => join(folder, name);

try {
  // In a process of its own: a child is charged with what its parent held when it was started.
  await run('camera.ts', [at('pictures'), String(count), values.megapixels, values.seed]);
  const bytes = readdirSync(at('pictures')).reduce((sum, name) => sum + statSync(join(at('pictures'), name)).size, 0);
  console.log(
    `Node ${process.versions.node}, ${cpus().length} cores; ${count} pictures of ${values.megapixels} megapixels, ${Math.round(bytes / count / 1e3)} kB each.`,
  );
  console.log('Peak memory: the high-water marks of all processes of a run, added up.\n');
  await mkdir(at('cache'));
  const check = await run('check.ts', [at('pictures'), at('cache-of-check')]);
  const bare = await run('bare-loop.ts', [at('pictures'), at('bare')]);
  const ours = await run('ours.ts', [at('pictures'), at('cache'), at('site')]);
  const again = await run('ours.ts', [at('pictures'), at('cache'), at('site')]);
  line('bare sharp loop', bare, null);
  line('Asfound, first build', ours, bare);
  line('Asfound, second build', again, bare);
  line('Asfound, check of all headers', check, bare);
  if (!values['no-astro']) await plainSite(bare);
  const share = bare.wall / ours.wall;
  console.log(`\nfirst build at ${share.toFixed(2)} of the bare loop's speed; aim ${AIM_OF_BARE}${verdict(share >= AIM_OF_BARE)}`);
  const judged = count >= AIM_AGAIN.pictures ? verdict(again.wall < AIM_AGAIN.seconds) : '';
  console.log(
    `second build of ${count}: ${again.wall.toFixed(2)} s, the start of the process included; aim < ${AIM_AGAIN.seconds} s for ${AIM_AGAIN.pictures}${judged}`,
  );
  if (values.grow !== undefined) await growth(ours, Number(values.grow));
} finally {
  await rm(folder, { recursive: true, force: true });
}

function run(program: string, args: readonly string[]): Promise<Usage> {
  return measureProcess({ argv: [join(import.meta.dirname, 'pictures', program), ...args], env: {} }, folder);
}

/** Memory is to stay what a few pictures take, however many there are. */
async function growth(few: Usage, times: number): Promise<void> {
  await run('camera.ts', [at('many'), String(count * times), values.megapixels, values.seed]);
  const many = await run('ours.ts', [at('many'), at('cache-of-many'), at('site-of-many')]);
  const again = await run('ours.ts', [at('many'), at('cache-of-many'), at('site-of-many')]);
  line(`Asfound, ${count * times} pictures`, many, null);
  line('Asfound, second build of them', again, null);
  const share = many.peak / few.peak;
  console.log(
    `\npeak memory of ${count * times} pictures is ${share.toFixed(2)} of that of ${count}; aim ${AIM_OF_GROWTH}${verdict(share <= AIM_OF_GROWTH)}`,
  );
}

/** Astro resolves its pictures and packages from its own folder, so the site is copied to where they are. */
async function plainSite(bare: Usage): Promise<void> {
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
