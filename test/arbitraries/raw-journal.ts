/**
 * Journals as whole numbers: pence, minutes, millilitres. `filesOf` writes them as a restorer would; a
 * test can reckon the same numbers by other means and compare.
 */
import fc from 'fast-check';

export interface RawHours {
  readonly by: 'rh' | 'jm';
  readonly on: string;
  readonly minutes: number;
  readonly unpaid: boolean;
}

export interface RawLine {
  readonly as: 'part' | 'outside-work' | 'tool' | 'carriage' | 'fee';
  readonly for: string;
  readonly pence: number;
  /** Per cent. */
  readonly tax: number;
  readonly onTop: boolean;
  readonly refund: boolean;
}

/** Bought or used: of brake cleaner, in millilitres. Uses are parts in a thousand of what is there. */
export interface RawStock {
  /** What is bought for stock costs nothing before it is used, whatever it is bought for. */
  readonly bought: readonly { readonly ml: number; readonly pence: number; readonly for?: string | undefined }[];
  readonly used: readonly { readonly on: string; readonly perMille: number }[];
  readonly countedPerMille: number | null;
}

export interface RawSession {
  /** Days after the vehicle arrived. */
  readonly day: number;
  readonly hours: readonly RawHours[];
  readonly lines: readonly RawLine[];
  readonly sold: readonly { readonly on: string; readonly pence: number }[];
  readonly stock: RawStock;
}

export interface RawJournal {
  readonly method: 'fifo' | 'average';
  readonly opening: { readonly ml: number; readonly pence: number };
  /** In order of day. */
  readonly sessions: readonly RawSession[];
}

/** Pence an hour by person, from days after arrival. */
export const RATES = {
  rh: [{ from: 0, pence: 0 }],
  jm: [
    { from: 0, pence: 2800 },
    { from: 200, pence: 3055 },
  ],
} as const;
export const SUBSYSTEMS = ['brakes', 'frame', 'trim'] as const;

const on = fc.constantFrom('brakes', 'frame', 'trim', 'drum', 'studs');
const pence = fc.integer({ min: 0, max: 99_999 });

const session: fc.Arbitrary<RawSession> = fc.record({
  day: fc.integer({ min: 0, max: 400 }),
  hours: fc.array(fc.record({ by: fc.constantFrom('rh', 'jm'), on, minutes: fc.integer({ min: 1, max: 30 }), unpaid: fc.boolean() }), {
    maxLength: 3,
  }),
  lines: fc.array(
    fc.record({
      as: fc.constantFrom('part', 'outside-work', 'tool', 'carriage', 'fee'),
      for: on,
      pence: fc.integer({ min: 1, max: 99_999 }),
      tax: fc.constantFrom(0, 5, 20),
      onTop: fc.boolean(),
      refund: fc.boolean(),
    }),
    { maxLength: 3 },
  ),
  sold: fc.array(fc.record({ on: fc.constantFrom(...SUBSYSTEMS), pence }), { maxLength: 1 }),
  stock: fc.record({
    bought: fc.array(fc.record({ ml: fc.integer({ min: 1, max: 5000 }), pence, for: fc.option(on, { nil: undefined }) }), { maxLength: 2 }),
    used: fc.array(fc.record({ on, perMille: fc.integer({ min: 0, max: 1000 }) }), { maxLength: 3 }),
    countedPerMille: fc.option(fc.integer({ min: 0, max: 1200 }), { nil: null, freq: 4 }),
  }),
});

/** A journal of up to `most` evenings. */
export function rawJournal(most: number): fc.Arbitrary<RawJournal> {
  return fc.record({
    method: fc.constantFrom('fifo', 'average'),
    opening: fc.record({ ml: fc.integer({ min: 1, max: 3000 }), pence }),
    sessions: fc.array(session, { minLength: 1, maxLength: most }).map((all) => all.toSorted((a, b) => a.day - b.day)),
  });
}

/** The date so many days after the vehicle arrived, 14 September 2030. */
export function dateOf(day: number): string {
  return new Date(Date.UTC(2030, 8, 14 + day)).toISOString().slice(0, 10);
}

const pounds = (amount: number): string =>
  `${amount < 0 ? '-' : ''}${Math.floor(Math.abs(amount) / 100)}.${String(Math.abs(amount) % 100).padStart(2, '0')}`;

