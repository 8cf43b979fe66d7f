import { join, relative, resolve } from 'node:path';
import { makeWay } from '../../disk/write-new.ts';
import { tableToCsv } from '../../exports/csv.ts';
import { frozenStatement } from '../../exports/frozen-statement.ts';
import { printedStatement } from '../../exports/printed-statement.ts';
import { statementTable } from '../../exports/statement.ts';
import { statementDocument } from '../../exports/statement-document.ts';
import { statementPage } from '../../exports/statement-page.ts';
import { lastClosed } from '../../journal/ledger/frozen.ts';
import { asSent, closedStatement, type Statement, statementOf } from '../../journal/ledger/statement.ts';
import type { FrozenStatement, IsoDate } from '../../journal/model.ts';
import type { JournalRecord } from '../../journal/record.ts';
import { addDays } from '../../journal/values/date.ts';
import { compareText } from '../../journal/values/text-order.ts';
import { hasErrors } from '../../site/check-journal.ts';
import { CONTENT, type Command, type OptionValues } from '../command.ts';
import { dayOption } from '../day-option.ts';
import { EXIT, Refusal } from '../exit-codes.ts';
import { reportProblems } from '../report.ts';
import { journalFolder, openJournal } from '../the-journal.ts';
import { refusing, writeNew } from '../write-new.ts';

/** What a client is asked for, of a time. */
export const statement: Command = {
  name: 'statement',
  summary: 'writes what a client is asked for, from one day to another, and closes it when it is sent',
  takes: [],
  options: {
    content: CONTENT,
    from: {
      type: 'string',
      value: 'DATE',
      help: 'the first day (else the day after the last closed statement, or that the vehicle arrived)',
    },
    to: { type: 'string', value: 'DATE', help: 'the last day (else that of the newest note)' },
    close: { type: 'boolean', help: 'keep it as the next number in statements/: what it charges is never charged again' },
    number: { type: 'string', value: 'N', help: 'the closed statement of that number, as it was sent' },
    out: { type: 'string', value: 'FILE', help: 'FILE.pdf, FILE.html or FILE.csv; it must not be there yet' },
  },
  more: 'Hours at their rates, parts, consumables as used and outside work, with mark-up and tax, what was received and what is\nowed. The client, the terms and what is shown of costs and mark-up are set in journal.yaml.',
  run: async (values, _takes, effects) => {
    const asked = askedFor(values);
    const given = { from: dayOption(values, 'from'), to: dayOption(values, 'to') };
    const folder = journalFolder(values, effects);
    const opened = await openJournal(folder, effects, given.to);
    if (opened.record === null || hasErrors(opened.diagnostics)) {
      reportProblems(opened, effects);
      effects.err('No statement was written.\n');
      return EXIT.journalHasErrors;
    }
    const { record, closedLater } = opened;
    const closed = [...record.journal.statements, ...closedLater];
    const out = asked.out === null ? null : resolve(effects.cwd, asked.out);
    // A paper that could not be written would be of a statement that is closed already.
    if (out !== null) refusing(out, () => makeWay(out));
    const made = asked.number === null ? openStatement(record, closed, given) : numbered(record, closed, asked.number);
    const sent = asked.close ? asSent(made, nextNumber(record), record) : made;
    const paper = out === null ? null : rendered(sent, record, out);
    const write = (path: string, bytes: string | Uint8Array): void => {
      writeNew(path, bytes);
      effects.out(`${relative(effects.cwd, path)}\n`);
    };
    if (asked.close) write(...closing(sent, record, folder));
    if (out !== null && paper !== null) tellingWhatIsClosed(asked, sent, () => write(out, paper));
    return EXIT.done;
  },
};

/** What was closed stays so when its paper cannot be written: the refusal says how to set it again. */
function tellingWhatIsClosed({ close, out }: Asked, { number }: Statement, write: () => void): void {
  try {
    write();
  } catch (error) {
    if (!close || !(error instanceof Refusal)) throw error;
    const again = `The statement is closed: \`statement --number ${number} --out ${out}\` sets it.`;
    throw new Refusal(error.exit, `${error.message} ${again}`);
  }
}

interface Asked {
  readonly out: string | null;
  readonly close: boolean;
  readonly number: number | null;
}

