/** Bags, open items and milestones of a note. */
import type { BagFilling, ItemOpening, Session } from '../model.ts';
import type { SessionSource } from '../schema/session.ts';
import { pictureBeside } from './media.ts';
import type { NoteContext } from './session.ts';
import { each } from './work.ts';

export function bagsOf(list: SessionSource['bags'], context: NoteContext): BagFilling[] {
  return each(list, (entry, i) => ({
    bag: entry.bag,
    holds: entry.holds,
    off: entry.off === undefined ? null : (context.names.part(entry.off, context.place('bags', i, 'off'))?.id ?? null),
    goesBack: entry['goes-back'] ?? null,
    picture: entry.picture === undefined ? null : pictureBeside(entry.picture, context, context.place('bags', i, 'picture')),
    place: context.place('bags', i),
  }));
}

export function emptiedOf(list: SessionSource['emptied'], context: NoteContext): Session['emptied'] {
  return each(list, (bag, i) => ({ bag, place: context.place('emptied', i) }));
}

export function opensOf(list: SessionSource['opens'], context: NoteContext): ItemOpening[] {
  const { names, place, catalogues } = context;
  return each(list, (entry, i) => ({
    id: entry.id,
    kind: entry.kind,
    what: entry.what,
    before: entry.before === undefined ? null : names.milestone(entry.before, place('opens', i, 'before')),
    beforeUnknown: entry.before !== undefined && !catalogues.milestones.some(({ id }) => id === entry.before),
    on: entry.on === undefined ? null : names.charge(entry.on, place('opens', i, 'on')),
    price: entry.price === undefined ? null : names.money(entry.price, place('opens', i, 'price')),
    place: place('opens', i),
  }));
}

export function closesOf(list: SessionSource['closes'], context: NoteContext): Session['closes'] {
  return each(list, (entry, i) => ({ id: entry.id, how: entry.how ?? null, place: context.place('closes', i) }));
}

export function defersOf(list: SessionSource['defers'], context: NoteContext): Session['defers'] {
  return each(list, (entry, i) => {
    const to = context.names.milestone(entry.to, context.place('defers', i, 'to'));
    return to === null ? null : { id: entry.id, to, because: entry.because, place: context.place('defers', i) };
  });
}

export function reachedOf(list: SessionSource['reached'], context: NoteContext): Session['reached'] {
  return each(list, (entry, i) => {
    const milestone = context.names.milestone(entry.milestone, context.place('reached', i, 'milestone'));
    if (milestone === null) return null;
    const place = context.place('reached', i);
    return { milestone, withOpen: entry['with-open'] ?? [], because: entry.because ?? null, place };
  });
}
