import { relative, resolve } from 'node:path';
import { tableToCsv } from '../../exports/csv.ts';
import { statementTable } from '../../exports/statement.ts';
import { statementPage } from '../../exports/statement-page.ts';
import { statementOf } from '../../journal/ledger/statement.ts';
import { hasErrors } from '../../site/check-journal.ts';
import { CONTENT, type Command } from '../command.ts';
import { dayOption } from '../day-option.ts';
import { EXIT, Refusal } from '../exit-codes.ts';
import { reportProblems } from '../report.ts';
import { journalFolder, openJournal } from '../the-journal.ts';
import { writeNew } from '../write-new.ts';

/** What a client is asked for, of a time. */
export const statement: Command = {
  name: 'statement',
  summary: 'writes what a client is asked for, from one day to another, as a page or as CSV',
  takes: [],
  options: {
    content: CONTENT,
    from: { type: 'string', value: 'DATE', help: 'the first day (else the day the vehicle arrived)' },
    to: { type: 'string', value: 'DATE', help: 'the last day (else that of the newest note)' },
    out: { type: 'string', value: 'FILE', help: 'FILE.html or FILE.csv; it must not be there yet' },
  },
  more: 'Hours at their rates, parts, consumables as used, outside work, and the tax inside them by rate.\nMark-up for each kind is set under `mark-up` in journal.yaml.',
  run: async (values, _takes, effects) => {
    const out = values.out;
    if (typeof out !== 'string' || !/\.(html|csv)$/i.test(out)) {
      throw new Refusal(EXIT.notUnderstood, '`statement` needs --out FILE.html or --out FILE.csv.');
    }
    const given = { from: dayOption(values, 'from'), to: dayOption(values, 'to') };
    const opened = await openJournal(journalFolder(values, effects), effects, given.to);
    if (opened.record === null || hasErrors(opened.diagnostics)) {
      reportProblems(opened, effects);
      effects.err('No statement was written.\n');
      return EXIT.journalHasErrors;
    }
    const { journal, day } = opened.record;
    const from = given.from ?? journal.settings.arrived;
    const to = given.to ?? day;
    if (to < from) throw new Refusal(EXIT.notUnderstood, `--to ${to} is before --from ${from}.`);
    const made = statementOf(opened.record, from, to);
    const path = resolve(effects.cwd, out);
    const csv = /\.csv$/i.test(out);
    writeNew(path, csv ? tableToCsv(statementTable(made, journal.settings)) : statementPage(made, journal));
    effects.out(`${relative(effects.cwd, path)}\n`);
    return EXIT.done;
  },
};
