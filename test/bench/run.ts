/**
 * `npm run bench`: journals of several sizes, checked and built by Asfound and, the notes alone, by a plain Astro site with
 * the same Markdown steps, in the same run; what `dev` takes to show a note; and pictures. A table of all aims ends it.
 *
 *     one-evening             the build after one note more, alone; or sizes, dev, pictures, handed-over: that part alone
 *     --sizes 100,600,5000    how many sessions
 *     --repeat 1              rounds of each; the medians are printed
 *     --seed 1952             which journals
 *     --plain-only            the plain site alone
 */
import { rmSync } from 'node:fs';
import { mkdtemp } from 'node:fs/promises';
import { constants, cpus, tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { type Aim, aimsTable } from './aims.ts';
import { devLatency } from './dev-latency.ts';
import { measureHandedOver } from './handed-over.ts';
import { measurePictures } from './pictures.ts';
import { aimsOf, perSession, sizeTable } from './report.ts';
import { type Measured, measureSize } from './rounds.ts';

/** Aims for builds are judged from here on: below it, the start of a process is most of it. */
const JUDGED_FROM = 600;
const DEV_SESSIONS = 1000;
const DEV_AIM_SECONDS = 0.2;
const PARTS = ['sizes', 'one-evening', 'dev', 'pictures', 'handed-over'] as const;
type Part = (typeof PARTS)[number];

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    sizes: { type: 'string' },
    repeat: { type: 'string', default: '1' },
    seed: { type: 'string', default: '1952' },
    'plain-only': { type: 'boolean', default: false },
  },
});
const asked = positionals.map((name) => {
  const part = PARTS.find((one) => one === name);
  if (part === undefined) throw new RangeError(`${name} is no part of it; these are: ${PARTS.join(', ')}.`);
  return part;
});
/** The build after an evening is one of those that `sizes` measures; what is handed over of a long journal takes long, and is asked for. */
const UNASKED: readonly Part[] = ['one-evening', 'handed-over'];
const isAsked = (part: Part): boolean => (asked.length === 0 ? !UNASKED.includes(part) : asked.includes(part));
const sizes = (values.sizes ?? (isAsked('sizes') ? '100,600,5000' : '600,5000')).split(',').map(Number);
const how = { seed: Number(values.seed), repeat: Number(values.repeat), plainOnly: values['plain-only'], eveningOnly: !isAsked('sizes') };
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
  const aims: Aim[] = [];
  if (isAsked('sizes') || isAsked('one-evening')) aims.push(...(await reportSizes()));
  if (isAsked('sizes') && !how.plainOnly) await reportViews();
  if (isAsked('dev') && !how.plainOnly) aims.push(await aimOfDev());
  if (isAsked('pictures') && !how.plainOnly) aims.push(...(await measurePictures(join(folder, 'pictures'))));
  if (isAsked('handed-over')) aims.push(...(await measureHandedOver(join(folder, 'handed-over'))));
  console.log(`\n${aimsTable(aims)}`);
} finally {
  cleanUp();
}

async function reportSizes(): Promise<Aim[]> {
  const measured: Measured[] = [];
  for (const sessions of sizes) {
    const one = await measureSize(join(folder, String(sessions)), sessions, how);
    measured.push(one);
    console.log(`${sizeTable(one)}\n`);
  }
  reportGrowth(measured);
  return measured.filter(({ sessions }) => sessions >= JUDGED_FROM).flatMap(aimsOf);
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
  line('Asfound: second build', (one) => one.second?.ours?.wall);
  line('Asfound: after one evening', (one) => one.evening.ours?.wall);
  line('plain: cold build', (one) => one.cold.plain.wall);
  console.log('');
}

async function reportViews(): Promise<void> {
  const { measureViews, viewsReport } = await import('./views.ts');
  const views = sizes.map((sessions) => measureViews(join(folder, String(sessions), 'journal'), sessions));
  console.log(`${viewsReport(views)}\n`);
}

async function aimOfDev(): Promise<Aim> {
  const figure = await devLatency(join(folder, 'dev'), DEV_SESSIONS, how);
  return { what: `dev, ${DEV_SESSIONS} sessions: a saved note is on its page`, figure, below: DEV_AIM_SECONDS, unit: ' s' };
}
