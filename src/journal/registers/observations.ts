import type { Condition, IsoDate, PartEntry, PartId, SessionId } from '../model.ts';
import { perRecord, type RegisterSource } from './source.ts';
import { orderedSessions } from './stays.ts';

/** Something seen of a part and written down in an entry: its condition, its marks, its finish. */
export interface Observation {
  readonly part: PartId;
  readonly date: IsoDate;
  readonly session: SessionId;
  readonly condition: Condition | null;
  readonly marks: string | null;
  readonly finish: string | null;
  readonly entry: PartEntry;
}

const byPart = perRecord((record) => {
  const seen = new Map<PartId, Observation[]>();
  for (const { id: session, date, parts } of orderedSessions(record)) {
    for (const entry of parts) {
      const { part, condition, marks, finish } = entry;
      if (condition === null && marks === null && finish === null) continue;
      const observation = { part, date, session, condition, marks, finish, entry };
      const list = seen.get(part);
      if (list) list.push(observation);
      else seen.set(part, [observation]);
    }
  }
  return seen;
});

/** What was written down of a part, oldest first. */
export function observationsOf(record: RegisterSource, part: PartId): readonly Observation[] {
  return byPart(record).get(part) ?? [];
}

/** The condition last written down by the end of a day, else the catalogue's. */
export function conditionAt(record: RegisterSource, part: PartId, date: IsoDate): Condition | null {
  const found = observationsOf(record, part).findLast((seen) => seen.condition !== null && seen.date <= date);
  return found?.condition ?? record.journal.parts.get(part)?.condition ?? null;
}
