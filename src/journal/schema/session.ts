/** The front matter of a note. Whatever depends on the journal (money, references) stays text here. */
import * as z from 'zod';
import { readQuantity } from '../values/quantity.ts';
import { bagNumber, condition, count, date, entries, fields, listOf, newId, oneOf, read, text } from './fields.ts';
import { ACTIONS, BOUGHT_AS, GONE_HOW, HAZARDS, ITEM_KINDS, RESULTS, VERDICTS } from './words.ts';

const hours = fields({ by: text, on: text, time: text, unpaid: text.optional() });

const touched = fields({
  part: text,
  did: listOf(oneOf(ACTIONS)).optional(),
  to: text.optional(),
  at: text.optional(),
  from: text.optional(),
  count: count.optional(),
  how: oneOf(GONE_HOW).optional(),
  condition: condition.optional(),
  marks: text.optional(),
  finish: text.optional(),
  note: text.optional(),
});

const decision = fields({
  part: text,
  verdict: oneOf(VERDICTS),
  with: text.optional(),
  count: count.optional(),
  because: text.optional(),
});

const method = fields({
  on: listOf(text),
  how: text,
  with: listOf(text).optional(),
  material: text.optional(),
  result: oneOf(RESULTS).optional(),
  note: text.optional(),
});

const measurement = fields({
  part: text,
  what: text,
  as: oneOf(['found', 'left']).optional(),
  value: read(readQuantity),
  limits: text.optional(),
  note: text.optional(),
});

/** A line of a bill: a thing or a service. What it costs is read with the journal's currency. */
const lineShape = {
  what: text.optional(),
  as: oneOf(BOUGHT_AS).optional(),
  for: text.optional(),
  consumable: text.optional(),
  amount: read(readQuantity).optional(),
  cost: text,
  tax: text.optional(),
  split: z.record(z.string(), text).optional(),
  refund: text.optional(),
};

const bought = fields({ ...lineShape, from: text.optional(), paper: text.optional() });

const bill = fields({
  from: text.optional(),
  paper: text.optional(),
  currency: text.optional(),
  total: text.optional(),
  discount: text.optional(),
  carriage: text.optional(),
  tax: text.optional(),
  lines: z.array(fields(lineShape)),
});

const sold = fields({
  part: text.optional(),
  what: text.optional(),
  on: text.optional(),
  count: count.optional(),
  price: text,
  tax: text.optional(),
  to: text.optional(),
});

const used = fields({ consumable: text, amount: read(readQuantity), on: text });
const counted = fields({ consumable: text, amount: read(readQuantity), because: text });

const bag = fields({
  bag: bagNumber,
  holds: listOf(text),
  off: text.optional(),
  'goes-back': text.optional(),
  picture: text.optional(),
});

const opening = fields({
  id: newId,
  kind: oneOf(ITEM_KINDS),
  what: text,
  before: text.optional(),
  on: text.optional(),
  price: text.optional(),
});

const picture = fields({
  file: text,
  shows: listOf(text).optional(),
  view: text.optional(),
  caption: text.optional(),
  alt: text.optional(),
});

const film = fields({
  clip: text,
  title: text.optional(),
  shows: z.record(z.string(), listOf(text)).optional(),
});

const paper = fields({
  paper: text,
  kind: oneOf(['receipt', 'letter', 'photograph', 'build-sheet', 'other']),
  what: text.optional(),
  date: date.optional(),
  shows: listOf(text).optional(),
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
  emptied: listOf(bagNumber).optional(),
  opens: entries(opening),
  closes: entries(fields({ id: text, how: text.optional() })),
  defers: entries(fields({ id: text, to: text, because: text })),
  reached: entries(fields({ milestone: text, 'with-open': listOf(text).optional(), because: text.optional() })),
  pictures: entries(picture),
  film: entries(film),
  papers: entries(paper),
  cautions: listOf(oneOf(HAZARDS)).optional(),
  private: text.optional(),
  corrects: text.optional(),
});

export type SessionSource = z.output<typeof sessionSchema>;
