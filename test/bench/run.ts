/**
 * `npm run bench`: journals of several sizes, checked and built by Asfound and, the notes alone, by a
 * plain Astro site with the same Markdown steps, in the same run.
 *
 *     --sizes 100,1000,5000   how many sessions
 *     --repeat 1              rounds of each; the medians are printed
 *     --seed 1952             which journals
 *     --plain-only            the plain site alone
 */
import { rmSync } from 'node:fs';
import { mkdtemp } from 'node:fs/promises';
import { constants, cpus, tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { devLatency } from './dev-latency.ts';
import { perSession, sizeTable, verdict } from './report.ts';
import { type Measured, measureSize } from './rounds.ts';

/** The size the aims are set for. */
const JUDGED = 5000;
const DEV_SESSIONS = 1000;
const DEV_AIM_SECONDS = 0.5;

const { values } = parseArgs({
  options: {
    sizes: { type: 'string', default: '100,1000,5000' },
    repeat: { type: 'string', default: '1' },
    seed: { type: 'string', default: '1952' },
    'plain-only': { type: 'boolean', default: false },
  },
});
const sizes = values.sizes.split(',').map(Number);
const how = { seed: Number(values.seed), repeat: Number(values.repeat), plainOnly: values['plain-only'] };
const folder = await mkdtemp(join(tmpdir(), 'asfound-bench-'));

const cleanUp = (): void => rmSync(folder, { recursive: true, force: true, maxRetries: 3 });
for (const signal of ['SIGINT', 'SIGTERM'] as const) {
  process.once(signal, () => {
    process.once('exit', cleanUp);
    process.exit(128 + constants.signals[signal]);
  });
}

try {
  console.log(`Node ${process.versions.node}, ${cpus().length} cores; medians of ${how.repeat}. Only the ratios mean something elsewhere.`);
  console.log('Peak memory: the high-water marks of all processes of a run, added up.\n');
  const measured: Measured[] = [];
  for (const sessions of sizes) {
    const one = await measureSize(join(folder, String(sessions)), sessions, how);
    measured.push(one);
    console.log(`${sizeTable(one, sessions === JUDGED)}\n`);
  }
  reportGrowth(measured);
  if (!how.plainOnly) await reportViewsAndDev();
} finally {
  cleanUp();
}

function reportGrowth(measured: readonly Measured[]): void {
  if (measured.length < 2) return;
  console.log('What one more session costs');
  const line = (what: string, seconds: (one: Measured) => number | undefined): void => {
    const points = measured.flatMap((one) => {
      const value = seconds(one);
      return value === undefined ? [] : [{ sessions: one.sessions, seconds: value }];
    });
    if (points.length > 1) console.log(perSession(what, points));
  };
  line('Asfound: check', (one) => one.check?.first.wall);
  line('Asfound: cold build', (one) => one.cold.ours?.wall);
  line('Asfound: second build', (one) => one.second.ours?.wall);
  line('plain: cold build', (one) => one.cold.plain.wall);
  console.log('');
}

async function reportViewsAndDev(): Promise<void> {
  const { measureViews, viewsReport } = await import('./views.ts');
  const views = sizes.map((sessions) => measureViews(join(folder, String(sessions), 'journal'), sessions));
  console.log(`${viewsReport(views)}\n`);
  const seconds = await devLatency(join(folder, 'dev'), DEV_SESSIONS, how);
  const said = `${seconds.toFixed(2)} s`;
  console.log(
    `dev, ${DEV_SESSIONS} sessions: a saved note is on its page after ${said}; aim < ${DEV_AIM_SECONDS} s${verdict(seconds < DEV_AIM_SECONDS)}`,
  );
}
