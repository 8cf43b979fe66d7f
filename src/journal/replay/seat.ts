import type { PartId, PositionId, Whereabouts } from '../model.ts';

/** A place that a part stands in: a position, on the vehicle itself or in another part. */
export interface Seat {
  readonly position: PositionId;
  /** The part that the place is in; null for a place on the vehicle itself. */
  readonly carrier: PartId | null;
  /** Running number of the move that put it there. */
  readonly since: number;
}

/**
 * Where a part in a seat is, from where its carrier is: on the vehicle where the chain ends there, and gone, missing or
 * not yet here with what it is in.
 *
 * @param carrier where the carrier is; null for a seat on the vehicle itself
 */
export function whereSeated({ position, carrier }: Pick<Seat, 'position' | 'carrier'>, at: Whereabouts | null): Whereabouts {
  if (carrier === null || at === null) return { at: 'fitted', position };
  switch (at.at) {
    case 'fitted':
      return { at: 'fitted', position, within: carrier };
    case 'gone':
    case 'missing':
    case 'not-yet':
    case 'considered':
      return at;
    default:
      return { at: 'in', part: carrier, position, where: at };
  }
}

/** Where a chain of parts in parts ends: on the vehicle, in stores, in a bag, out with a firm. */
export function endOf(where: Whereabouts): Exclude<Whereabouts, { at: 'in' }> {
  return where.at === 'in' ? endOf(where.where) : where;
}