function askedFor({ out, close, number }: OptionValues): Asked {
  if (out !== undefined && (typeof out !== 'string' || !/\.(pdf|html|csv)$/i.test(out))) {
    throw new Refusal(EXIT.notUnderstood, '--out is FILE.pdf, FILE.html or FILE.csv.');
  }
  if (out === undefined && close !== true) {
    throw new Refusal(EXIT.notUnderstood, '`statement` needs --out FILE.pdf, FILE.html or FILE.csv, or --close.');
  }
  if (number !== undefined && (close === true || !/^[1-9]\d{0,5}$/.test(String(number)))) {
    throw new Refusal(EXIT.notUnderstood, '--number names a statement that was closed, from 1; it is not closed again.');
  }
  return { out: typeof out === 'string' ? out : null, close: close === true, number: number === undefined ? null : Number(number) };
}

function openStatement(
  record: JournalRecord,
  closed: readonly FrozenStatement[],
  given: { readonly from: IsoDate | null; readonly to: IsoDate | null },
): Statement {
  const { journal, day } = record;
  const last = lastClosed(closed);
  const to = given.to ?? (last !== null && last.to > day ? last.to : day);
  refuseClosed(closed, to);
  const next = last === null ? journal.settings.arrived : addDays(last.to, 1);
  // What was told late may all be of days that a closed statement was of.
  const from = given.from ?? earlier(next, to);
  if (to < from) throw new Refusal(EXIT.notUnderstood, `--to ${to} is before --from ${from}.`);
  return statementOf(record, from, to);
}

/** What was closed is charged already, and what comes before it as well. */
function refuseClosed(closed: readonly FrozenStatement[], to: IsoDate): void {
  const [last, of] = [lastClosed(closed), closed.find((each) => to <= each.to)];
  if (last === null || of === undefined || to >= last.to) return;
  const where = to < of.from ? 'before' : 'within';
  throw new Refusal(
    EXIT.notUnderstood,
    `--to ${to} is ${where} statement ${of.number}, which was closed: it charges ${of.from} to ${of.to}. \`--number ${of.number}\` sets it as it was sent; what was told since of that time goes onto the next one, with \`--to ${last.to}\` or later.`,
  );
}

function earlier(a: IsoDate, b: IsoDate): IsoDate {
  return compareText(a, b) < 0 ? a : b;
}

function numbered(record: JournalRecord, statements: readonly FrozenStatement[], number: number): Statement {
  const frozen = statements.find((each) => each.number === number);
  if (frozen) return closedStatement(frozen, record);
  const there =
    statements.length === 0
      ? 'None was closed yet.'
      : `There ${statements.length === 1 ? 'is' : 'are'} ${statements.map((each) => each.number).join(', ')}.`;
  throw new Refusal(EXIT.notUnderstood, `There is no closed statement ${number}. ${there}`);
}

function nextNumber({ journal }: JournalRecord): number {
  return (lastClosed(journal.statements)?.number ?? 0) + 1;
}

/** The file that keeps a statement, and where it lies in the journal. */
function closing(made: Statement, record: JournalRecord, folder: string): readonly [string, string] {
  if (made.groups.length === 0) throw new Refusal(EXIT.notUnderstood, nothingToClose(made, record.journal.statements));
  return [join(folder, fileOf(Number(made.number))), frozenStatement(made, record.journal.settings)];
}

const fileOf = (number: number): string => `statements/${String(number).padStart(4, '0')}.yaml`;

/** What was charged of these days is on a statement already, or nothing was. */
function nothingToClose({ from, to }: Statement, closed: readonly FrozenStatement[]): string {
  const last = closed.findLast((each) => each.from <= to && each.to >= from);
  if (last === undefined) return `Nothing of ${from} to ${to} is charged, so there is nothing to close.`;
  const { number } = last;
  return `Nothing is left to close: statement ${number}, which is closed (${fileOf(number)}), has charged ${last.from} to ${last.to} already. \`statement --number ${number} --out FILE.pdf\` sets it as it was sent.`;
}

function rendered(made: Statement, { journal }: JournalRecord, out: string): string | Uint8Array {
  if (/\.csv$/i.test(out)) return tableToCsv(statementTable(made, journal.settings));
  const document = statementDocument(made, journal);
  return /\.pdf$/i.test(out) ? printedStatement(document).pdf : statementPage(document);
}
