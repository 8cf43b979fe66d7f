/** statements/<number>.yaml: a statement that was closed, as it was sent. The tool writes them. */
import * as z from 'zod';
import { readPercent } from '../values/tax.ts';
import { count, date, fields, maybe, oneOf, prose, read, text } from './fields.ts';
import { personName, subsystemName } from './names.ts';
import { ENTRY_KINDS } from './words.ts';

const line = fields({
  /** The id of the entry that is charged. */
  entry: text,
  date,
  kind: oneOf(ENTRY_KINDS),
  what: prose,
  subsystem: subsystemName,
  person: maybe(personName),
  minutes: maybe(count),
  'per-hour': maybe(text),
  cost: text,
  net: text,
  'mark-up': text,
  rate: maybe(read(readPercent, '0%')),
  tax: text,
  charged: text,
});

export const statementSchema = fields({
  number: count,
  from: date,
  to: date,
  /** The sum of its lines. */
  charged: text,
  lines: z.array(line),
});
export type StatementSource = z.output<typeof statementSchema>;
