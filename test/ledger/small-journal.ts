/** A small journal with money in it, made of a few notes. */
import { compileJournal } from '../../src/journal/pipeline.ts';
import type { JournalRecord } from '../../src/journal/record.ts';

export const JOURNAL = `title: Van
vehicle: { make: Quernby }
arrived: 2030-09-14
currency: GBP
time-zone: Europe/London
locale: en-GB
people:
  rh: { name: Ruth, rate: 0 }
  jm: { name: Jory, rate: [ { from: 2030-10-01, per-hour: 28.00 }, { from: 2031-04-06, per-hour: 30.00 } ] }
subsystems:
  brakes: { name: Brakes, budget: { hours: 2, money: 100.00 } }
  frame: { name: Frame, budget: { hours: 10 } }
milestones: { stripped: Stripped }
stores: [shelf]
stock: fifo
mark-up: { part: 10%, labour: 0% }
`;
export const CONSUMABLES = 'cleaner: { name: Brake cleaner, unit: L, opening: { amount: 2 L, value: 9.00 } }\n';
export const PARTS =
  '- { id: drum, name: Drum, origin: original }\n- { id: drum-spare, name: Spare drum, origin: donor, for: drum, at: shelf }\n';

/** The date of a note and its fields. */
export type NoteOf = readonly [date: string, fields: string];

/** A record and its problems from notes. */
export function journal(...notes: readonly NoteOf[]) {
  return journalWith({}, ...notes);
}

/** Its catalogues, where a test needs others. */
export interface Catalogues {
  readonly journal?: string;
  readonly consumables?: string;
  readonly parts?: string;
  /** The files of closed statements, the first first. */
  readonly statements?: readonly string[];
  /** The day that the record is to stand on; else that of the newest note. */
  readonly to?: string;
}

/** The same with other catalogues. */
export function journalWith(
  { journal = JOURNAL, consumables = CONSUMABLES, parts = PARTS, statements = [], to }: Catalogues,
  ...notes: readonly NoteOf[]
): { record: JournalRecord; problems: string[]; warnings: string[]; hints: string[] } {
  const encoder = new TextEncoder();
  const texts: Record<string, string> = { 'journal.yaml': journal, 'consumables.yaml': consumables, 'parts/brakes.yaml': parts };
  statements.forEach((text, i) => {
    texts[`statements/000${i + 1}.yaml`] = text;
  });
  notes.forEach(([date, fields], i) => {
    texts[`sessions/${date}-${i}.md`] = `---\ndate: ${date}\ntitle: Evening\n${fields}\n---\n`;
  });
  const files = Object.entries(texts).map(([path, text]) => ({ path, bytes: encoder.encode(text) }));
  const { record, diagnostics } = compileJournal({ files, assets: [], problems: [] }, { today: '2035-12-31', to: to ?? null });
  if (!record) throw new Error('journal.yaml was not understood');
  const told = (severity: string) => diagnostics.filter((each) => each.severity === severity).map((each) => `${each.code} ${each.message}`);
  const hints = diagnostics.flatMap(({ severity, hint }) => (severity === 'error' && hint ? [hint] : []));
  return { record, problems: told('error'), warnings: told('warning'), hints };
}

export const gross = (record: JournalRecord) => record.ledger.entries.map((entry) => entry.gross);
export const hours = (by: string, time: string, on = 'brakes', more = '') => `hours: [{ by: ${by}, on: ${on}, time: ${time}${more} }]`;