/** The journal as its files. Millilitres used are whole, and no more than there are. */
export function filesOf(raw: RawJournal): Record<string, string> {
  let shelf = raw.opening.ml;
  const notes = raw.sessions.map((each, i) => {
    const used = (perMille: number): number => {
      const ml = Math.floor((shelf * perMille) / 1000);
      shelf -= ml;
      return ml;
    };
    const fields = fieldsOf(
      each,
      () => shelf,
      (ml) => (shelf = ml),
      used,
    );
    const id = `${dateOf(each.day)}-${String(i).padStart(3, '0')}`;
    return [`sessions/${id}.md`, `---\ndate: ${dateOf(each.day)}\ntitle: Evening ${i}\n${fields}---\n`] as const;
  });
  return {
    'journal.yaml': JOURNAL.replace('METHOD', raw.method),
    'consumables.yaml': `cleaner: { name: Brake cleaner, unit: L, opening: { amount: ${raw.opening.ml} ml, value: ${pounds(raw.opening.pence)} } }\n`,
    'parts/brakes.yaml': '- { id: drum, name: Drum, origin: original }\n',
    'parts/frame.yaml': '- { id: studs, name: Studs, origin: original, count: 5 }\n',
    ...Object.fromEntries(notes),
  };
}

const JOURNAL = `title: Van
vehicle: { make: Quernby }
arrived: 2030-09-14
currency: GBP
time-zone: Europe/London
locale: en-GB
people:
  rh: { name: Ruth, rate: 0 }
  jm: { name: Jory, rate: [ { from: 2030-09-14, per-hour: 28.00 }, { from: ${dateOf(200)}, per-hour: 30.55 } ] }
subsystems:
  brakes: { name: Brakes, budget: { hours: 2, money: 100.00 } }
  frame: { name: Frame, budget: { money: 0.50 } }
  trim: { name: Trim }
milestones: { stripped: Stripped }
stores: [shelf]
stock: METHOD
mark-up: { part: 10%, labour: 7%, consumable: 12%, outside-work: 5% }
`;

function fieldsOf(each: RawSession, shelf: () => number, setShelf: (ml: number) => void, use: (perMille: number) => number): string {
  const bought = each.stock.bought.map(
    ({ ml, pence: paid, for: to }) =>
      `{ consumable: cleaner, amount: ${ml} ml, cost: ${pounds(paid)}, tax: 20%${to === undefined ? '' : `, for: ${to}`} }`,
  );
  for (const { ml } of each.stock.bought) setShelf(shelf() + ml);
  const used = each.stock.used.flatMap(({ on: where, perMille }) => {
    const ml = use(perMille);
    return ml === 0 ? [] : [`{ consumable: cleaner, amount: ${ml} ml, on: ${where} }`];
  });
  const counted = each.stock.countedPerMille === null ? [] : [Math.floor((shelf() * each.stock.countedPerMille) / 1000)];
  for (const ml of counted) setShelf(ml);
  return [
    list(
      'hours',
      each.hours.map((one) => `{ by: ${one.by}, on: ${one.on}, time: ${one.minutes}m${one.unpaid ? ', unpaid: learning' : ''} }`),
    ),
    list('bought', [...each.lines.map(lineOf), ...bought]),
    list(
      'sold',
      each.sold.map((one) => `{ what: Spares, on: ${one.on}, price: ${pounds(one.pence)} }`),
    ),
    list('used', used),
    list(
      'counted',
      counted.map((ml) => `{ consumable: cleaner, amount: ${ml} ml, because: counted }`),
    ),
  ].join('');
}

function lineOf(line: RawLine): string {
  const tax = line.tax === 0 ? 'exempt' : `${line.tax}%${line.onTop ? ' on top' : ''}`;
  const refund = line.refund ? ', refund: sent back' : '';
  // What comes back was bought before the journal began: no purchase in it bears its name.
  return `{ what: ${line.refund ? 'Older thing' : 'Thing'}, as: ${line.as}, for: ${line.for}, cost: ${pounds(line.refund ? -line.pence : line.pence)}, tax: ${tax}${refund} }`;
}

function list(field: string, lines: readonly string[]): string {
  return lines.length === 0 ? '' : `${field}:\n${lines.map((each) => `  - ${each}\n`).join('')}`;
}
