/** The words pages use for the terms of the model: what a reader sees for `earlier-replacement`. */
import type {
  ActionWord,
  BoughtAs,
  EntryKind,
  GoneHow,
  Hazard,
  ItemKind,
  LeaveOut,
  MethodResult,
  Origin,
  Verdict,
} from '../../../journal/model.ts';
import type { Copy, JournalRecord } from '../../../journal/record.ts';

export const ORIGIN_WORDS: Readonly<Record<Origin, string>> = {
  original: 'original',
  'earlier-replacement': 'earlier replacement',
  donor: 'donor',
  'new-old-stock': 'new old stock',
  period: 'period',
  reproduction: 'reproduction',
  new: 'new',
  made: 'made for this job',
  borrowed: 'borrowed',
  unknown: 'origin unknown',
};

export const ORIGIN_MEANINGS: Readonly<Record<Origin, string>> = {
  original: 'Believed to have left the works on this vehicle.',
  'earlier-replacement': 'Fitted by a former keeper, before this work began.',
  donor: 'Of the same pattern, off another vehicle.',
  'new-old-stock': 'Made at the time, never fitted until now.',
  period: 'Of another make, of the right time.',
  reproduction: 'Made today to the old pattern.',
  new: 'From today’s general stock.',
  made: 'Made new for this vehicle, in the workshop or by another firm.',
  borrowed: 'Somebody else’s, here for a time.',
  unknown: 'Looked into, and nobody can say.',
};

export const VERDICT_WORDS: Readonly<Record<Verdict, string>> = {
  keep: 'keep as it is',
  conserve: 'conserve',
  repair: 'repair',
  refinish: 'refinish',
  replace: 'replace',
  omit: 'leave off',
  defer: 'leave open for now',
};

export const ACTION_WORDS: Readonly<Record<ActionWord, string>> = {
  removed: 'removed',
  fitted: 'fitted',
  stored: 'put away',
  'sent-out': 'sent out',
  returned: 'came back',
  acquired: 'acquired',
  made: 'made',
  gone: 'gone',
  inspected: 'inspected',
  measured: 'measured',
  cleaned: 'cleaned',
  conserved: 'conserved',
  repaired: 'repaired',
  machined: 'machined',
  refinished: 'refinished',
  adjusted: 'adjusted',
  lubricated: 'lubricated',
  tested: 'tested',
  marked: 'marked',
};

export const GONE_WORDS: Readonly<Record<GoneHow, string>> = {
  scrapped: 'scrapped',
  sold: 'sold',
  given: 'given away',
  returned: 'given back',
  lost: 'lost',
  stolen: 'stolen',
  'made-into': 'made into something else',
};

export const ITEM_KIND_WORDS: Readonly<Record<ItemKind, string>> = {
  task: 'to do',
  question: 'to find out',
  buy: 'to buy',
  waiting: 'waiting for',
  temporary: 'temporary measure',
};

export const RESULT_WORDS: Readonly<Record<MethodResult, string>> = {
  good: 'good',
  fair: 'fair',
  poor: 'poor',
};

export const BOUGHT_WORDS: Readonly<Record<BoughtAs, string>> = {
  part: 'parts',
  consumable: 'consumables',
  'outside-work': 'outside work',
  tool: 'tools',
  carriage: 'carriage',
  fee: 'fees',
  vehicle: 'the vehicle itself',
};

export const ENTRY_KIND_WORDS: Readonly<Record<EntryKind, string>> = {
  labour: 'labour',
  ...BOUGHT_WORDS,
  sale: 'sales',
};

export const HAZARD_WORDS: Readonly<Record<Hazard, string>> = {
  asbestos: 'asbestos',
  'lead-paint': 'lead paint',
  isocyanates: 'isocyanates',
  'fuel-vapour': 'fuel vapour',
  'hot-work': 'hot work',
  'stored-energy': 'stored energy',
  pressure: 'pressure',
  lifting: 'lifting and support',
  battery: 'battery',
  'brake-fluid': 'brake fluid',
  coolant: 'coolant',
  'oily-rags': 'oily rags',
  'exhaust-gas': 'exhaust gas',
  solvents: 'solvents',
  dust: 'dust',
  plating: 'plating',
  'burnt-seals': 'burnt seals',
  'light-metal': 'light metal',
  'luminous-dials': 'luminous dials',
};

const KIND_OUT: Readonly<Record<LeaveOut, string>> = {
  private: 'private notes',
  'former-private': 'private notes of former keepers',
  money: 'money',
  hours: 'hours',
  people: 'names of people and firms',
  marks: 'numbers and marks',
  stores: 'where things lie',
  papers: 'papers',
  film: 'film',
};

/** Which copy this is, and what it leaves out, as every page says it: `Public copy, without money and private notes.` */
export function copyWords({ name, leavesOut }: Copy): string {
  const kinds = leavesOut.filter((kind) => kind !== 'former-private' || !leavesOut.includes('private'));
  const without = kinds.length === 0 ? ', with everything' : `, without ${listed(kinds.map((kind) => KIND_OUT[kind]))}`;
  return `${capital(name.replaceAll('-', ' '))} copy${without}.`;
}

