import { pounds } from './money-text.ts';
import type { NoteDraft } from './note-draft.ts';
import type { Stand } from './stand.ts';
import { FITTED, REASONS, REPLACED, RETURNED, STORED } from './trade-sentences.ts';
import { SELLERS, STORES } from './trade-words.ts';
import { linkTo, say, toStore, type Workshop } from './workshop.ts';

/** The part comes back from a firm, with its bill. */
export function comeBack(shop: Workshop, stand: Stand, note: NoteDraft): void {
  const { random } = shop;
  const part = stand.current;
  const lies = { store: random.pick(STORES) };
  note.add('parts', { part: part.id, did: ['returned', 'inspected'], to: lies.store });
  const cost = pounds(random.between(1200, 18000));
  const firm = stand.firm ?? '';
  note.add('bought', { what: 'Work sent out', as: 'outside-work', for: part.id, cost, tax: '20%', from: firm });
  say(shop, note, RETURNED, { part, firm });
  Object.assign(stand, { phase: 'off', lies, firm: null });
}

/** The candidate is bought or made, and lies in a store from tonight. */
export function bringCandidate(shop: Workshop, stand: Stand, note: NoteDraft): void {
  const { random } = shop;
  const part = stand.position.candidate;
  if (part === null) return;
  const store = random.pick(STORES);
  const made = stand.position.arrives === 'made';
  note.add('parts', { part: part.id, did: made ? 'made' : ['acquired', 'inspected'], to: store });
  if (!made) {
    const cost = random.chance(0.1) ? `${pounds(random.between(900, 9000))} EUR at 0.8571` : pounds(random.between(350, 9000));
    const from = random.pick(SELLERS);
    note.add('bought', { what: part.name, as: 'part', for: part.id, cost, tax: '20%', from });
  }
  say(shop, note, STORED, { part, lies: { store } });
  Object.assign(stand, { toCome: false, idle: { part, store } });
}

/** Whether the idle part may take the place of the current one tonight. */
export function maySwap(stand: Stand): boolean {
  const whole = stand.phase === 'missing' || stand.off === stand.current.count;
  return stand.idle !== null && whole && (stand.phase === 'off' || stand.phase === 'missing');
}

/** The idle part is fitted where the current one was: a candidate for the main part, or back again. */
export function swap(shop: Workshop, stand: Stand, note: NoteDraft): void {
  const { idle, current, lies } = stand;
  if (idle === null) return;
  const { main } = stand.position;
  const back = idle.part === main;
  const because = shop.random.pick(back ? REASONS.repair : REASONS.replace);
  note.add('decisions', {
    part: main.id,
    verdict: back ? 'repair' : 'replace',
    with: back ? null : idle.part.id,
    because,
  });
  const store = lies === null ? null : toStore(shop, current, lies, note);
  note.add('parts', { part: idle.part.id, did: 'fitted' });
  say(shop, note, back ? FITTED : REPLACED, { part: idle.part });
  Object.assign(stand, {
    phase: 'on',
    current: idle.part,
    idle: store === null ? null : { part: current, store },
    lies: null,
    off: 0,
  });
}

/** Of a lot, some go back and some are replaced; the rest of both stay in stores. */
export function splitLot(shop: Workshop, stand: Stand, note: NoteDraft): void {
  const { current, idle, lies } = stand;
  if (idle === null || lies === null) return;
  const bad = shop.random.between(1, current.count - 1);
  const { main } = stand.position;
  const because = shop.random.pick(REASONS.replace);
  note.add('decisions', { part: main.id, verdict: 'replace', with: idle.part.id, count: String(bad), because });
  note.add('parts', { part: current.id, did: 'fitted', count: String(current.count - bad) });
  toStore(shop, current, lies, note);
  note.add('parts', { part: idle.part.id, did: 'fitted', count: String(bad) });
  say(shop, note, REPLACED, { part: idle.part });
  Object.assign(stand, { phase: 'split', lies: null, off: 0, idle: null });
}

/** The old part that was replaced leaves for good. */
export function partWith(shop: Workshop, stand: Stand, note: NoteDraft): void {
  const { random } = shop;
  const part = stand.idle?.part;
  if (part === undefined) return;
  const how = random.pick(['sold', 'given', 'scrapped']);
  note.add('parts', { part: part.id, did: 'gone', how });
  if (how === 'sold') {
    const price = pounds(random.between(200, 4000));
    note.add('sold', { part: part.id, price, tax: 'exempt', to: random.pick(SELLERS) });
  }
  note.sentences.push(`Let go of ${linkTo(part)}, drawn and photographed first.`);
  stand.idle = null;
}
