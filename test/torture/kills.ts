/** Commands killed at a random moment. */
import { mkdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { again, trespassOf, WRITING, type Writing } from './commands.ts';
import { journalIn, start, stateOf, warmed } from './stand.ts';
import type { Outcome, Part, Setting } from './torture.ts';

/** So often the program has never run here before: all that it keeps is made first, which takes most of the time. */
const COLD_EVERY = 8;

export const kills: Part = {
  name: 'kills',
  shows: 'a kill at any moment leaves journal and site whole, nothing half written, and no rubbish after the next run',
  usual: WRITING.length,
  run: async (setting): Promise<Outcome> => {
    const counts: Record<string, number> = { killed: 0, 'ended before': 0 };
    const failures: string[] = [];
    const warm = await withCache(setting.folder);
    const longest = new Map<Writing, number>();
    for (let n = 0; n < setting.amount && !setting.isOver(); n += 1) {
      const writing = WRITING[n % WRITING.length];
      if (writing === undefined) continue;
      const cold = Math.floor(n / WRITING.length) % COLD_EVERY === COLD_EVERY - 1;
      const cwd = join(setting.folder, String(n));
      mkdirSync(cwd);
      const took = longest.get(writing) ?? (await howLong(writing, setting, warm));
      longest.set(writing, took);
      const moment = setting.random.below(cold ? took * 3 : took);
      const { killed, fault } = await killedAt(writing, moment, cwd, cold ? null : warm);
      const what = killed ? 'killed' : 'ended before';
      counts[what] = (counts[what] ?? 0) + 1;
      counts[writing.name] = (counts[writing.name] ?? 0) + 1;
      if (fault !== null) failures.push(`${writing.name}${cold ? ', cold' : ''}, killed after ${moment} of ${took} ms: ${fault}`);
      else rmSync(cwd, { recursive: true, force: true });
      setting.progress(`${n + 1} of ${setting.amount}, ${failures.length} failed`);
    }
    return { counts, failures };
  },
};

/** A folder in which the program has run. */
async function withCache(folder: string): Promise<string> {
  const cwd = join(folder, 'warm');
  mkdirSync(cwd);
  await journalIn(cwd);
  await start(['build', '--content', 'van'], cwd).ended;
  return cwd;
}

/** Milliseconds that it takes when nothing stops it. */
async function howLong(writing: Writing, { folder }: Setting, warm: string): Promise<number> {
  const cwd = join(folder, `whole ${writing.name}`);
  mkdirSync(cwd);
  warmed(cwd, warm);
  await writing.prepare(cwd);
  const started = performance.now();
  await writing.run(cwd).ended;
  rmSync(cwd, { recursive: true, force: true });
  return Math.ceil(performance.now() - started);
}

async function killedAt(writing: Writing, moment: number, cwd: string, warm: string | null) {
  if (warm !== null) warmed(cwd, warm);
  await writing.prepare(cwd);
  const before = stateOf(cwd, (path) => writing.writes.test(path));
  const { child, ended } = writing.run(cwd);
  const kill = setTimeout(() => child.kill('SIGKILL'), moment);
  const { code } = await ended;
  clearTimeout(kill);
  const fault = trespassOf(before, cwd, writing) ?? writing.check(cwd) ?? (await again(cwd, writing));
  return { killed: code === null, fault };
}
