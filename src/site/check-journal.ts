/** A journal folder to its record and every diagnostic: what each command begins with. */
import { type Diagnostic, inFileOrder } from '../journal/diagnostics/diagnostic.ts';
import type { SureRepair } from '../journal/diagnostics/repair.ts';
import type { FrozenStatement, IsoDate } from '../journal/model.ts';
import type { MadeBefore } from '../journal/pipeline.ts';
import type { JournalRecord } from '../journal/record.ts';
import { type LoadedSources, loadJournal } from '../load/load.ts';

export interface CheckedJournal {
  readonly sources: LoadedSources;
  /** Null when journal.yaml cannot be understood at all. */
  readonly record: JournalRecord | null;
  /** In file order. */
  readonly diagnostics: readonly Diagnostic[];
  /** What may be written into the files without asking. */
  readonly repairs: readonly SureRepair[];
  /** Statements that were closed after the day asked for. */
  readonly closedLater: readonly FrozenStatement[];
  /** How many notes it is told of. */
  readonly notes: number;
}

export interface CheckOptions {
  readonly today: IsoDate;
  /** The day the record is asked for; else that of its newest note. */
  readonly to?: IsoDate | null;
  /** The cache folder. */
  readonly cache: string;
  /** For whoever checks the same folder again and again. */
  readonly made?: MadeBefore | undefined;
  /** An earlier load of the same folder; what has not changed is not read again. */
  readonly before?: LoadedSources | null;
}

/**
 * Loads, compiles and checks a journal, the headers of its pictures included.
 *
 * @param folder the absolute path of the journal folder
 * @throws the error of the file system when the folder cannot be read
 */
export async function checkJournal(folder: string, { before = null, ...options }: CheckOptions): Promise<CheckedJournal> {
  return checkSources(loadJournal(folder, before), options);
}

/** The same for a folder that has been loaded. The code that compiles takes a while to load, and a check that is told again does without it. */
export async function checkSources(
  sources: LoadedSources,
  { today, to = null, cache, made }: Omit<CheckOptions, 'before'>,
): Promise<CheckedJournal> {
  const { compileJournal } = await import('../journal/pipeline.ts');
  const { record, diagnostics, repairs, closedLater } = compileJournal(sources, { today, to, before: made });
  const ofPictures = await pictureDiagnostics(sources, record, cache);
  return {
    sources,
    record,
    diagnostics: [...diagnostics, ...ofPictures].sort(inFileOrder),
    repairs,
    closedLater,
    // Notes after the day asked for are read, and nothing is told of them.
    notes:
      to === null || record === null
        ? sources.files.filter((file) => file.path.startsWith('sessions/')).length
        : record.journal.sessions.length,
  };
}

/** The code that reads pictures takes a while to load, and a journal without any does not need it. */
async function pictureDiagnostics(sources: LoadedSources, record: JournalRecord | null, cache: string): Promise<Diagnostic[]> {
  if (sources.assets.length === 0) return [];
  const { checkPictures } = await import('../photos/pictures.ts');
  const paths = sources.assets.map((asset) => asset.path);
  return checkPictures(record?.journal ?? null, paths, { root: sources.folder, cache });
}

/** Whether anything keeps the journal from being published. */
export function hasErrors(diagnostics: readonly Diagnostic[]): boolean {
  return diagnostics.some((one) => one.severity === 'error');
}
