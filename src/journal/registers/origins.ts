import type { Attribution, IsoDate, Origin, PartId } from '../model.ts';
import { groupedBy, perRecord, type RegisterSource } from './source.ts';
import { orderedSessions } from './stays.ts';

/** What was believed of a part's origin from a day on. */
export interface Opinion {
  readonly origin: Origin | null;
  /** Why; null where the catalogue gives no evidence. */
  readonly because: string | null;
  /** From the end of this day on; null for what the catalogue says, which comes first. */
  readonly date: IsoDate | null;
  /** The note that says so; null for the catalogue. */
  readonly attribution: Attribution | null;
}

const attributions = perRecord((record) =>
  groupedBy(
    orderedSessions(record).flatMap(({ attributed }) => attributed),
    ({ part }) => part,
  ),
);

/** Every opinion on a part's origin, the catalogue's first; each stands until the next. */
export function opinionsOf(record: RegisterSource, id: PartId): readonly Opinion[] {
  const part = record.journal.parts.get(id);
  const first: Opinion = { origin: part?.origin ?? null, because: part?.evidence ?? null, date: null, attribution: null };
  const later = (attributions(record).get(id) ?? []).map(
    (attribution): Opinion => ({ origin: attribution.origin, because: attribution.because, date: attribution.date, attribution }),
  );
  return [first, ...later];
}

/** What was believed of a part's origin at the end of a day. */
export function originAt(record: RegisterSource, id: PartId, date: IsoDate): Origin | null {
  return opinionsOf(record, id).findLast((opinion) => opinion.date === null || opinion.date <= date)?.origin ?? null;
}

/** The days at whose end another origin may be believed. */
export function opinionDays(record: RegisterSource, id: PartId): readonly IsoDate[] {
  return (attributions(record).get(id) ?? []).map(({ date }) => date);
}

/** The stretches of days, first to before last, in which a part was believed to be an original; null for no beginning or no end. */
export function daysOriginal(
  record: RegisterSource,
  id: PartId,
): readonly { readonly from: IsoDate | null; readonly to: IsoDate | null }[] {
  const opinions = opinionsOf(record, id);
  return opinions.flatMap(({ origin, date }, n) => (origin === 'original' ? [{ from: date, to: opinions[n + 1]?.date ?? null }] : []));
}
