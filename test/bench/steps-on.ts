import { measure } from './measuring.ts';
import type { NoteDraft } from './note-draft.ts';
import type { Stand } from './stand.ts';
import { BAGGED, IN_PLACE, REASONS, REMOVED } from './trade-sentences.ts';
import { destination, layOff, say, type Workshop } from './workshop.ts';

const LOOKED = [['inspected'], ['adjusted'], ['lubricated'], ['cleaned', 'lubricated'], ['tested'], ['inspected', 'tested']];

/** Work on a part that stays on the vehicle. */
export function workInPlace(shop: Workshop, stand: Stand, note: NoteDraft): void {
  const { random } = shop;
  const part = stand.current;
  const measured = random.chance(0.3);
  note.add('parts', {
    part: part.id,
    did: [...random.pick(LOOKED), ...(measured ? ['measured'] : [])],
    condition: random.chance(0.4) ? String(random.between(0, 2)) : null,
    note: random.chance(0.2) ? 'Play felt, none seen.' : null,
  });
  if (measured) measure(shop, part, note, 'left');
  if (part === stand.position.main && stand.phase === 'on' && random.chance(0.25)) {
    note.add('decisions', { part: part.id, verdict: 'keep', because: random.pick(REASONS.keep) });
  }
  say(shop, note, IN_PLACE, { part });
}

/** A part comes off, or some of a lot, and goes into a store or a bag. */
export function takeOff(shop: Workshop, stand: Stand, note: NoteDraft): void {
  const { random } = shop;
  const part = stand.current;
  const some = part.count > 1 && part === stand.position.main && random.chance(0.3);
  const off = some ? random.between(1, part.count - 1) : part.count;
  const lies = layOff(shop, stand, note);
  const measured = random.chance(0.25);
  note.add('parts', {
    part: part.id,
    did: measured ? ['removed', 'measured'] : random.chance(0.6) ? ['removed', 'inspected'] : 'removed',
    to: destination(lies),
    count: some ? String(off) : null,
    condition: random.chance(0.3) ? String(random.between(0, 3)) : null,
    marks: random.chance(0.08) ? `punched ${random.between(1, 99)}` : null,
  });
  if (measured) measure(shop, part, note, 'found');
  say(shop, note, 'bag' in lies ? BAGGED : REMOVED, { part, lies });
  Object.assign(stand, { phase: 'off', lies, off });
}
