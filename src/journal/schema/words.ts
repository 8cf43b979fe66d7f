/** The words and marks everything else is made of: ids, and the lists a field may take a word from. */

export type PartId = string;
/** The id of the part that makes the position. */
export type PositionId = string;
export type SessionId = string;
export type SubsystemId = string;
export type PersonId = string;
/** Everybody who worked, in a copy that names nobody. */
export const SOMEBODY: PersonId = 'somebody';
export type ConsumableId = string;
export type MilestoneId = string;
export type ItemId = string;

/** What cannot be laid to one subsystem counts under this one. */
export const GENERAL: SubsystemId = 'general';

export const ORIGINS = [
  'original',
  'earlier-replacement',
  'donor',
  'new-old-stock',
  'period',
  'reproduction',
  'new',
  'made',
  'borrowed',
  'unknown',
] as const;
export type Origin = (typeof ORIGINS)[number];

export const ACTIONS = [
  'removed',
  'fitted',
  'stored',
  'sent-out',
  'returned',
  'acquired',
  'made',
  'gone',
  'inspected',
  'measured',
  'cleaned',
  'conserved',
  'repaired',
  'machined',
  'refinished',
  'adjusted',
  'lubricated',
  'tested',
  'marked',
] as const;
export type ActionWord = (typeof ACTIONS)[number];

export const VERDICTS = ['keep', 'conserve', 'repair', 'refinish', 'replace', 'omit', 'defer'] as const;
export type Verdict = (typeof VERDICTS)[number];

export const HAZARDS = [
  'asbestos',
  'lead-paint',
  'isocyanates',
  'fuel-vapour',
  'hot-work',
  'stored-energy',
  'pressure',
  'lifting',
  'battery',
  'brake-fluid',
  'coolant',
  'oily-rags',
  'exhaust-gas',
  'solvents',
  'dust',
  'plating',
  'burnt-seals',
  'light-metal',
  'luminous-dials',
] as const;
export type Hazard = (typeof HAZARDS)[number];

/** A major component of the vehicle, in a word of the points tables. */
export type Component = string;

export const ITEM_KINDS = ['task', 'question', 'buy', 'waiting', 'temporary'] as const;
export type ItemKind = (typeof ITEM_KINDS)[number];

/** How a part went for good. `returned` is to whom it was borrowed or bought of. */
export const GONE_HOW = ['scrapped', 'sold', 'given', 'returned', 'lost', 'stolen', 'made-into'] as const;
export type GoneHow = (typeof GONE_HOW)[number];

/** How an entry was done: how a part went, that it was sent out on loan, or that what was dangerous in it is dangerous no longer. */
export const HOW = [...GONE_HOW, 'loan', 'made-safe'] as const;
export type How = (typeof HOW)[number];

/** How the vehicle passed to another keeper. `returned` is to whom it belongs, after work or a loan. */
export const PASSED_HOW = ['sold', 'given', 'returned', 'lent'] as const;
export type PassedHow = (typeof PASSED_HOW)[number];

export const RESULTS = ['good', 'fair', 'poor'] as const;
export type MethodResult = (typeof RESULTS)[number];

export const BOUGHT_AS = ['part', 'consumable', 'outside-work', 'tool', 'carriage', 'fee', 'vehicle'] as const;
export type BoughtAs = (typeof BOUGHT_AS)[number];

/** What a statement shows the client besides what is charged. */
export const STATEMENT_SHOWS = ['costs', 'mark-up', 'not-charged'] as const;
export type StatementShows = (typeof STATEMENT_SHOWS)[number];

export const ENTRY_KINDS = ['labour', ...BOUGHT_AS, 'sale'] as const;
export type EntryKind = (typeof ENTRY_KINDS)[number];

/** Condition class 0 to 3 (EN 16096:2012, by analogy; the words of the classes are from memory). */
export type Condition = 0 | 1 | 2 | 3;

export const CONDITION_WORDS: Readonly<Record<Condition, string>> = {
  0: 'no symptoms',
  1: 'minor symptoms',
  2: 'moderately strong symptoms',
  3: 'major symptoms',
};

/** A copy of the record: `workshop`, `record`, `public`, or one that the journal names. */
export type CopyName = string;
/** `former-private`: private matter of keepers who have the vehicle no longer. */
export const LEAVE_OUT = ['private', 'former-private', 'money', 'hours', 'people', 'marks', 'stores', 'papers', 'film'] as const;
export type LeaveOut = (typeof LEAVE_OUT)[number];
