import { type Diagnostic, diagnostic } from '../diagnostics/diagnostic.ts';
import { type ChargedThen, chargedThen, isSameWork } from '../ledger/frozen.ts';
import type { JournalRecord } from '../record.ts';
import { formatMinutes, formatMoney } from '../values/money.ts';

/** A closed statement charged what the notes tell, and showed as not charged what they say is not. Where they were edited since, it stands, and is told. */
export function closedStatements(record: JournalRecord): Diagnostic[] {
  return chargedThen(record).flatMap((each) =>
    each.entry !== null && isSameWork(each.entry, each.line) ? [] : [contradiction(each, record)],
  );
}

function contradiction({ statement, line, entry }: ChargedThen, { journal: { settings } }: JournalRecord): Diagnostic {
  const figures = (minutes: number | null, cost: number): string =>
    [minutes === null ? [] : formatMinutes(minutes), formatMoney(cost, settings)].flat().join(', ');
  const then = `Statement ${statement.number} ${line.notCharged === null ? 'charged' : 'did not charge'} ‘${line.what}’ of ${line.date} (${figures(line.minutes, line.cost)})`;
  const now =
    entry === null
      ? `and the notes no longer ${line.notCharged === null ? 'tell of it' : 'say so'}`
      : `and the notes now have ‘${entry.what}’ (${figures(entry.minutes, entry.gross)})`;
  const related = entry === null ? [] : [{ place: entry.place, message: 'This is what the notes have now.' }];
  const hint = 'What was sent stands. Put the note back, or set the difference right with the client and say so in a later note.';
  return diagnostic('A818', statement.place, `${then}, ${now}.`, { related, hint });
}
