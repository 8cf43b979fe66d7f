/** Commands killed at a random moment. */
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { again, trespassOf, WRITING } from './commands.ts';
import { start, stateOf } from './stand.ts';
import type { Outcome, Part } from './torture.ts';

const KILLS_A_COMMAND = 4;

export const kills: Part = {
  name: 'kills',
  shows: 'a kill at any moment leaves journal and site whole, nothing half written, and no rubbish after the next run',
  run: async ({ folder, times, random, progress }): Promise<Outcome> => {
    const counts: Record<string, number> = {};
    const failures: string[] = [];
    for (const writing of WRITING) {
      let longest = 0;
      for (let n = 0; n <= KILLS_A_COMMAND * times; n += 1) {
        const cwd = join(folder, `${writing.name}-${n}`);
        mkdirSync(cwd);
        await writing.prepare(cwd);
        const before = stateOf(cwd, (path) => writing.writes.test(path));
        const started = performance.now();
        const { child, ended } = start(writing.argv, cwd);
        // The first is let run, to know how long it takes.
        const moment = random.below(Math.max(1, Math.ceil(longest)));
        const kill = n === 0 ? undefined : setTimeout(() => child.kill('SIGKILL'), moment);
        const { code } = await ended;
        clearTimeout(kill);
        if (n === 0) longest = performance.now() - started;
        else if (code === null) counts[writing.name] = (counts[writing.name] ?? 0) + 1;
        const fault = trespassOf(before, cwd, writing) ?? writing.check(cwd) ?? (await again(cwd, writing));
        if (fault !== null) failures.push(`${writing.name}, killed after ${n === 0 ? 'the end' : `${moment} ms`}: ${fault}`);
        progress(`${writing.name} ${n}`);
      }
    }
    return { counts, failures };
  },
};
