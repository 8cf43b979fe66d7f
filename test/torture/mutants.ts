/** Files of a journal with accidents in them: each is answered at its place, in a moment, and nothing throws. */
import { mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { Worker } from 'node:worker_threads';
import { onePagePdf } from '../photos/one-page-pdf.ts';
import { film } from '../photos/sample-film.ts';
import { orientedJpeg } from '../photos/sample-pictures.ts';
import type { Mutant, Verdict } from './mutant-worker.ts';
import { mutated } from './mutate.ts';
import { smallJournal } from './small-journal.ts';
import type { Outcome, Part, Setting } from './torture.ts';

const DEMO = fileURLToPath(new URL('../../content/', import.meta.url));
/** One in so many is of the demo, whose journal takes far longer to compile. */
const DEMO_EVERY = 25;
/** One in so many is a picture, a paper or a film. */
const BINARY_EVERY = 10;
/** Longer than any answer may take, so that one that never comes is noticed. */
const NEVER_MS = 30_000;

/** One of these goes through accidents. */
interface Subject {
  readonly of: Mutant['of'];
  readonly sort: string;
  readonly path: string;
  readonly bytes: Buffer;
}

export const mutants: Part = {
  name: 'mutants',
  shows: 'no file with accidents in it makes the program throw, or keeps it busy for two seconds; each answer has its place',
  usual: 4000,
  run: async (setting) => judge(mutantsBy(setting, await sampleBytes()), setting),
};

/** Sorts take turns, so that each has its share however many files are of it. */
function* mutantsBy({ amount, random }: Setting, binaries: readonly Subject[]): Generator<Mutant> {
  const [demo, small, bytes] = [demoTexts(), smallTexts(), binaries].map((subjects) => [
    ...Map.groupBy(subjects, ({ sort }) => sort).values(),
  ]);
  for (let n = 0; n < amount; n += 1) {
    const from = (n % DEMO_EVERY === 0 ? demo : n % BINARY_EVERY === 1 ? bytes : small) ?? [];
    const subject = random.pick(random.pick(from));
    yield { ...subject, bytes: mutated(subject.bytes, random, random.pick(random.pick(from)).bytes) };
  }
}

function smallTexts(): Subject[] {
  return smallJournal().files.map(({ path, bytes }) => ({ of: 'small', sort: sortOf(path), path, bytes: Buffer.from(bytes) }));
}

function demoTexts(): Subject[] {
  const names = readdirSync(DEMO, { recursive: true, encoding: 'utf8' }).filter(
    (name) => /\.(md|yaml|svg)$/.test(name) && !name.startsWith('scenes'),
  );
  return names
    .filter((name) => statSync(join(DEMO, name)).isFile())
    .map((name) => ({ of: 'demo', sort: sortOf(name), path: name, bytes: readFileSync(join(DEMO, name)) }));
}

function sortOf(path: string): string {
  const [top = ''] = path.split('/');
  return path.includes('/') ? top : path;
}

async function sampleBytes(): Promise<Subject[]> {
  const heic = readFileSync(new URL('../photos/fixtures/turned-by-its-container.heic', import.meta.url));
  const papers = readdirSync(join(DEMO, 'papers')).filter((name) => name.endsWith('.pdf'));
  return [
    { of: 'small', sort: 'jpeg', path: 'sessions/a/a.jpg', bytes: await orientedJpeg(6) },
    { of: 'small', sort: 'heic', path: 'sessions/a/a.heic', bytes: heic },
    { of: 'small', sort: 'pdf', path: 'papers/a.pdf', bytes: onePagePdf() },
    ...papers
      .slice(0, 3)
      .map((name): Subject => ({ of: 'small', sort: 'pdf', path: 'papers/a.pdf', bytes: readFileSync(join(DEMO, 'papers', name)) })),
    { of: 'small', sort: 'film', path: 'sessions/a/a.mp4', bytes: film() },
  ];
}

/** A worker answers one after the other; one that never does is ended, and another goes on. */
async function judge(list: Iterable<Mutant>, { folder, amount, isOver, progress }: Setting): Promise<Outcome> {
  const counts: Record<string, number> = {};
  const failures: string[] = [];
  let slowest = 0;
  let worker = workerIn(folder);
  let n = 0;
  for (const mutant of list) {
    if (isOver()) break;
    if (n % 100 === 0) progress(`${n} of ${amount}, ${failures.length} failed`);
    n += 1;
    counts[mutant.sort] = (counts[mutant.sort] ?? 0) + 1;
    const verdict = await verdictOf(worker, mutant);
    slowest = Math.max(slowest, verdict?.ms ?? NEVER_MS);
    if (verdict === null || verdict.ended) worker = workerIn(folder);
    const fault = verdict === null ? 'no answer' : (verdict.fault ?? (verdict.ms > 2000 ? `${Math.round(verdict.ms)} ms` : null));
    if (fault !== null)
      failures.push(`${mutant.sort}: ${fault.replaceAll('\n', ' ').slice(0, 300)}; kept in ${keep(mutant, failures.length)}`);
  }
  await worker.terminate();
  return { counts: { mutants: n, ...counts, 'slowest ms': Math.round(slowest) }, failures };
}

function workerIn(folder: string): Worker {
  return new Worker(new URL('./mutant-worker.ts', import.meta.url), { workerData: { folder, demo: DEMO } });
}

function verdictOf(worker: Worker, mutant: Mutant): Promise<Verdict | null> {
  return new Promise((resolve) => {
    const never = setTimeout(() => void worker.terminate().then(() => resolve(null)), NEVER_MS);
    const done = (verdict: Verdict): void => {
      clearTimeout(never);
      worker.off('message', done).off('error', died);
      resolve(verdict);
    };
    const died = (error: unknown): void => done({ ms: 0, fault: `it ended the thread: ${error}`, ended: true });
    worker.once('message', done).once('error', died);
    worker.postMessage(mutant);
  });
}

/** What failed is kept, to be looked at. */
function keep({ path, bytes }: Mutant, n: number): string {
  const folder = join(process.cwd(), 'node_modules/.cache/asfound-torture');
  mkdirSync(folder, { recursive: true });
  const file = join(folder, `${n}-${path.replaceAll('/', '-')}`);
  writeFileSync(file, bytes);
  return file;
}
