/** The whole of compiling, its stages in order. No stage throws on what a user wrote. */
import { CHECKS } from './check/check.ts';
import { compile } from './compile/compile.ts';
import { doubtsOf, withoutEchoes } from './compile/doubts.ts';
import { type KnownSessions, knownSessions } from './compile/known-sessions.ts';
import { stockInDoubt } from './compile/stock-in-doubt.ts';
import { recordDay, upTo } from './compile/up-to.ts';
import { type Diagnostic, inFileOrder } from './diagnostics/diagnostic.ts';
import type { SureRepair } from './diagnostics/repair.ts';
import { ledgerOf } from './ledger/ledger.ts';
import type { FrozenStatement, IsoDate, PartId } from './model.ts';
import { type KnownFiles, readFiles } from './read/read-files.ts';
import { reporter } from './read/reporter.ts';
import type { Sources } from './read/source/sources.ts';
import { type JournalRecord, WORKSHOP } from './record.ts';
import { contradictions } from './registers/contradictions.ts';
import { replay } from './replay/replay.ts';

export interface Compiled {
  /** Null only when journal.yaml was not understood; with errors it holds what could be understood. */
  readonly record: JournalRecord | null;
  /** In file order. */
  readonly diagnostics: readonly Diagnostic[];
  /** What may be written into the files without asking. */
  readonly repairs: readonly SureRepair[];
  /** Statements that were closed after the day asked for. */
  readonly closedLater: readonly FrozenStatement[];
}

/** What was made of the files of a journal, for whoever compiles it again and again. It takes memory for as long as they do. */
export interface MadeBefore {
  readonly files: KnownFiles;
  readonly sessions: KnownSessions;
}

/** Nothing yet. */
export function nothingMade(): MadeBefore {
  return { files: new WeakMap(), sessions: knownSessions() };
}

export interface CompileOptions {
  readonly today: IsoDate;
  readonly to?: IsoDate | null;
  readonly before?: MadeBefore | undefined;
}

/**
 * Compiles a journal: content → read → compile → replay → ledger → check → registers.
 *
 * @param sources the files as they lie on disk
 * @param options.today the day of compiling. It does one thing: a later date is an error
 * @param options.to the record is made as it stood at the end of this day, from the notes up to it; else on the day of
 *   the newest note
 * @param options.before what has not changed is not made again; what is made now is added
 */
export function compileJournal(sources: Sources, { today, to = null, before = nothingMade() }: CompileOptions): Compiled {
  const out = reporter();
  out.diagnostics.push(...sources.problems);
  const read = readFiles(sources, out, before.files);
  const journal = compile(read, sources, out, before.sessions);
  const positionOf = (part: PartId) => journal?.parts.get(part)?.position ?? part;
  const told = (all: readonly Diagnostic[]) => withoutEchoes(all, read, doubtsOf(read, all), positionOf).sort(inFileOrder);
  if (journal === null) return { record: null, diagnostics: told(out.diagnostics), repairs: out.repairs, closedLater: [] };
  const { known, later, closedLater } = upTo(journal, to);
  const replayed = replay(known);
  const booked = ledgerOf(known, stockInDoubt(read, known, out.diagnostics));
  const record: JournalRecord = {
    journal: known,
    history: replayed.history,
    ledger: booked.ledger,
    day: recordDay(known, to),
    copy: WORKSHOP,
  };
  const whole = later.size === 0 ? record : { journal, history: replay(journal).history };
  out.diagnostics.push(...replayed.diagnostics, ...booked.diagnostics);
  for (const check of [...CHECKS, contradictions]) out.diagnostics.push(...check(record, { today, whole }));
  return { record, diagnostics: told(out.diagnostics).filter(({ place }) => !later.has(place.file)), repairs: out.repairs, closedLater };
}
