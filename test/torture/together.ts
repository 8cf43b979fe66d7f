/** Processes over one journal, one site and one cache at the same time. */
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { rubbishIn } from './commands.ts';
import { differing, journalIn, OWN_FAULT, put, start, stateOf } from './stand.ts';
import type { Outcome, Part, Setting } from './torture.ts';

const ROUNDS = 2;

export const together: Part = {
  name: 'together',
  shows: 'two builds at once, into one site or two, and a build while the journal is served, come out as one alone',
  run: async (setting): Promise<Outcome> => {
    const failures: string[] = [];
    for (let n = 0; n < ROUNDS * setting.times; n += 1) {
      for (const [name, round] of Object.entries({ 'one site': intoOne, 'two sites': intoTwo, served: whileServed })) {
        const cwd = join(setting.folder, `${name}-${n}`.replace(' ', '-'));
        mkdirSync(cwd);
        await journalIn(cwd);
        const fault = (await round(cwd, setting)) ?? rubbishIn(cwd);
        if (fault !== null) failures.push(`${name}: ${fault}`);
        setting.progress(`${name} ${n}`);
      }
    }
    return { counts: { rounds: ROUNDS * setting.times, 'in each': 3 }, failures };
  },
};

/** What one build alone makes of it, with a cache of its own. */
async function alone(cwd: string): Promise<ReadonlyMap<string, string>> {
  const { code, said } = await start(['build', '--content', 'van', '--out', 'alone'], cwd, { ASFOUND_CACHE: join(cwd, 'cache-alone') })
    .ended;
  if (code !== 0) throw new Error(said);
  return stateOf(join(cwd, 'alone'));
}

async function intoOne(cwd: string, { random }: Setting): Promise<string | null> {
  const first = start(['build', '--content', 'van', '--force'], cwd);
  await new Promise((wait) => setTimeout(wait, random.below(3000)));
  const second = start(['build', '--content', 'van', '--force'], cwd);
  return same([await first.ended, await second.ended], cwd, ['dist']);
}

async function intoTwo(cwd: string): Promise<string | null> {
  const both = ['dist', `dist-${process.pid}`].map((out) => start(['build', '--content', 'van', '--out', out], cwd).ended);
  return same(await Promise.all(both), cwd, ['dist', `dist-${process.pid}`]);
}

async function whileServed(cwd: string): Promise<string | null> {
  const served = start(['dev', '--content', 'van', '--port', '0'], cwd);
  await new Promise((wait) => setTimeout(wait, 1500));
  put(cwd, 'van/sessions/2031-03-07-late.md', '---\ndate: 2031-03-07\ntitle: Late\n---\n\nLate.\n');
  const built = await start(['build', '--content', 'van'], cwd).ended;
  served.child.kill('SIGTERM');
  await served.ended;
  return same([built], cwd, ['dist']);
}

async function same(
  ended: readonly { readonly code: number | null; readonly said: string }[],
  cwd: string,
  sites: readonly string[],
): Promise<string | null> {
  const bad = ended.find(({ code, said }) => code !== 0 || OWN_FAULT.test(said));
  if (bad) return `a build ended with ${bad.code}: ${bad.said.trim().split('\n').at(-1)}`;
  const wanted = await alone(cwd);
  const odd = sites.flatMap((site) => differing(wanted, stateOf(join(cwd, site))).map((path) => `${site}/${path}`));
  return odd.length > 0 ? `not as a build alone makes it: ${odd.slice(0, 3).join(', ')}` : null;
}
