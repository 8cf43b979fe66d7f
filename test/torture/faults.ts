/** Commands on a disk that is full, or takes no writing, from their nth change of it on. */
import { mkdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { again, trespassOf, WRITING, type Writing } from './commands.ts';
import { OWN_FAULT, start, stateOf } from './stand.ts';
import type { Outcome, Part, Setting } from './torture.ts';

const FAIL_AT = new URL('./fail-at.mjs', import.meta.url);
const FAULTS_A_COMMAND = 3;
const CODES = ['ENOSPC', 'EROFS'] as const;

export const faults: Part = {
  name: 'faults',
  shows: 'a disk that is full or takes no writing, from any call on, is told in a line and leaves all whole',
  run: async (setting): Promise<Outcome> => {
    const counts: Record<string, number> = {};
    const failures: string[] = [];
    for (const writing of WRITING) {
      for (const code of CODES) {
        const calls = await callsOf(writing, code, setting);
        const wanted = Math.min(calls, FAULTS_A_COMMAND * setting.times);
        counts[`${writing.name} ${code}`] = wanted;
        for (let n = 0; n < wanted; n += 1) {
          // Every call when there are few of them, else some at random.
          const at = wanted === calls ? n + 1 : 1 + setting.random.below(calls);
          const fault = await faultAt(writing, code, at, setting);
          if (fault !== null) failures.push(`${writing.name}, ${code} from call ${at} of ${calls}: ${fault}`);
          setting.progress(`${writing.name} ${code} ${n + 1} of ${wanted}`);
        }
      }
    }
    return { counts, failures };
  },
};

let folders = 0;

async function callsOf(writing: Writing, code: string, { folder }: Setting): Promise<number> {
  const cwd = join(folder, `f${folders++}`);
  mkdirSync(cwd);
  await writing.prepare(cwd);
  const counted = join(folder, `count-${folders}`);
  await failing(writing, code, 1e9, cwd, { ASFOUND_TORTURE_COUNT: counted });
  return Math.max(...readFileSync(counted, 'utf8').trim().split('\n').map(Number));
}

async function faultAt(writing: Writing, code: string, at: number, { folder }: Setting): Promise<string | null> {
  const cwd = join(folder, `f${folders++}`);
  mkdirSync(cwd);
  await writing.prepare(cwd);
  const before = stateOf(cwd, (path) => writing.writes.test(path));
  const { code: exit, said } = await failing(writing, code, at, cwd);
  if (OWN_FAULT.test(said)) return `a fault of the tool: ${said.trim().split('\n').at(-1)}`;
  if (exit !== 0 && exit !== 3) return `it ended with ${exit}: ${said.trim().split('\n').at(-1)}`;
  return trespassOf(before, cwd, writing) ?? writing.check(cwd) ?? (await again(cwd, writing));
}

function failing(writing: Writing, code: string, at: number, cwd: string, env: NodeJS.ProcessEnv = {}) {
  return start(writing.argv, cwd, { ...env, ASFOUND_TORTURE_FAIL: `${code} ${at} ${cwd}` }, [
    '--import',
    pathToFileURL(FAIL_AT.pathname).href,
  ]).ended;
}
