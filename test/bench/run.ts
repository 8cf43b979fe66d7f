/**
 * `npm run bench`: what Asfound takes beside a plain Astro site with the same Markdown steps and beside a bare sharp loop,
 * all in one run, and one table of every figure, met or missed where there is an aim.
 *
 *     one-evening check       these parts alone; parts that take long are run only where they are named
 *     --sizes 100,600,5000    how many sessions; the first serves for what a session adds
 *     --scale 1               so much of everything else; less to try the bench itself
 *     --seed 1952             which journals
 *     --full                  twenty years in their whole size; else a fourth of the evenings
 *     --plain-only            builds of the plain site alone
 *     --details               tell what the parts have to say besides, on the error stream
 */
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { readFileSync, rmSync } from 'node:fs';
import { mkdtemp } from 'node:fs/promises';
import { constants, cpus, loadavg, tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { type Aim, aimsTable } from './aims.ts';
import { type How, type Turn, turnsOf } from './parts.ts';

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    sizes: { type: 'string', default: '100,600,5000' },
    scale: { type: 'string', default: '1' },
    seed: { type: 'string', default: '1952' },
    full: { type: 'boolean', default: false },
    'plain-only': { type: 'boolean', default: false },
    details: { type: 'boolean', default: false },
  },
});
const how: How = {
  seed: Number(values.seed),
  sizes: values.sizes.split(',').map(Number),
  plainOnly: values['plain-only'],
  scale: Number(values.scale),
  full: values.full,
};
const turns = turnsOf(positionals);
const folder = await mkdtemp(join(tmpdir(), 'asfound-bench-'));

const cleanUp = (): void => rmSync(folder, { recursive: true, force: true, maxRetries: 3 });
for (const signal of ['SIGINT', 'SIGTERM'] as const) {
  process.once(signal, () => {
    process.once('exit', cleanUp);
    process.exit(128 + constants.signals[signal]);
  });
}

try {
  const start = performance.now();
  const busy = loadavg()[0] ?? 0;
  const aims: Aim[] = [];
  for (const turn of turns) {
    console.error(`${turn.parts.join(', ')} …`);
    aims.push(...(await run(turn)));
  }
  const minutes = ((performance.now() - start) / 60_000).toFixed(1);
  console.log(
    `Node ${process.versions.node}, ${cpus().length} cores, load ${busy.toFixed(1)} when it began; ${minutes} minutes. Only the ratios mean something elsewhere.`,
  );
  console.log('Peak of memory: the high-water marks of all processes of a run, added up.\n');
  console.log(aimsTable(aims));
} finally {
  cleanUp();
}

async function run(turn: Turn): Promise<Aim[]> {
  const figures = join(folder, `${turn.name}.json`);
  const program = join(import.meta.dirname, 'run-turn.ts');
  const child = spawn(process.execPath, [program, JSON.stringify(turn), folder, JSON.stringify(how), figures], {
    stdio: ['ignore', values.details ? process.stderr : 'ignore', 'inherit'],
  });
  const stop = (): boolean => child.kill();
  process.once('exit', stop);
  const [code] = await once(child, 'close');
  process.off('exit', stop);
  if (code !== 0) throw new Error(`${turn.parts.join(', ')} ended with ${code}.`);
  const told = JSON.parse(readFileSync(figures, 'utf8')) as Aim[];
  rmSync(join(folder, turn.name), { recursive: true, force: true, maxRetries: 3 });
  return told;
}
