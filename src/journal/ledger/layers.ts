/**
 * Stock costing, perpetual: first in first out by layers, or moving average as one pool. What goes out and what
 * stays always add up to what came in, in quantity exactly and in money to the minor unit.
 *
 * Source of the methods and of a worked example: OpenStax, Principles of Accounting, volume 1, sections 10.2 and 10.3.
 */
import Fraction from 'fraction.js';
import type { Minor } from '../model.ts';
import { roundHalfAway } from '../values/decimal.ts';

interface Layer {
  amount: Fraction;
  value: Minor;
}

export interface Holding {
  readonly amount: Fraction;
  readonly value: Minor;
}

/** A shelf of one consumable. */
export interface Layers {
  holding(): Holding;
  put(amount: Fraction, value: Minor): void;
  /** Takes an amount that is there (never more than `holding().amount`) and returns its cost. */
  take(amount: Fraction): Minor;
}

export function layersFor(method: 'fifo' | 'average'): Layers {
  let layers: Layer[] = [];
  let first = 0;
  const current = () => layers.slice(first);
  return {
    holding: () => ({
      amount: current().reduce((sum, layer) => sum.add(layer.amount), new Fraction(0)),
      value: current().reduce((sum, layer) => sum + layer.value, 0),
    }),
    put: (amount, value) => {
      const pool = layers[0];
      if (method === 'average' && pool) layers[0] = { amount: pool.amount.add(amount), value: pool.value + value };
      else layers.push({ amount, value });
    },
    take: (amount) => {
      let left = amount;
      let cost = 0;
      while (left.n > 0n && first < layers.length) {
        const layer = layers[first];
        if (!layer) break;
        const part = left.lt(layer.amount) ? left : layer.amount;
        const share = costOf(layer, part);
        cost += share;
        left = left.sub(part);
        layers[first] = { amount: layer.amount.sub(part), value: layer.value - share };
        if (part.equals(layer.amount)) first += 1;
      }
      if (method === 'average' && first > 0) {
        layers = [];
        first = 0;
      }
      return cost;
    },
  };
}

/** A layer used up gives up exactly what it still holds, so no fraction of a penny is left behind. */
function costOf(layer: Layer, part: Fraction): Minor {
  if (part.equals(layer.amount)) return layer.value;
  return roundHalfAway(part.mul(layer.value).div(layer.amount));
}
