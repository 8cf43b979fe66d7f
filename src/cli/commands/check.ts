import { diagnosticsToJson } from '../../journal/diagnostics/as-json.ts';
import { hasErrors } from '../../site/check-journal.ts';
import { CONTENT, type Command } from '../command.ts';
import { dayOption, TO } from '../day-option.ts';
import { EXIT, Refusal } from '../exit-codes.ts';
import { reportProblems } from '../report.ts';
import { journalFolder, openJournal } from '../the-journal.ts';

/** Every problem of a journal, in file order; nothing is written. */
export const check: Command = {
  name: 'check',
  summary: 'checks every note and says what is wrong, where, and how to mend it',
  takes: [],
  options: {
    content: CONTENT,
    to: TO,
    format: { type: 'string', value: 'text|json', help: 'text for people on standard error, or json on standard output' },
  },
  run: async (values, _takes, effects) => {
    const format = values.format ?? 'text';
    if (format !== 'text' && format !== 'json') throw new Refusal(EXIT.notUnderstood, `--format is text or json, not \`${format}\`.`);
    const opened = await openJournal(journalFolder(values, effects), effects, dayOption(values, 'to'));
    if (format === 'json') effects.out(`${JSON.stringify(diagnosticsToJson(opened.diagnostics, opened.notes), null, 2)}\n`);
    else reportProblems(opened, effects);
    return hasErrors(opened.diagnostics) ? EXIT.journalHasErrors : EXIT.done;
  },
};
