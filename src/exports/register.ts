import type { JournalRecord } from '../journal/record.ts';
import { together } from '../journal/registers/occupant.ts';
import { type RegisterRow, registerAt } from '../journal/registers/register.ts';
import { type At, dateOf } from '../journal/registers/source.ts';
import { whereNowInWords } from '../journal/registers/where-now.ts';
import { originInWords } from '../journal/replay/words.ts';
import { csvOf } from './csv.ts';

const HEADER = [
  'as at',
  'position',
  'name',
  'subsystem',
  'takes',
  'decided',
  'because',
  'decided on',
  'fitted',
  'empty',
  'outcome',
  'place last changed',
  'originals',
  'mismatches',
  'not yet carried out',
  'went back otherwise',
];

/** The register at the end of a day as CSV: a line for each position, lists inside a field parted by `; `. */
export function registerCsv(record: JournalRecord, at: At = null): string {
  const date = dateOf(record, at);
  return csvOf(
    HEADER,
    registerAt(record, at).map((row) => lineOf(record, row, date)),
  );
}

function lineOf(record: JournalRecord, row: RegisterRow, date: string): (string | number)[] {
  const name = record.journal.positions.get(row.position)?.name ?? '';
  const list = <T>(items: readonly T[], words: (item: T) => string) => items.map(words).join('; ');
  return [
    date,
    row.position,
    name,
    row.subsystem,
    row.count,
    list(row.inForce, ({ decision, count }) => decidedWords(decision.verdict, decision.with, count, row.count)),
    list(row.inForce, ({ decision }) => decision.because ?? ''),
    list(row.inForce, ({ decision }) => decision.date),
    list(together(row.fitted), ({ part, count, origin }) => `${count} ${part} (${originInWords(origin)})`),
    row.empty,
    row.outcome.words,
    row.since.date,
    list(row.originals, ({ part, count, where }) => `${count} ${part} ${whereNowInWords(record, part, where, date)}`),
    list(row.mismatches, ({ words }) => words),
    list(row.pending, ({ words }) => words),
    list(row.otherwise, ({ words }) => words),
  ];
}

function decidedWords(verdict: string, other: string | null, count: number, of: number): string {
  const many = count < of ? ` (${count} of ${of})` : '';
  return `${verdict}${other === null ? '' : ` with ${other}`}${many}`;
}
