import type { Consumable, Part, Session } from '../model.ts';
import type { BagHistory, ItemHistory, JournalRecord } from '../record.ts';
import { type LinkName, linkNamed } from '../values/link.ts';
import { sessionNamed } from './session-named.ts';

/** The thing that a link of the prose leads to. */
export type LinkTarget =
  | { readonly scheme: 'part'; readonly part: Part }
  | { readonly scheme: 'bag'; readonly bag: BagHistory }
  | { readonly scheme: 'item'; readonly item: ItemHistory }
  | { readonly scheme: 'session'; readonly session: Session }
  | { readonly scheme: 'consumable'; readonly consumable: Consumable };

/** @returns null when the journal has nothing of that name */
export function linkTarget({ journal, history }: Pick<JournalRecord, 'journal' | 'history'>, { scheme, id }: LinkName): LinkTarget | null {
  if (scheme === 'part') {
    const part = journal.parts.get(id);
    return part ? { scheme, part } : null;
  }
  if (scheme === 'bag') {
    const bag = /^\d+$/.test(id) ? history.bags.get(Number(id)) : undefined;
    return bag ? { scheme, bag } : null;
  }
  if (scheme === 'item') {
    const item = history.items.get(id);
    return item ? { scheme, item } : null;
  }
  if (scheme === 'consumable') {
    const consumable = journal.consumables.get(id);
    return consumable ? { scheme, consumable } : null;
  }
  const session = sessionNamed(journal, id);
  return session ? { scheme, session } : null;
}

/** What a thing is called where a link to it has no words of its own. */
export function labelOf(target: LinkTarget): string {
  if (target.scheme === 'part') return target.part.name;
  if (target.scheme === 'bag') return `bag ${target.bag.bag}`;
  if (target.scheme === 'item') return target.item.opening.what;
  return target.scheme === 'consumable' ? target.consumable.name : target.session.title;
}

/** What an address of the prose is called where it has no words; '' where it names nothing of the journal. */
export function labelOfLink(record: Pick<JournalRecord, 'journal' | 'history'>, address: string): string {
  const name = linkNamed(address);
  const target = name === null ? null : linkTarget(record, name);
  return target === null ? '' : labelOf(target);
}

/** A name as it stands after some words of its paragraph: with a capital where it begins a sentence. */
export function labelAfter(before: string, label: string): string {
  return /(?:^|[.!?]\s)\s*$/.test(before) ? label.charAt(0).toUpperCase() + label.slice(1) : label;
}
