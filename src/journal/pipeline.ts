/** The whole of compiling, its stages in order. No stage throws on what a user wrote. */
import { CHECKS } from './check/check.ts';
import { compile } from './compile/compile.ts';
import { reporter } from './compile/context.ts';
import { doubtsOf, withoutEchoes } from './compile/doubts.ts';
import { readFiles } from './compile/read-files.ts';
import { stockInDoubt } from './compile/stock-in-doubt.ts';
import { type Diagnostic, inFileOrder } from './diagnostics/diagnostic.ts';
import { ledgerOf } from './ledger/ledger.ts';
import type { IsoDate, PartId } from './model.ts';
import type { JournalRecord } from './record.ts';
import { replay } from './replay/replay.ts';
import type { Sources } from './source/sources.ts';

export interface Compiled {
  /** Null only when journal.yaml was not understood; with errors it holds what could be understood. */
  readonly record: JournalRecord | null;
  /** In file order. */
  readonly diagnostics: readonly Diagnostic[];
}

/**
 * Compiles a journal: content → read → compile → replay → ledger → check.
 *
 * @param sources the files as they lie on disk
 * @param options.today the day the record is made; later dates are errors
 */
export function compileJournal(sources: Sources, { today }: { readonly today: IsoDate }): Compiled {
  const out = reporter();
  out.diagnostics.push(...sources.problems);
  const read = readFiles(sources, out);
  const journal = compile(read, sources, out);
  const positionOf = (part: PartId) => journal?.parts.get(part)?.position ?? part;
  const told = (all: readonly Diagnostic[]) => withoutEchoes(all, read, doubtsOf(read, all), positionOf).sort(inFileOrder);
  if (journal === null) return { record: null, diagnostics: told(out.diagnostics) };
  const replayed = replay(journal);
  const booked = ledgerOf(journal, stockInDoubt(read, journal, out.diagnostics));
  const record: JournalRecord = { journal, history: replayed.history, ledger: booked.ledger, today };
  out.diagnostics.push(...replayed.diagnostics, ...booked.diagnostics);
  for (const check of CHECKS) out.diagnostics.push(...check(record));
  return { record, diagnostics: told(out.diagnostics) };
}
