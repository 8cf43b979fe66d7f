import type { BenchPart } from './catalogue.ts';
import type { NoteDraft } from './note-draft.ts';
import type { Random } from './random.ts';
import type { Lies, Stand } from './stand.ts';
import { GOES_BACK, HOLDS } from './trade-sentences.ts';
import { FIRMS, STORES } from './trade-words.ts';

/** What all steps share: chance, and the numbers of bags, each used once. */
export interface Workshop {
  readonly random: Random;
  bags: number;
}

/** A link to a part in running text: `the [brake drum, lower](part:brake-drum-lower)`. */
export function linkTo(part: BenchPart): string {
  const second = part.name.charAt(1);
  const plain = second === second.toLowerCase() && second !== ' ';
  const name = plain ? part.name.charAt(0).toLowerCase() + part.name.slice(1) : part.name;
  return `the [${name}](part:${part.id})`;
}

/** Says one of `templates` about a part, and where it went when that matters. */
export function say(
  shop: Workshop,
  note: NoteDraft,
  templates: readonly string[],
  about: { readonly part: BenchPart; readonly lies?: Lies | null; readonly firm?: string | null },
): void {
  const filled = shop.random
    .pick(templates)
    .replace('{part}', linkTo(about.part))
    .replace(/\{(?:store|bag)\}/, inWords(about.lies ?? null))
    .replace('{firm}', about.firm ?? '');
  note.sentences.push(filled.charAt(0).toUpperCase() + filled.slice(1));
}

function inWords(lies: Lies | null): string {
  if (lies === null) return 'stores';
  return 'bag' in lies ? `[bag ${lies.bag}](bag:${lies.bag})` : `*${lies.store}*`;
}

/** The value of `to` for a part that is put there. */
export function destination(lies: Lies): string {
  return 'bag' in lies ? `bag ${lies.bag}` : lies.store;
}

/** Chooses where a part that comes off is laid, and fills the bag if it is one. */
export function layOff(shop: Workshop, stand: Stand, note: NoteDraft): Lies {
  const { random } = shop;
  if (!stand.position.small || !random.chance(0.6)) return { store: random.pick(STORES) };
  shop.bags += 1;
  const holds = [random.pick(HOLDS), random.pick(HOLDS)];
  note.add('bags', {
    bag: String(shop.bags),
    holds,
    off: stand.current.id,
    'goes-back': random.chance(0.6) ? random.pick(GOES_BACK) : null,
  });
  return { bag: shop.bags };
}

/** Takes what lies in a bag into a store; a part in a store stays where it is. */
export function toStore(shop: Workshop, part: BenchPart, lies: Lies, note: NoteDraft): string {
  if ('store' in lies) return lies.store;
  const store = shop.random.pick(STORES);
  note.add('parts', { part: part.id, did: 'stored', to: store });
  note.emptied.push(lies.bag);
  return store;
}

/** A firm for work that is sent out. */
export function someFirm(shop: Workshop): string {
  return shop.random.pick(FIRMS);
}
