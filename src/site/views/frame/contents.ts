/** The parts of the record in four groups, in the order a reader would leaf through them. */
import type { PageName } from '../../addresses.ts';

export interface ContentsEntry {
  readonly page: PageName;
  readonly name: string;
}

export interface ContentsGroup {
  readonly name: string;
  /** The first one stands for the group. */
  readonly entries: readonly [ContentsEntry, ...ContentsEntry[]];
}

export const CONTENTS: readonly ContentsGroup[] = [
  {
    name: 'The journal',
    entries: [
      { page: 'sessions', name: 'Sessions' },
      { page: 'items', name: 'Open items' },
      { page: 'forgotten', name: 'What I forgot' },
      { page: 'methods', name: 'Methods' },
      { page: 'cautions', name: 'Cautions' },
    ],
  },
  {
    name: 'The vehicle',
    entries: [
      { page: 'parts', name: 'Parts' },
      { page: 'register', name: 'Register' },
      { page: 'drawings', name: 'Drawings' },
      { page: 'measurements', name: 'Measurements' },
      { page: 'stores', name: 'Stores' },
      { page: 'bags', name: 'Bags' },
      { page: 'identity', name: 'Identity rule' },
    ],
  },
  {
    name: 'The account',
    entries: [
      { page: 'ledger', name: 'Ledger' },
      { page: 'costByPosition', name: 'By position' },
      { page: 'entries', name: 'Entries' },
      { page: 'consumables', name: 'Consumables' },
    ],
  },
  {
    name: 'The evidence',
    entries: [
      { page: 'pictures', name: 'Pictures' },
      { page: 'plates', name: 'Before and after' },
      { page: 'film', name: 'Film' },
      { page: 'papers', name: 'Papers' },
      { page: 'unrecorded', name: 'Unrecorded' },
      { page: 'about', name: 'How it is made' },
    ],
  },
];

/** The group that a part of the record is in; null for home and the search. */
export function groupOf(part: PageName | null): ContentsGroup | null {
  return CONTENTS.find(({ entries }) => entries.some(({ page }) => page === part)) ?? null;
}
