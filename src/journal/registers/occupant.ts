import type { Origin, PartId } from '../model.ts';
import type { Moment } from '../record.ts';

/** So many of a part that stand at a position, without a break since the moment given. */
export interface Occupant {
  readonly part: PartId;
  readonly count: number;
  /** Which of a numbered lot; null where they cannot be told apart. */
  readonly which: readonly number[] | null;
  readonly since: Moment;
  readonly origin: Origin | null;
  /** It is the part that made the position, and was here when the vehicle arrived. */
  readonly asFound: boolean;
}

/** What stands at a position in a part that is off the vehicle: it is in its place, and not on the vehicle. */
export interface Seated extends Occupant {
  /** The outermost part it is in, which is what is off. */
  readonly carrier: PartId;
}

/** Of one part and origin as one, whenever each of them came to stand there, in the order of the first. */
export function together(occupants: readonly Occupant[]): readonly Pick<Occupant, 'part' | 'count' | 'origin'>[] {
  const alike = Map.groupBy(occupants, ({ part, origin }) => `${part} ${origin}`);
  return [...alike.values()].flatMap((some) =>
    some.slice(0, 1).map(({ part, origin }) => ({ part, origin, count: some.reduce((sum, { count }) => sum + count, 0) })),
  );
}
