import type { Condition, IsoDate, PartEntry, PartId, Picture, SessionId } from '../model.ts';
import { perRecord, type RegisterSource } from './source.ts';
import { orderedSessions } from './stays.ts';

/** Something seen of a part and written down: its condition, its marks, its finish, a picture of it. */
export interface Observation {
  readonly part: PartId;
  readonly date: IsoDate;
  readonly session: SessionId;
  readonly condition: Condition | null;
  readonly marks: string | null;
  readonly finish: string | null;
  /** The action `marked`: a lasting mark was put on the part. */
  readonly marked: boolean;
  readonly picture: Picture | null;
  readonly entry: PartEntry | null;
}

const byPart = perRecord((record) => {
  const seen = new Map<PartId, Observation[]>();
  const add = (observation: Observation) => {
    const list = seen.get(observation.part);
    if (list) list.push(observation);
    else seen.set(observation.part, [observation]);
  };
  for (const { id: session, date, parts, pictures } of orderedSessions(record)) {
    for (const entry of parts) {
      const { part, condition, marks, finish } = entry;
      const marked = entry.did.includes('marked');
      if (condition === null && marks === null && finish === null && !marked) continue;
      add({ part, date, session, condition, marks, finish, marked, picture: null, entry });
    }
    for (const picture of pictures) {
      for (const part of new Set(picture.shows)) {
        add({ part, date, session, condition: null, marks: null, finish: null, marked: false, picture, entry: null });
      }
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
