/** Commands on a disk that is full, or takes no writing, from their nth change of it on. */
import { mkdirSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { again, trespassOf, WRITING, type Writing } from './commands.ts';
import { journalIn, OWN_FAULT, start, stateOf, warmed } from './stand.ts';
import type { Outcome, Part, Setting } from './torture.ts';

const FAIL_AT = new URL('./fail-at.mjs', import.meta.url);
const CODES = ['ENOSPC', 'EROFS'] as const;

interface Failing {
  readonly writing: Writing;
  readonly code: (typeof CODES)[number];
  /** How often it changes the disk when nothing fails. */
  readonly calls: number;
}

export const faults: Part = {
  name: 'faults',
  shows: 'a disk that is full or takes no writing, from any call on, is told in a line and leaves all whole',
  usual: WRITING.length * CODES.length,
  run: async (setting): Promise<Outcome> => {
    const counts: Record<string, number> = {};
    const failures: string[] = [];
    const warm = join(setting.folder, 'warm');
    mkdirSync(warm);
    await journalIn(warm);
    await start(['build', '--content', 'van'], warm).ended;
    const all: Failing[] = [];
    for (const writing of WRITING)
      for (const code of CODES) all.push({ writing, code, calls: await callsOf(writing, code, setting, warm) });
    for (let n = 0; n < setting.amount && !setting.isOver(); n += 1) {
      const one = all[n % all.length];
      if (one === undefined) continue;
      const at = whichCall(one.calls, Math.floor(n / all.length), Math.ceil(setting.amount / all.length), setting);
      const fault = await faultAt(one, at, setting, warm);
      counts[one.writing.name] = (counts[one.writing.name] ?? 0) + 1;
      if (fault !== null) failures.push(`${one.writing.name}, ${one.code} from call ${at} of ${one.calls}: ${fault}`);
      setting.progress(`${n + 1} of ${setting.amount}, ${failures.length} failed`);
    }
    return { counts, failures };
  },
};

/** Every call in its turn where there are few of them, else some at random. */
function whichCall(calls: number, round: number, rounds: number, { random }: Setting): number {
  return calls <= rounds ? (round % calls) + 1 : 1 + random.below(calls);
}

let folders = 0;

async function inFolder<T>(
  { writing }: Pick<Failing, 'writing'>,
  { folder }: Setting,
  warm: string,
  use: (cwd: string) => Promise<T>,
): Promise<T> {
  const cwd = join(folder, `f${folders++}`);
  mkdirSync(cwd);
  warmed(cwd, warm);
  await writing.prepare(cwd);
  const result = await use(cwd);
  rmSync(cwd, { recursive: true, force: true });
  return result;
}

function callsOf(writing: Writing, code: Failing['code'], setting: Setting, warm: string): Promise<number> {
  const counted = join(setting.folder, `count-${folders}`);
  return inFolder({ writing }, setting, warm, async (cwd) => {
    await failing({ writing, code }, 1e9, cwd, { ASFOUND_TORTURE_COUNT: counted }).ended;
    return Math.max(...readFileSync(counted, 'utf8').trim().split('\n').map(Number));
  });
}

function faultAt(one: Failing, at: number, setting: Setting, warm: string): Promise<string | null> {
  const { writing } = one;
  return inFolder(one, setting, warm, async (cwd) => {
    const before = stateOf(cwd, (path) => writing.writes.test(path));
    const { code: exit, said } = await failing(one, at, cwd).ended;
    if (OWN_FAULT.test(said)) return `a fault of the tool: ${said.trim().split('\n').at(-1)}`;
    if (exit !== 0 && exit !== 3) return `it ended with ${exit}: ${said.trim().split('\n').at(-1)}`;
    return trespassOf(before, cwd, writing) ?? writing.check(cwd) ?? (await again(cwd, writing));
  });
}

function failing({ writing, code }: Omit<Failing, 'calls'>, at: number, cwd: string, env: NodeJS.ProcessEnv = {}) {
  const options = ['--import', pathToFileURL(FAIL_AT.pathname).href];
  return writing.run(cwd, { ...env, ASFOUND_TORTURE_FAIL: `${code} ${at} ${cwd}` }, options);
}
