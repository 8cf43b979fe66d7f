/** Every group of the format as a commented line that holds when its `#` is taken away. */
import type { IsoDate } from '../../journal/model.ts';
import type { JournalRecord } from '../../journal/record.ts';
import { asText } from './as-text.ts';
import { type Known, knownIn } from './known.ts';

/** A group that most evenings have stands open, its entry as a comment under it. */
interface Group {
  readonly field: string;
  readonly often?: boolean;
  /** Entries in one line each; null where the journal has nothing that it could be about. */
  readonly entries: (known: Known) => readonly (string | null)[];
  /** The value, of a group that is no list of entries. */
  readonly value?: (known: Known) => string;
}

const none = (): readonly string[] => [];

const GROUPS: readonly Group[] = [
  { field: 'hours', often: true, entries: ({ person, subsystem }) => [`{ by: ${person}, on: ${subsystem}, time: 19:30-21:30 }`] },
  {
    field: 'parts',
    often: true,
    entries: ({ fitted, off, store, out }) => [
      `{ part: ${fitted}, did: [removed, inspected], to: ${asText(store)}, condition: 1, marks: none, goes-back: which way round, note: what you saw }`,
      off && `{ part: ${off}, did: fitted, as-was: yes }`,
      out && `{ part: ${out.part}, did: returned, to: ${asText(store)} }`,
    ],
  },
  { field: 'decisions', often: true, entries: ({ fitted }) => [`{ part: ${fitted}, verdict: keep, because: why }`] },
  {
    field: 'attributed',
    entries: ({ fitted, person }) => [`{ part: ${fitted}, origin: earlier-replacement, by: ${person}, because: why }`],
  },
  {
    field: 'methods',
    entries: ({ fitted, consumable }) => [
      `{ on: [${fitted}], how: what was tried${consumable ? `, with: [${consumable.id}]` : ''}, material: on what, result: good }`,
    ],
  },
  {
    field: 'measured',
    entries: ({ fitted }) => [`{ part: ${fitted}, what: thickness, as: found, value: 4.2 mm, limits: 4.0..4.5 mm }`],
  },
  { field: 'bought', often: true, entries: ({ subsystem }) => [`{ what: split pins, for: ${subsystem}, cost: 4.20, from: a merchant }`] },
  {
    field: 'bills',
    // A discount of 5 % of 4.20 is 0.21.
    entries: ({ subsystem, out, tax }) => [
      out?.sent
        ? `{ from: ${asText(out.sent.firm)}, total: ${out.sent.quoted}, tax: ${tax['outside-work']}, lines: [{ what: ${asText(out.sent.work)}, as: outside-work, for: ${out.part}, cost: ${out.sent.quoted} }] }`
        : `{ from: a merchant, total: 4.99, discount: 5%, carriage: 1.00, tax: ${tax.part}, lines: [{ what: split pins, for: ${subsystem}, cost: 4.20 }] }`,
    ],
  },
  { field: 'sold', entries: ({ subsystem }) => [`{ what: scrap brass, on: ${subsystem}, price: 5.00, to: a scrap yard }`] },
  { field: 'received', entries: ({ client }) => [`{ from: ${asText(client)}, amount: 100.00, for: deposit }`] },
  { field: 'valued', entries: () => ['{ value: 5000.00, basis: agreed value for insurance, by: a valuer }'] },
  {
    field: 'used',
    often: true,
    entries: ({ consumable, subsystem }) => [
      consumable && `{ consumable: ${consumable.id}, amount: ${consumable.little}, on: ${subsystem} }`,
    ],
  },
  {
    field: 'counted',
    entries: ({ consumable }) => [consumable && `{ consumable: ${consumable.id}, amount: ${consumable.left}, because: stock-take }`],
  },
  {
    field: 'bags',
    often: true,
    entries: ({ freeBag, off }) => [
      `{ bag: ${freeBag}, holds: [2 bolts 5/16 BSF, 2 spring washers]${off ? `, off: ${off}` : ''}, goes-back: heads inboard }`,
    ],
  },
  { field: 'emptied', entries: none, value: ({ fullBag }) => `[${fullBag ?? ''}]` },
  {
    field: 'opens',
    often: true,
    entries: ({ next, subsystem }) => [
      `{ id: a-new-id, kind: task, what: what is still to do, on: ${subsystem}${next ? `, before: ${next.milestone.id}` : ''} }`,
    ],
  },
  { field: 'closes', often: true, entries: ({ item }) => [item && `{ id: ${item.id}, how: how it was done }`] },
  { field: 'defers', entries: ({ item, last }) => [item && last ? `{ id: ${item.id}, to: ${last}, because: why }` : null] },
  { field: 'handed-over', entries: ({ person }) => [`{ to: ${person}, how: returned, with: [keys, papers], note: what was agreed }`] },
  { field: 'reached', entries: ({ next }) => [next && reached(next)] },
  {
    field: 'film',
    entries: ({ fitted }) => [`{ clip: "https://example.org/reel-7", title: what is going on, shows: { "0:40": ${fitted} } }`],
  },
  { field: 'papers', entries: ({ fitted }) => [`{ paper: a-letter.pdf, kind: letter, what: what it says, shows: [${fitted}] }`] },
  { field: 'cautions', entries: none, value: () => '[asbestos]' },
  { field: 'private', entries: none, value: () => 'a line for the workshop' },
  { field: 'corrects', entries: none, value: ({ session }) => session ?? '' },
];

const MONEY = new Set(['bought', 'bills', 'sold', 'received', 'valued']);

/** The groups as lines of front matter, for a note of a day. */
export function exampleGroups(record: JournalRecord | null, date: IsoDate): readonly string[] {
  const known = knownIn(record, date);
  const currency = record?.journal.settings.currency ?? 'unknown';
  return GROUPS.filter(({ field }) => currency !== '' || !MONEY.has(field)).flatMap((group) => linesOf(group, known));
}

function linesOf({ field, often = false, entries, value }: Group, known: Known): string[] {
  if (value) return value(known) === '' || value(known) === '[]' ? [] : [`# ${field}: ${value(known)}`];
  const written = entries(known).filter((entry) => entry !== null);
  if (often) return [`${field}:`, ...written.map((entry) => `  # - ${entry}`)];
  return written.length === 0 ? [] : [`# ${field}: [${written.join(', ')}]`];
}

/** A gate that is held says by what, so that the line can be typed as it is. */
function reached({ milestone, items, temporary, earlier }: NonNullable<Known['next']>): string {
  const held = [...temporary, ...items, ...earlier].map(({ id }) => id);
  return `{ milestone: ${milestone.id}${held.length === 0 ? '' : `, with-open: [${held.join(', ')}], because: why`} }`;
}
