import type { NoteDraft } from './note-draft.ts';
import type { Stand } from './stand.ts';
import { leaveOff, moveStore, putOff, refit, sendOut, workAtBench } from './steps-off.ts';
import { takeOff, workInPlace } from './steps-on.ts';
import { bringCandidate, comeBack, maySwap, partWith, splitLot, swap } from './steps-swap.ts';
import type { Workshop } from './workshop.ts';

type Step = (shop: Workshop, stand: Stand, note: NoteDraft) => void;

/**
 * Does one thing at a position that its present state allows, and writes it into the note.
 * Whatever is chosen keeps the rules of whereabouts, so that a journal made of steps has no errors.
 */
export function takeStep(shop: Workshop, stand: Stand, note: NoteDraft): void {
  chooseStep(shop, stand)(shop, stand, note);
  stand.last = note.id;
}

function chooseStep(shop: Workshop, stand: Stand): Step {
  const { random } = shop;
  if (stand.toCome && random.chance(0.25)) return bringCandidate;
  if (stand.phase === 'on' && stand.idle?.part === stand.position.main && random.chance(0.08)) return partWith;
  switch (stand.phase) {
    case 'on':
      return random.chance(0.5) ? takeOff : workInPlace;
    case 'off':
      return chooseOff(shop, stand);
    case 'out':
      return comeBack;
    case 'split':
      return workInPlace;
    case 'left-off':
      return workAtBench;
    case 'missing':
      return maySwap(stand) ? swap : putOff;
  }
}

function chooseOff(shop: Workshop, stand: Stand): Step {
  const roll = shop.random.below(100);
  const main = stand.current === stand.position.main;
  if (maySwap(stand) && roll < 25) {
    return main && stand.current.count > 1 && shop.random.chance(0.5) ? splitLot : swap;
  }
  const inStore = stand.lies !== null && 'store' in stand.lies;
  if (inStore && roll < 33) return sendOut;
  if (roll < 60) return workAtBench;
  if (roll < 94) return refit;
  if (roll < 97) return moveStore;
  if (roll < 99 || !main || stand.off < stand.current.count) return main ? putOff : moveStore;
  return leaveOff;
}
