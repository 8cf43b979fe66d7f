import { type Diagnostic, diagnostic } from '../diagnostics/diagnostic.ts';
import type { PositionId, Whereabouts } from '../model.ts';
import type { Mismatch } from './mismatches.ts';
import { mismatchesAt } from './mismatches.ts';
import type { RegisterSource } from './source.ts';
import { deedsOf } from './stays.ts';

/** A701 for each decision in force that the facts rule out at the end of the record. */
export function contradictions(record: RegisterSource): Diagnostic[] {
  return mismatchesAt(record, null).map((mismatch) =>
    diagnostic('A701', mismatch.decision.place, `${mismatch.position}: ${mismatch.words}`, {
      hint: mismatch.settle.join(' '),
      related: doneBy(record, mismatch),
    }),
  );
}

/** The entry that fitted what stands against the decision, or sent away what was to be kept; none for what stood there as found. */
function doneBy(record: RegisterSource, { kind, part, position, since }: Mismatch): Diagnostic['related'] {
  const deed = deedsOf(record, part).findLast(
    ({ session, to }) => session === since.session && (kind === 'gone' ? to.at === 'gone' : isAt(to, position)),
  );
  const what = kind === 'gone' ? 'went' : 'was fitted here';
  return deed ? [{ place: deed.entry.place, message: `${part} ${what} on ${since.date}` }] : [];
}

/** At the position, on the vehicle or in a part that is off it. */
function isAt(where: Whereabouts, position: PositionId): boolean {
  return (where.at === 'fitted' || where.at === 'in') && where.position === position;
}
