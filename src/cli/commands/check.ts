import { diagnosticsToJson } from '../../journal/diagnostics/as-json.ts';
import type { IsoDate } from '../../journal/model.ts';
import { cacheFolder } from '../../site/cache-folder.ts';
import { hasErrors } from '../../site/check-journal.ts';
import { keepCheck, keptCheck } from '../../site/kept/kept-check.ts';
import { todayBy } from '../../site/today.ts';
import { CONTENT, type Command } from '../command.ts';
import { dayOption, TO } from '../day-option.ts';
import type { Effects } from '../effects.ts';
import { EXIT, Refusal } from '../exit-codes.ts';
import { reportProblems } from '../report.ts';
import { checkLoaded, journalFolder, loadFolder, type OpenedJournal } from '../the-journal.ts';

/** Every problem of a journal, in file order; nothing is written unless it is asked to mend. */
export const check: Command = {
  name: 'check',
  summary: 'checks every note and says what is wrong, where, and how to mend it',
  takes: [],
  options: {
    content: CONTENT,
    to: TO,
    format: { type: 'string', value: 'text|json', help: 'text for people on standard error, or json on standard output' },
    fix: { type: 'boolean', help: 'writes what can be meant in one way only, shows it, and keeps a copy of each file' },
  },
  run: async (values, _takes, effects) => {
    const format = values.format ?? 'text';
    if (format !== 'text' && format !== 'json') throw new Refusal(EXIT.notUnderstood, `--format is text or json, not \`${format}\`.`);
    if (values.fix && format === 'json')
      throw new Refusal(EXIT.notUnderstood, '--fix shows what it writes as text; leave --format json out.');
    const folder = journalFolder(values, effects);
    const to = dayOption(values, 'to');
    const found = await checkedAgain(folder, to, effects);
    const opened = values.fix && (await mending()).mendFiles(found, effects) > 0 ? await checkedAgain(folder, to, effects) : found;
    if (opened.record !== null && values.to === undefined)
      (await import('../../editor/kept-things.ts')).keepThings(opened.sources, opened.record, cacheFolder(effects.env));
    if (format === 'json') effects.out(`${JSON.stringify(diagnosticsToJson(opened.diagnostics, opened.notes), null, 2)}\n`);
    else reportProblems(opened, effects);
    if (!values.fix && format === 'text' && hasErrors(opened.diagnostics)) {
      const lines = (await mending()).linesToMend(opened, effects);
      if (lines.length > 0) effects.err(`\`asfound check --fix\` mends what can be meant in one way only, here ${lines.join(', ')}.\n`);
    }
    return hasErrors(opened.diagnostics) ? EXIT.journalHasErrors : EXIT.done;
  },
};

/** What is not needed for most checks takes a while to load. */
const mending = () => import('../mend-files.ts');

/** Where nothing has changed since the last check, what it told; there is no record then. */
async function checkedAgain(folder: string, to: IsoDate | null, effects: Effects): Promise<OpenedJournal> {
  const sources = loadFolder(folder);
  const asked = { today: todayBy(effects.env, effects.now()), to, cache: cacheFolder(effects.env) };
  const before = keptCheck(sources, asked);
  if (before !== null) return { ...before, sources, folder, record: null, closedLater: [] };
  const opened = await checkLoaded(sources, effects, to);
  keepCheck(sources, asked, opened);
  return opened;
}