/** `3 parts`, `1 part`, `no parts`. */
export function counted(n: number, one: string, many = `${one}s`): string {
  return n === 0 ? `no ${many}` : `${n} ${n === 1 ? one : many}`;
}

/** How many of all of them, with the verb that goes with it: `12 of the 20 places`, `1 of the 20 places`, `the one place`, `no place`. */
export function someOfAll(n: number, all: number, one: string, many = `${one}s`): { readonly which: string; readonly single: boolean } {
  if (all === 1) return { which: n === 1 ? `the one ${one}` : `no ${one}`, single: true };
  return { which: `${n === 0 ? 'none' : n} of the ${all} ${many}`, single: n <= 1 };
}

/** How much of the vehicle holds what the works put there. */
export function heldByTheWorks(n: number, all: number): string {
  const { which, single } = someOfAll(n, all, 'place');
  return capital(`${which} on the vehicle ${single ? 'holds' : 'hold'} what the works put there.`);
}

/** A unit of the format as it is spoken: `imp-pt` as `imp pt`, never broken. */
export const unitWords = (unit: string): string => unit.replaceAll('-', '\u00a0');

/** `a, b and c`. */
export function listed(words: readonly string[]): string {
  if (words.length < 2) return words.join('');
  return `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;
}

export { inARow } from '../../../journal/replay/words.ts';

/** Names of things, which may have commas and `and` of their own: then semicolons stand between them. */
export function listedNames(names: readonly string[]): string {
  return names.length > 1 && names.some((name) => /,| and /.test(name)) ? names.join('; ') : listed(names);
}

/** The first letter made a capital: for the head of a sentence or a row. */
export function capital(text: string): string {
  return text === '' ? text : text.charAt(0).toLocaleUpperCase() + text.slice(1);
}

/** A text that ends as a sentence does, whatever its writer put there; '' stays ''. */
export function sentence(text: string | null): string {
  const words = text?.trim() ?? '';
  return words === '' || /[.!?…]["'’”)]*$/.test(words) ? words : `${words}.`;
}

const NUMBERS = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten', 'eleven', 'twelve'];

/** Small numbers in words, for running text: `three people`. */
export function spelled(n: number, one: string, many = `${one}s`): string {
  return `${NUMBERS[n] ?? n} ${n === 1 ? one : many}`;
}

/** Whether a copy has no hours, and with them no labour in any figure. */
export const leavesHoursOut = ({ leavesOut }: Pick<Copy, 'leavesOut'>): boolean => leavesOut.includes('hours');

/** What a copy keeps account of. */
export type AccountName = 'Hours and money' | 'Hours' | 'Money';

/** @returns null where the copy leaves out both */
export function accountName({ copy, figures: { hasMoney } }: Kept): AccountName | null {
  if (leavesHoursOut(copy)) return hasMoney ? 'Money' : null;
  return hasMoney ? 'Hours and money' : 'Hours';
}

/** Whether a record keeps hours or money; where it keeps neither there is nothing to add up. */
export const keepsAccount = ({ journal: { settings }, copy }: Pick<JournalRecord, 'journal' | 'copy'>): boolean =>
  settings.currency !== null || !leavesHoursOut(copy);

interface Kept {
  readonly copy: Pick<Copy, 'leavesOut'>;
  readonly figures: { readonly hasMoney: boolean };
}

/** The first words of a sentence on what nothing is told of; what a copy leaves out may well have been charged. */
export const NOTHING_CHARGED: Readonly<Record<AccountName, string>> = {
  'Hours and money': 'Nothing was charged',
  Hours: 'No hours were charged',
  Money: 'No money was charged',
};

/** Where an account would stand, and a copy has none: it leaves out hours, and money with them, or there never was any. */
export function whyNoAccount({ leavesOut }: Pick<Copy, 'leavesOut'>): string {
  return `This copy leaves ${leavesOut.includes('money') ? 'hours and money' : 'hours'} out.`;
}

/** Where budgets would stand: those of a kind that a copy leaves out there may well be. */
export function whyNoBudget({ leavesOut }: Pick<Copy, 'leavesOut'>): string {
  if (leavesHoursOut({ leavesOut })) return 'No subsystem has a budget of money. This copy leaves hours out.';
  if (leavesOut.includes('money')) return 'No subsystem has a budget of hours. This copy leaves money out.';
  return 'No subsystem has a budget. A budget in hours or money under a subsystem in journal.yaml fills this.';
}

/** Of a day on which the ledger tells of nothing yet. */
export const nothingBooked = ({ leavesOut }: Pick<Copy, 'leavesOut'>): string =>
  leavesHoursOut({ leavesOut }) ? 'No money had been booked by then. This copy leaves hours out.' : 'Nothing had been booked by then.';

/** Where hours would stand: nobody wrote any down, or the copy leaves them out. */
export function whyNoHours({ leavesOut }: Copy): string {
  return leavesHoursOut({ leavesOut }) ? 'this copy leaves hours out.' : 'no hours are written down yet. Hours in a session fill this.';
}
