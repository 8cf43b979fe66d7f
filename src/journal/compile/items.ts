/** Bags, open items and milestones of a note. */
import type { BagFilling, ItemOpening, Session } from '../model.ts';
import type { NoteFields } from '../read/journal-source.ts';
import { believed, given } from './believed.ts';
import { pictureBeside } from './media.ts';
import type { NoteAtHand } from './session.ts';

export function bagsOf(list: NoteFields['bags'], context: NoteAtHand): BagFilling[] {
  return believed(list, ({ says, place, placeOf }) => ({
    ...says,
    off: given(says.off, (id) => context.names.part(id, placeOf('off'))?.id ?? null),
    picture: given(says.picture, (written) => pictureBeside(written, context, placeOf('picture'))),
    place,
  }));
}

export function emptiedOf(list: NoteFields['emptied'], context: NoteAtHand): Session['emptied'] {
  return list.map((bag, i) => ({ bag, place: context.place('emptied', i) }));
}

export function opensOf(list: NoteFields['opens'], { names }: NoteAtHand): ItemOpening[] {
  return believed(list, ({ says, place, placeOf }) => {
    const before = given(says.before, (id) => names.milestone(id, placeOf('before')));
    return {
      ...says,
      before,
      beforeUnknown: says.before !== null && before === null,
      on: given(says.on, (id) => names.charge(id, placeOf('on'))),
      price: given(says.price, (written) => names.money(written, placeOf('price'))),
      place,
    };
  });
}

export function closesOf(list: NoteFields['closes']): Session['closes'] {
  return believed(list, ({ says, place }) => ({ ...says, place }));
}

export function defersOf(list: NoteFields['defers'], { names }: NoteAtHand): Session['defers'] {
  return believed(list, ({ says, place, placeOf }) => {
    const to = names.milestone(says.to, placeOf('to'));
    return to === null ? null : { ...says, to, place };
  });
}

export function reachedOf(list: NoteFields['reached'], { names }: NoteAtHand): Session['reached'] {
  return believed(list, ({ says, place, placeOf }) => {
    const milestone = names.milestone(says.milestone, placeOf('milestone'));
    return milestone === null ? null : { ...says, milestone, place };
  });
}
