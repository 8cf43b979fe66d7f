import { compileJournal } from '../../src/journal/pipeline.ts';
import type { JournalRecord } from '../../src/journal/record.ts';

/** The record of a journal given as its files; what is wrong with it is thrown. */
export function recordOf(files: Readonly<Record<string, string>>): JournalRecord {
  const encoder = new TextEncoder();
  const sources = Object.entries(files).map(([path, text]) => ({ path, bytes: encoder.encode(text) }));
  const { record, diagnostics } = compileJournal({ files: sources, assets: [], problems: [] }, { today: '2035-12-31' });
  const errors = diagnostics.filter((each) => each.severity === 'error');
  if (!record || errors.length > 0) throw new Error(errors.map((each) => `${each.code} ${each.place.file}: ${each.message}`).join('\n'));
  return record;
}
