import { notConfirmedAt, type WentBack } from '../../../journal/registers/goes-back.ts';
import { type UnrecordedLists, unrecordedAt } from '../../../journal/registers/unrecorded.ts';
import type { RecordSheet } from '../page/sheet.ts';

export interface UnrecordedPage extends UnrecordedLists {
  /** What went back and nobody said whether as it was. */
  readonly unconfirmed: readonly WentBack[];
}

export function unrecordedPage({ record }: RecordSheet): UnrecordedPage {
  return { ...unrecordedAt(record, null), unconfirmed: notConfirmedAt(record, null) };
}
