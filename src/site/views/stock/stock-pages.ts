import type { ConsumableId } from '../../../journal/model.ts';
import type { Address } from '../../addresses.ts';

/** The page of a consumable's movements. */
export function stockAddress(id: ConsumableId): Address {
  return `consumables/${id}.html`;
}

/** The anchor of a movement on that page: they are counted from 1. */
export function movementAnchor(nth: number): string {
  return `movement-${nth}`;
}
