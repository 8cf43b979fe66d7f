/** The thread that answers mutants: a journal is compiled with one in it, a picture, paper or film looked at and cleaned. */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { parentPort, workerData } from 'node:worker_threads';
import { DATA_FILES } from '../../src/exports/data-files.ts';
import { CATALOGUE } from '../../src/journal/diagnostics/catalogue.ts';
import type { Diagnostic } from '../../src/journal/diagnostics/diagnostic.ts';
import { compileJournal, nothingMade } from '../../src/journal/pipeline.ts';
import type { JournalRecord } from '../../src/journal/record.ts';
import { type LoadedSources, loadJournal } from '../../src/load/load.ts';
import { noteContexts } from '../../src/markdown/note-context.ts';
import { renderNote } from '../../src/markdown/render.ts';
import { cleanFilm } from '../../src/photos/clean-film.ts';
import { cleanJpeg } from '../../src/photos/clean-jpeg.ts';
import { cleanPdf } from '../../src/photos/clean-pdf.ts';
import { inspectFile } from '../../src/photos/inspect-file.ts';
import { NO_PICTURES } from '../../src/photos/plan.ts';
import { smallJournal } from './small-journal.ts';

export interface Mutant {
  /** Which journal it is of. */
  readonly of: 'demo' | 'small';
  readonly sort: string;
  readonly path: string;
  readonly bytes: Uint8Array;
}

export interface Verdict {
  /** Of this thread's own work, whatever else the machine does. */
  readonly ms: number;
  readonly fault: string | null;
  /** True when the thread is no more. */
  readonly ended?: boolean;
}

const { folder, demo } = workerData as { readonly folder: string; readonly demo: string };
const whole = loadJournal(demo);
/** Of the notes of the demo few; it is the words that count. */
const few = whole.files.filter(({ path }, n) => !path.startsWith('sessions/') || n % 12 === 0);
const journals = { demo: { ...whole, files: few }, small: smallJournal() };
/** A note that has not changed is not read again, as while a journal is served. */
const before = nothingMade();

parentPort?.on('message', (mutant: Mutant) => {
  const before = process.threadCpuUsage();
  const tell = (fault: string | null): void => {
    const { user, system } = process.threadCpuUsage(before);
    parentPort?.postMessage({ ms: (user + system) / 1000, fault } satisfies Verdict);
  };
  answer(mutant).then(tell, (error: unknown) => tell(error instanceof Error ? (error.stack ?? error.message) : String(error)));
});

async function answer({ of, sort, path, bytes }: Mutant): Promise<string | null> {
  if (!['jpeg', 'heic', 'pdf', 'film'].includes(sort)) return compiled(journals[of], path, bytes);
  const file = join(folder, path.replaceAll('/', '-'));
  writeFileSync(file, bytes);
  if (sort === 'film') cleanFilm(file);
  else await inspectFile(path, file);
  if (sort === 'jpeg') cleanJpeg(bytes);
  if (sort === 'pdf') await cleanPdf(bytes);
  return null;
}

/** The journal with this file in the place of its own, or beside its own. */
async function compiled(journal: LoadedSources, path: string, bytes: Uint8Array): Promise<string | null> {
  const mutant = { path, bytes, size: bytes.length, mtimeMs: 0 };
  const others = journal.files.filter((file) => file.path !== path);
  const sources: LoadedSources = { ...journal, files: [...others, mutant].sort((a, b) => (a.path < b.path ? -1 : 1)) };
  const { record, diagnostics } = compileJournal(sources, { today: '2099-12-31', before });
  const odd = diagnostics.map((each) => oddityOf(each, sources)).find((each) => each !== null);
  if (odd) return odd;
  return record === null || diagnostics.some(({ severity }) => severity === 'error') ? null : published(record, path);
}

function oddityOf({ code, place, message, hint }: Diagnostic, { files, assets }: LoadedSources): string | null {
  if (!Object.hasOwn(CATALOGUE, code)) return `no code ${code}`;
  const there =
    place.file === 'journal.yaml' || files.some(({ path }) => path === place.file) || assets.some(({ path }) => path === place.file);
  if (!there || !(place.line >= 1) || !(place.column >= 1)) return `${code} has no place: ${JSON.stringify(place)}`;
  return /\[object |native code|\bundefined\b/.test(`${message} ${hint ?? ''}`) ? `${code} says: ${message} ${hint}` : null;
}

/** What a sound journal makes of it. */
async function published(record: JournalRecord, path: string): Promise<string | null> {
  const session = record.journal.sessions.find(({ file }) => file === path);
  const html = session ? renderNote(session.body, noteContexts(record, NO_PICTURES)(session)).html : '';
  const tables = await Promise.all(DATA_FILES.filter(({ path: name }) => name.endsWith('.csv')).map(({ make }) => make(record)));
  const text = [html, ...tables].join('\n');
  if (/<script|<style|<iframe|\son[a-z]+=|javascript:/i.test(html))
    return `its page holds ${/<script|<style|<iframe|\son[a-z]+=|javascript:/i.exec(html)?.[0]}`;
  return /[^\P{Cc}\t\n\r]/u.test(text) ? 'a control character is published' : null;
}
