import Fraction from 'fraction.js';
import type { Costing } from './costing.ts';
import { atLeastNothing, minus, NO_WORTH, partOf, plus, type Worth } from './worth.ts';

/** One purchase on the shelf, and how much of it has gone. */
interface Layer {
  readonly amount: Fraction;
  readonly worth: Worth;
  readonly purchase: string | null;
  taken: Fraction;
  takenWorth: Worth;
}

function layerOf(amount: Fraction, worth: Worth, purchase: string | null): Layer {
  return { amount, worth, purchase, taken: new Fraction(0), takenWorth: NO_WORTH };
}

/**
 * First in, first out: what is used is what has stood longest. Of a layer partly used, the cost so far
 * is round(worth × taken ÷ amount), and an issue costs what that has grown by: a layer used up has
 * issued exactly its worth.
 *
 * Source of the method: OpenStax, Principles of Accounting, volume 1, section 10.3.
 */
export function fifoCosting(): Costing {
  const layers: Layer[] = [];
  let oldest = 0;
  let amount = new Fraction(0);
  let worth = NO_WORTH;
  const gone = (taken: Fraction, cost: Worth): Worth => {
    amount = amount.sub(taken);
    worth = minus(worth, cost);
    return cost;
  };
  return {
    get amount() {
      return amount;
    },
    get worth() {
      return worth;
    },
    add(more, cost, purchase) {
      layers.push(layerOf(more, cost, purchase ?? null));
      amount = amount.add(more);
      worth = plus(worth, cost);
    },
    putBack(more, cost) {
      layers.splice(oldest, 0, layerOf(more, cost, null));
      amount = amount.add(more);
      worth = plus(worth, cost);
    },
    take(taken) {
      let cost = NO_WORTH;
      let wanted = taken;
      while (wanted.n !== 0n) {
        const layer = layers[oldest] as Layer;
        const left = layer.amount.sub(layer.taken);
        const here = left.lt(wanted) ? left : wanted;
        cost = plus(cost, issue(layer, here));
        wanted = wanted.sub(here);
        if (here.equals(left)) oldest += 1;
      }
      return gone(taken, cost);
    },
    giveBack(taken, refund, purchase) {
      return gone(taken, takeNewest(layers, taken, refund, purchase ?? null));
    },
  };
}

function issue(layer: Layer, amount: Fraction): Worth {
  const before = layer.takenWorth;
  layer.taken = layer.taken.add(amount);
  layer.takenWorth = partOf(layer.worth, layer.taken, layer.amount);
  return minus(layer.takenWorth, before);
}

/** Takes from the layer of a purchase, then from the newest; one that is only partly given back bears the rest of the refund. */
function takeNewest(layers: Layer[], amount: Fraction, refund: Worth, purchase: string | null): Worth {
  let cost = NO_WORTH;
  let wanted = amount;
  for (const at of newestFirst(layers, purchase)) {
    const layer = layers[at] as Layer;
    const left = layer.amount.sub(layer.taken);
    if (left.n === 0n) continue;
    const leftWorth = minus(layer.worth, layer.takenWorth);
    if (left.gt(wanted)) {
      const rest = atLeastNothing(minus(leftWorth, minus(refund, cost)));
      layers[at] = layerOf(left.sub(wanted), rest, layer.purchase);
      return plus(cost, minus(leftWorth, rest));
    }
    layer.taken = layer.amount;
    layer.takenWorth = layer.worth;
    wanted = wanted.sub(left);
    cost = plus(cost, leftWorth);
    if (wanted.n === 0n) return cost;
  }
  return cost;
}

function newestFirst(layers: readonly Layer[], purchase: string | null): number[] {
  const all = [...layers.keys()].reverse();
  if (purchase === null) return all;
  const isOf = (at: number): boolean => layers[at]?.purchase === purchase;
  return [...all.filter(isOf), ...all.filter((at) => !isOf(at))];
}
