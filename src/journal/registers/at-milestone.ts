import type { IsoDate } from '../model.ts';
import { type RegisterRow, registerAt } from './register.ts';
import type { RegisterSource } from './source.ts';
import { occupantsOf, whereaboutsAt } from './stays.ts';

/** What was still to be done at the end of a day on which a milestone was reached: told as it was, never as a fault. */
export interface StillToDo {
  /** Places on the vehicle that stood empty while what had stood there was here: in stores, in a bag, or out with a firm. */
  readonly empty: number;
  /** On how many parts work was still to be done that had been decided on. */
  readonly undone: number;
}

export function stillToDoAt(record: RegisterSource, date: IsoDate): StillToDo {
  const rows = registerAt(record, date);
  const undone = rows.flatMap(({ pending }) => pending.filter(({ todo }) => todo === 'work'));
  return {
    empty: rows.reduce((sum, row) => sum + emptyPlaces(record, row, date), 0),
    undone: undone.reduce((sum, { count }) => sum + count, 0),
  };
}

/**
 * A place in a part that is off as a whole is not counted beside that part, nor one whose part was missing as found or is
 * left off as decided.
 */
function emptyPlaces(record: RegisterSource, { position, empty, seated, inForce }: RegisterRow, date: IsoDate): number {
  const missing = whereaboutsAt(record, position, date).filter(({ where }) => where.at === 'missing');
  const leftOff = inForce.filter(({ decision }) => decision.verdict === 'omit');
  const off = [...seated, ...missing, ...leftOff].reduce((rest, { count }) => rest - count, empty);
  if (off <= 0) return 0;
  const stood = occupantsOf(record, position).filter(({ from }) => from.date <= date);
  const parts = new Set([position, ...stood.map(({ part }) => part)]);
  const lying = [...parts].flatMap((part) => whereaboutsAt(record, part, date)).filter(({ where }) => LYING.has(where.at));
  return Math.min(
    off,
    lying.reduce((sum, { count }) => sum + count, 0),
  );
}

const LYING: ReadonlySet<string> = new Set(['stores', 'bag', 'out']);
