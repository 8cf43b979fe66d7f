/** A cache of which any file is cut, changed, or put in the place of another. */
import { cpSync, mkdirSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { differing, journalIn, OWN_FAULT, start, stateOf } from './stand.ts';
import type { Outcome, Part, Setting } from './torture.ts';

const WAYS = ['cut', 'emptied', 'flipped', 'swapped', 'gone'] as const;

export const spoiltCache: Part = {
  name: 'spoilt-cache',
  shows: 'a file of the cache that was cut, changed or swapped is made again, and the site is the same',
  usual: 6,
  run: async (setting): Promise<Outcome> => {
    const { folder, amount, random, isOver, progress } = setting;
    const cwd = join(folder, 'one');
    mkdirSync(cwd);
    await journalIn(cwd);
    await start(['build', '--content', 'van'], cwd).ended;
    const wanted = stateOf(join(cwd, 'dist'));
    cpSync(join(cwd, 'cache'), join(cwd, 'whole'), { recursive: true, preserveTimestamps: true });
    const names = readdirSync(join(cwd, 'whole'), { recursive: true, encoding: 'utf8' }).filter(
      (name) => statSync(join(cwd, 'whole', name)).isFile() && !name.startsWith('code/'),
    );
    const failures: string[] = [];
    let n = 0;
    for (; n < amount && !isOver(); n += 1) {
      rmSync(join(cwd, 'cache'), { recursive: true });
      cpSync(join(cwd, 'whole'), join(cwd, 'cache'), { recursive: true, preserveTimestamps: true });
      const [name, way, other] = [random.pick(names), random.pick(WAYS), random.pick(names)];
      spoil(join(cwd, 'cache', name), way, join(cwd, 'whole', other), setting);
      const { code, said } = await start(['build', '--content', 'van', '--out', `again-${n}`], cwd).ended;
      const odd = code === 0 ? differing(wanted, stateOf(join(cwd, `again-${n}`))) : [];
      if (code !== 0 || OWN_FAULT.test(said)) failures.push(`${name} ${way}: it ended with ${code}: ${said.trim().split('\n').at(-1)}`);
      if (odd.length > 0) failures.push(`${name} ${way} ${other}: ${odd.slice(0, 3).join(', ')}`);
      progress(`${n} of ${amount}`);
    }
    return { counts: { spoilt: n, 'files of the cache': names.length }, failures };
  },
};

function spoil(file: string, way: (typeof WAYS)[number], other: string, { random }: Setting): void {
  const bytes = readFileSync(file);
  const at = random.below(Math.max(1, bytes.length));
  if (way === 'cut') writeFileSync(file, bytes.subarray(0, at));
  if (way === 'emptied') writeFileSync(file, '');
  if (way === 'swapped') writeFileSync(file, readFileSync(other));
  if (way === 'gone') rmSync(file);
  if (way !== 'flipped') return;
  bytes[at] = (bytes[at] ?? 0) ^ (1 << random.below(8));
  writeFileSync(file, bytes);
}
