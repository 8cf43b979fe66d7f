import { copiesOf, copyOf } from '../journal/copy/copy.ts';
import type { JournalRecord } from '../journal/record.ts';
import type { Option, OptionValues } from './command.ts';
import { EXIT, Refusal } from './exit-codes.ts';

/** Which copy of the record is made. */
export const COPY: Option = {
  type: 'string',
  value: 'record|workshop|keeper|public',
  help: 'which copy: record (all but private matter, the usual one), workshop (everything), keeper (all but private matter of former keepers), public, or one that journal.yaml names',
};

/**
 * The copy of a record that is asked for.
 *
 * @throws Refusal when there is none of that name
 */
export function copyAsked(record: JournalRecord, values: OptionValues): JournalRecord {
  const name = typeof values.copy === 'string' ? values.copy : 'record';
  const names = [...copiesOf(record.journal).keys()];
  if (!names.includes(name)) throw new Refusal(EXIT.notUnderstood, `there is no copy \`${name}\`: ${names.join(', ')}.`);
  return copyOf(record, name);
}
