/** statements/<number>.yaml: a statement that was closed, as it was sent. The tool writes them. */
import * as z from 'zod';
import { readPercent, TAX_STANDINGS } from '../values/tax.ts';
import { count, date, entries, fields, maybe, oneOf, prose, read, text, yes } from './fields.ts';
import { personName, subsystemName } from './names.ts';
import { ENTRY_KINDS, STATEMENT_SHOWS } from './words.ts';

const rate = maybe(read(readPercent, '0%'));

const line = fields({
  /** The id of the entry that is charged, or shown as not charged. */
  entry: text,
  date,
  kind: oneOf(ENTRY_KINDS),
  what: prose,
  /** Of labour: what was done, in the title of the note. */
  title: maybe(prose),
  subsystem: subsystemName,
  person: maybe(personName),
  minutes: maybe(count),
  'per-hour': maybe(text),
  cost: text,
  net: text,
  'mark-up': text,
  rate,
  tax: text,
  charged: text,
  /** Why it is not. */
  'not-charged': maybe(prose),
});

/** What was paid, or sold for, by how that stands to tax. */
const inside = fields({ standing: oneOf(TAX_STANDINGS), rate, sold: yes.default(false), net: text, tax: text, gross: text });
const receipt = fields({ date, from: prose, for: maybe(prose), amount: text });
const account = fields({ stated: text, open: text, received: text, since: maybe(date) });

/** What it was sent with besides its lines. */
const sentWith = fields({
  head: entries(fields({ name: prose, words: prose })),
  registered: yes,
  shows: z.array(oneOf(STATEMENT_SHOWS)),
  inside: entries(inside),
  received: entries(receipt),
  account,
});

export const statementSchema = fields({
  number: count,
  from: date,
  to: date,
  /** The sum of its lines. */
  charged: text,
  lines: z.array(line),
  'sent-with': maybe(sentWith),
});
export type StatementSource = z.output<typeof statementSchema>;
