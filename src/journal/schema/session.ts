/** The front matter of a note. Whatever depends on the journal (money, references) stays text here. */
import * as z from 'zod';
import { readQuantity } from '../values/quantity.ts';
import {
  bagNumber,
  condition,
  count,
  date,
  destination,
  entries,
  fields,
  listOf,
  manyOf,
  maybe,
  newId,
  oneOf,
  read,
  text,
} from './fields.ts';
import { ACTIONS, BOUGHT_AS, GONE_HOW, HAZARDS, ITEM_KINDS, RESULTS, VERDICTS } from './words.ts';

const hours = fields({
  by: text,
  on: text,
  time: text,
  /** Why it is not charged. */
  unpaid: maybe(text),
});

const touched = fields({
  part: text,
  did: manyOf(oneOf(ACTIONS)),
  to: maybe(destination),
  at: maybe(text),
  from: maybe(destination),
  /** Without it, all that are in the state the action needs. */
  count: maybe(count),
  how: maybe(oneOf(GONE_HOW)),
  condition: maybe(condition),
  marks: maybe(text),
  finish: maybe(text),
  note: maybe(text),
});

const decision = fields({
  part: text,
  verdict: oneOf(VERDICTS),
  with: maybe(text),
  count: maybe(count),
  because: maybe(text),
});

const method = fields({
  on: listOf(text),
  how: text,
  with: manyOf(text),
  material: maybe(text),
  result: maybe(oneOf(RESULTS)),
  note: maybe(text),
});

const measurement = fields({
  part: text,
  what: text,
  as: maybe(oneOf(['found', 'left'])),
  value: read(readQuantity),
  limits: maybe(text),
  note: maybe(text),
});

/** A line of a bill: a thing or a service. What it costs is read with the journal's currency. */
const lineShape = {
  what: maybe(text),
  as: maybe(oneOf(BOUGHT_AS)),
  for: maybe(text),
  consumable: maybe(text),
  amount: maybe(read(readQuantity)),
  cost: text,
  tax: maybe(text),
  split: maybe(z.record(z.string(), text)),
  /** Why money came back. */
  refund: maybe(text),
};

const bought = fields({ ...lineShape, from: maybe(text), paper: maybe(text) });

const bill = fields({
  from: maybe(text),
  paper: maybe(text),
  currency: maybe(text),
  total: maybe(text),
  discount: maybe(text),
  carriage: maybe(text),
  tax: maybe(text),
  lines: z.array(fields(lineShape)),
});

const sold = fields({
  part: maybe(text),
  what: maybe(text),
  on: maybe(text),
  count: maybe(count),
  price: text,
  tax: maybe(text),
  to: maybe(text),
});

const used = fields({ consumable: text, amount: read(readQuantity), on: text });
const counted = fields({ consumable: text, amount: read(readQuantity), because: text });

const bag = fields({
  bag: bagNumber,
  holds: listOf(text),
  off: maybe(text),
  'goes-back': maybe(text),
  picture: maybe(text),
});

const opening = fields({
  id: newId,
  kind: oneOf(ITEM_KINDS),
  what: text,
  before: maybe(text),
  on: maybe(text),
  price: maybe(text),
});

const picture = fields({
  file: text,
  shows: manyOf(text),
  view: maybe(text),
  caption: maybe(text),
  alt: maybe(text),
});

const film = fields({
  clip: text,
  title: maybe(text),
  shows: z.record(z.string(), listOf(text)).default({}),
});

const paper = fields({
  paper: text,
  kind: oneOf(['receipt', 'letter', 'photograph', 'build-sheet', 'other']),
  what: maybe(text),
  date: maybe(date),
  shows: manyOf(text),
});

export const sessionSchema = fields({
  date,
  title: text,
  hours: entries(hours),
  parts: entries(touched),
  decisions: entries(decision),
  methods: entries(method),
  measured: entries(measurement),
  bought: entries(bought),
  bills: entries(bill),
  sold: entries(sold),
  used: entries(used),
  counted: entries(counted),
  bags: entries(bag),
  emptied: manyOf(bagNumber),
  opens: entries(opening),
  closes: entries(fields({ id: text, how: maybe(text) })),
  defers: entries(fields({ id: text, to: text, because: text })),
  reached: entries(fields({ milestone: text, 'with-open': manyOf(text), because: maybe(text) })),
  pictures: entries(picture),
  film: entries(film),
  papers: entries(paper),
  cautions: manyOf(oneOf(HAZARDS)),
  private: maybe(text),
  corrects: maybe(text),
});

export type SessionSource = z.output<typeof sessionSchema>;

/** What an entry of a list says. */
export type EntryOf<Field extends keyof SessionSource> = SessionSource[Field] extends readonly (infer Item)[] ? Item : never;
