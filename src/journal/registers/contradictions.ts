import { type Diagnostic, diagnostic } from '../diagnostics/diagnostic.ts';
import type { Mismatch } from './mismatches.ts';
import { mismatchesAt } from './mismatches.ts';
import type { RegisterSource } from './source.ts';
import { deedsOf } from './stays.ts';

/** A701 for each decision in force that what is on the vehicle rules out at the end of the record. */
export function contradictions(record: RegisterSource): Diagnostic[] {
  return mismatchesAt(record, null).map((mismatch) =>
    diagnostic('A701', mismatch.decision.place, `${mismatch.position}: ${mismatch.words}`, {
      hint: mismatch.settle.join(' '),
      related: fittedBy(record, mismatch),
    }),
  );
}

/** The entry that fitted what stands against the decision; none for what stood there as found. */
function fittedBy(record: RegisterSource, { part, position, since }: Mismatch): Diagnostic['related'] {
  const deed = deedsOf(record, part).findLast(
    ({ did, session, to }) => did === 'fitted' && session === since.session && to.at === 'fitted' && to.position === position,
  );
  return deed ? [{ place: deed.entry.place, message: `${part} was fitted here on ${since.date}` }] : [];
}
