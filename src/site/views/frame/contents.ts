/** The parts of the record in four groups, in the order a reader would leaf through them, as far as a record has them. */
import { hasClient } from '../../../journal/ledger/client-account.ts';
import type { JournalRecord } from '../../../journal/record.ts';
import { isIdentityTold } from '../../../journal/registers/identity.ts';
import { tellsRecordings } from '../../../journal/registers/unrecorded.ts';
import { type Address, PAGES, type PageName } from '../../addresses.ts';
import { keepsAccount } from '../page/words.ts';

/** What a record tells of, and which copy it is. */
type Told = Pick<JournalRecord, 'journal' | 'ledger' | 'copy'>;

export interface ContentsEntry {
  readonly page: PageName;
  readonly name: string;
  /** The records, or copies of one, that have it, where not all do. */
  readonly within?: (record: Told) => boolean;
}

export interface ContentsGroup {
  readonly name: string;
  /** The first one stands for the group. */
  readonly entries: readonly [ContentsEntry, ...ContentsEntry[]];
}

/** What the writer keeps for the workshop: a copy without private matter is for somebody else. */
const forTheWriter = ({ copy: { leavesOut } }: Pick<Told, 'copy'>): boolean => !leavesOut.includes('private');

/** What is addressed to somebody: a copy without the names of people and firms has no address to put on it. */
const withNames = ({ copy: { leavesOut } }: Pick<Told, 'copy'>): boolean => !leavesOut.includes('people');

const CONTENTS: readonly ContentsGroup[] = [
  {
    name: 'The journal',
    entries: [
      { page: 'sessions', name: 'Sessions' },
      { page: 'letters', name: 'Letters', within: withNames },
      { page: 'items', name: 'Open items' },
      { page: 'workOrders', name: 'Work orders', within: withNames },
      { page: 'forgotten', name: 'What I forgot', within: forTheWriter },
      { page: 'methods', name: 'Methods' },
      { page: 'cautions', name: 'Cautions' },
    ],
  },
  {
    name: 'The vehicle',
    entries: [
      { page: 'parts', name: 'Parts' },
      { page: 'register', name: 'Register' },
      { page: 'anyDay', name: 'Any day' },
      { page: 'drawings', name: 'Drawings' },
      { page: 'measurements', name: 'Measurements' },
      { page: 'stores', name: 'Stores' },
      { page: 'bags', name: 'Bags' },
      { page: 'identity', name: 'Identity rule', within: isIdentityTold },
    ],
  },
  {
    name: 'The account',
    entries: [
      { page: 'ledger', name: 'Ledger' },
      { page: 'client', name: 'The client’s account', within: hasClient },
      { page: 'costByPosition', name: 'By position', within: keepsAccount },
      { page: 'entries', name: 'Entries' },
      { page: 'consumables', name: 'Consumables' },
    ],
  },
  {
    name: 'The evidence',
    entries: [
      { page: 'pictures', name: 'Pictures' },
      { page: 'plates', name: 'Before and after' },
      { page: 'film', name: 'Film', within: ({ copy }) => !copy.leavesOut.includes('film') },
      { page: 'papers', name: 'Papers' },
      { page: 'unrecorded', name: 'Unrecorded', within: tellsRecordings },
      { page: 'about', name: 'How it is made' },
    ],
  },
];

/** The group that a part of the record is in; null for home and the search. */
export function groupOf(groups: readonly ContentsGroup[], part: PageName | null): ContentsGroup | null {
  return groups.find(({ entries }) => entries.some(({ page }) => page === part)) ?? null;
}

/** The groups as a record has them. */
export function contentsOf(record: Told): readonly ContentsGroup[] {
  return CONTENTS.map(({ name, entries: [first, ...others] }) => ({
    name,
    entries: [named(first), ...others.filter(({ within }) => within?.(record) ?? true).map(named)],
  }));
}

const named = ({ page, name }: ContentsEntry): ContentsEntry => ({ page, name });

/** False for a page that is not for those whom the copy is for, or of something that the record does not tell of. */
export function hasPage(record: Told, page: PageName): boolean {
  return CONTENTS.every(({ entries }) => entries.every((one) => one.page !== page || (one.within?.(record) ?? true)));
}

/** Pages that a record does without. */
export function pagesNotIn(record: Told): ReadonlySet<Address> {
  return new Set(CONTENTS.flatMap(({ entries }) => entries.flatMap(({ page }) => (hasPage(record, page) ? [] : [PAGES[page]]))));
}
