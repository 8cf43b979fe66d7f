/** Processes over one journal, one site and one cache at the same time. */
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { rubbishIn } from './commands.ts';
import { writingAnEvening } from './evening.ts';
import { differing, journalIn, OWN_FAULT, put, start, stateOf } from './stand.ts';
import type { Outcome, Part, Setting } from './torture.ts';
import { eveningFault, siteFault } from './wholeness.ts';

export const together: Part = {
  name: 'together',
  shows: 'two builds at once, into one site or two, and a build while the journal is served or written to, come out as one alone',
  usual: 2,
  run: async (setting): Promise<Outcome> => {
    const failures: string[] = [];
    const counts: Record<string, number> = {};
    for (let n = 0; n < setting.amount; n += 1) {
      for (const [name, round] of Object.entries(ROUNDS)) {
        if (setting.isOver()) return { counts, failures };
        counts[name] = (counts[name] ?? 0) + 1;
        const cwd = join(setting.folder, `${name}-${n}`.replace(' ', '-'));
        mkdirSync(cwd);
        await journalIn(cwd);
        const fault = (await round(cwd, setting)) ?? rubbishIn(cwd);
        if (fault !== null) failures.push(`${name}: ${fault}`);
        setting.progress(`${name} ${n}`);
      }
    }
    return { counts, failures };
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

/** The page writes a note and corrects another one while the site is made; made once more, the site shows them. */
async function whileWritten(cwd: string, { random }: Setting): Promise<string | null> {
  const evening = writingAnEvening(cwd);
  await new Promise((wait) => setTimeout(wait, random.below(3000)));
  const during = await start(['build', '--content', 'van'], cwd).ended;
  const written = await evening.ended;
  const fault = siteFault(cwd) ?? eveningFault(cwd);
  if (fault !== null) return fault;
  return same([during, written, await start(['build', '--content', 'van'], cwd).ended], cwd, ['dist']);
}

const ROUNDS = { 'one site': intoOne, 'two sites': intoTwo, served: whileServed, 'being written': whileWritten };

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
