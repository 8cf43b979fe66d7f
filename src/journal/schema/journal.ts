/** journal.yaml. */
import * as z from 'zod';
import { readMarkUp, readPercent } from '../values/tax.ts';
import { having } from './facts.ts';
import { date, fields, listOf, manyOf, maybe, oneOf, prose, read, text } from './fields.ts';
import { partName, personName } from './names.ts';
import { ENTRY_KINDS, LEAVE_OUT, STATEMENT_SHOWS } from './words.ts';

const rate = z.union([text, z.array(fields({ from: date, 'per-hour': text }))]);

const named = <T extends z.ZodType>(kind: T) => z.record(z.string(), kind).default({});

const vehicle = fields({ make: maybe(text), model: maybe(text), year: maybe(text), marks: named(text) });
const budget = fields({ hours: maybe(text), money: maybe(text) });
/** Who does the work: registered for tax where it has a number. */
const workshop = fields({ name: maybe(prose), address: maybe(prose), 'tax-number': maybe(text), tax: maybe(read(readPercent, '0%')) });
const client = fields({ name: maybe(prose), address: maybe(prose), reference: maybe(prose), terms: maybe(prose) });
const statement = fields({ shows: manyOf(oneOf(STATEMENT_SHOWS)) });
const copy = fields({
  'leave-out': manyOf(oneOf(LEAVE_OUT)),
  /** Texts of what is left out that its owner has looked at and lets stand, in prose or on a paper. */
  'may-say': manyOf(text),
});

export const journalSchema = fields({
  title: prose,
  about: maybe(text),
  vehicle: vehicle.prefault({}),
  /** The as-found state is of this day. */
  arrived: date,
  /** Without one the journal has no money. */
  currency: maybe(text),
  'time-zone': text.default('UTC'),
  locale: text.default('en-GB'),
  address: maybe(text),
  people: having(named(having(fields({ name: prose, rate: rate.default('0') }), { alone: 'name' })), { brings: 'person' }),
  /** Who keeps the vehicle at first; `handed-over` of a note passes it on. */
  keeper: maybe(personName),
  subsystems: having(named(having(fields({ name: prose, budget: budget.prefault({}) }), { alone: 'name' })), { brings: 'subsystem' }),
  milestones: having(named(text), { brings: 'milestone' }),
  stores: having(manyOf(text), { brings: 'store' }),
  stock: oneOf(['fifo', 'average']).default('fifo'),
  'mark-up': named(read(readMarkUp, '0%')),
  /** Kinds of entry that a tax return may deduct. */
  deductible: manyOf(oneOf(ENTRY_KINDS)),
  workshop: workshop.prefault({}),
  client: client.prefault({}),
  statement: statement.prefault({}),
  copies: named(copy),
  /** Stories through many sessions: the parts each is about. */
  threads: named(fields({ title: prose, parts: listOf(partName) })),
  /** The picture that the record opens with. */
  front: maybe(text),
  pictures: fields({ keep: listOf(oneOf(['time', 'camera'])).default(['time']) }).prefault({}),
});
export type JournalSource = z.output<typeof journalSchema>;
