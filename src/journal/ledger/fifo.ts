import Fraction from 'fraction.js';
import type { Costing } from './costing.ts';
import { atLeastNothing, minus, NO_WORTH, partOf, plus, type Worth } from './worth.ts';

/** One purchase on the shelf, and how much of it has gone. */
interface Layer {
  readonly amount: Fraction;
  readonly worth: Worth;
  taken: Fraction;
  takenWorth: Worth;
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
    add(more, cost) {
      layers.push({ amount: more, worth: cost, taken: new Fraction(0), takenWorth: NO_WORTH });
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
    giveBack(taken, refund) {
      return gone(taken, takeNewest(layers, taken, refund));
    },
  };
}

function issue(layer: Layer, amount: Fraction): Worth {
  const before = layer.takenWorth;
  layer.taken = layer.taken.add(amount);
  layer.takenWorth = partOf(layer.worth, layer.taken, layer.amount);
  return minus(layer.takenWorth, before);
}

/** Takes from the newest layers; one that is only partly given back bears the rest of the refund. */
function takeNewest(layers: Layer[], amount: Fraction, refund: Worth): Worth {
  let cost = NO_WORTH;
  let wanted = amount;
  while (wanted.n !== 0n) {
    const layer = layers.pop() as Layer;
    const left = layer.amount.sub(layer.taken);
    const leftWorth = minus(layer.worth, layer.takenWorth);
    if (left.lte(wanted)) {
      wanted = wanted.sub(left);
      cost = plus(cost, leftWorth);
      continue;
    }
    const rest = atLeastNothing(minus(leftWorth, minus(refund, cost)));
    layers.push({ amount: left.sub(wanted), worth: rest, taken: new Fraction(0), takenWorth: NO_WORTH });
    return plus(cost, minus(leftWorth, rest));
  }
  return cost;
}
