import { measure } from './measuring.ts';
import type { NoteDraft } from './note-draft.ts';
import type { Stand } from './stand.ts';
import { FITTED, METHODS, REASONS, SENT, STORED, WORKED } from './trade-sentences.ts';
import { CONSUMABLES, STORES } from './trade-words.ts';
import { say, someFirm, toStore, type Workshop } from './workshop.ts';

const WORK = [
  { did: ['cleaned', 'inspected'], verdict: 'keep' },
  { did: ['cleaned', 'conserved'], verdict: 'conserve' },
  { did: ['repaired'], verdict: 'repair' },
  { did: ['machined', 'measured'], verdict: 'repair' },
  { did: ['cleaned', 'refinished'], verdict: 'refinish' },
] as const;

/** Work at the bench, with the decision it follows from. */
export function workAtBench(shop: Workshop, stand: Stand, note: NoteDraft): void {
  const { random } = shop;
  const part = stand.current;
  const { did, verdict } = random.pick(WORK);
  note.add('parts', {
    part: part.id,
    did,
    condition: random.chance(0.4) ? String(random.between(0, 2)) : null,
    finish: random.chance(0.1) ? 'grey primer under two coats' : null,
  });
  if (did.some((word) => word === 'measured')) measure(shop, part, note, 'left');
  if (part === stand.position.main && stand.phase === 'off' && random.chance(0.6)) {
    note.add('decisions', { part: part.id, verdict, because: random.pick(REASONS[verdict]) });
  }
  if (random.chance(0.2)) {
    const stuff = random.pick(CONSUMABLES).id;
    const result = random.pick(['good', 'good', 'fair', 'poor']);
    note.add('methods', { on: [part.id], how: random.pick(METHODS), with: [stuff], result });
  }
  say(shop, note, WORKED, { part });
}

/** All that is off goes back on; a bag it lay in is empty then. */
export function refit(shop: Workshop, stand: Stand, note: NoteDraft): void {
  const { random } = shop;
  note.add('parts', { part: stand.current.id, did: random.chance(0.3) ? ['lubricated', 'fitted'] : 'fitted' });
  if (stand.lies !== null && 'bag' in stand.lies) note.emptied.push(stand.lies.bag);
  say(shop, note, FITTED, { part: stand.current });
  Object.assign(stand, { phase: 'on', lies: null, off: 0 });
}

/** What is off goes to a firm. What lies in a bag stays here. */
export function sendOut(shop: Workshop, stand: Stand, note: NoteDraft): void {
  const firm = someFirm(shop);
  note.add('parts', { part: stand.current.id, did: 'sent-out', to: firm });
  say(shop, note, SENT, { part: stand.current, firm });
  Object.assign(stand, { phase: 'out', lies: null, firm });
}

/** What is off moves to another store, out of its bag if it lay in one. */
export function moveStore(shop: Workshop, stand: Stand, note: NoteDraft): void {
  const store = shop.random.pick(STORES);
  note.add('parts', { part: stand.current.id, did: 'stored', to: store });
  if (stand.lies !== null && 'bag' in stand.lies) note.emptied.push(stand.lies.bag);
  stand.lies = { store };
  say(shop, note, STORED, { part: stand.current, lies: stand.lies });
}

/** The part stays off, by decision. */
export function leaveOff(shop: Workshop, stand: Stand, note: NoteDraft): void {
  const { main } = stand.position;
  if (stand.lies !== null) stand.lies = { store: toStore(shop, main, stand.lies, note) };
  note.add('decisions', { part: main.id, verdict: 'omit', because: shop.random.pick(REASONS.omit) });
  note.sentences.push('Decided to leave it off: *it was never there when new*.');
  stand.phase = 'left-off';
}

/** Nothing is settled yet, and the note says why. */
export function putOff(shop: Workshop, stand: Stand, note: NoteDraft): void {
  const part = stand.position.main;
  note.add('decisions', { part: part.id, verdict: 'defer', because: shop.random.pick(REASONS.defer) });
  note.sentences.push('No verdict yet; more to see first.');
}
