/** journal.yaml. */
import * as z from 'zod';
import { readPercent } from '../values/tax.ts';
import { date, fields, listOf, oneOf, read, text } from './fields.ts';
import { COPIES, LEAVE_OUT } from './words.ts';

const rate = z.union([text, z.array(fields({ from: date, 'per-hour': text }))]);

export const journalSchema = fields({
  title: text,
  about: text.optional(),
  vehicle: fields({
    make: text.optional(),
    model: text.optional(),
    year: text.optional(),
    marks: z.record(z.string(), text).optional(),
  }).optional(),
  arrived: date,
  currency: text,
  'time-zone': text.optional(),
  locale: text.optional(),
  address: text.optional(),
  people: z.record(z.string(), fields({ name: text, rate: rate.optional() })).optional(),
  subsystems: z
    .record(z.string(), fields({ name: text, budget: fields({ hours: text.optional(), money: text.optional() }).optional() }))
    .optional(),
  milestones: z.record(z.string(), text).optional(),
  stores: listOf(text).optional(),
  stock: oneOf(['fifo', 'average']).optional(),
  'mark-up': z.record(z.string(), read(readPercent, '0%')).optional(),
  copies: z.partialRecord(z.enum(COPIES), fields({ 'leave-out': listOf(oneOf(LEAVE_OUT)).optional() })).optional(),
  pictures: fields({ keep: listOf(oneOf(['time', 'camera'])).optional() }).optional(),
});
export type JournalSource = z.output<typeof journalSchema>;
