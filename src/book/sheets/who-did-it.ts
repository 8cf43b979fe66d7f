/** Who did what, as far as a copy tells of it: who worked stands with the hours, and a firm by its name. */
import type { Copy, JournalRecord } from '../../journal/record.ts';
import { counted, leavesHoursOut, listed, listedNames } from '../../site/views/page/words.ts';
import type { BookSetting } from '../setting.ts';
import { words } from '../typst-text.ts';
import { cameShort } from './came-short.ts';

/** Whether a copy says of what was done who did it: where it leaves out hours or names, it does not. */
export const namesWorkers = (copy: Copy): boolean => !leavesHoursOut(copy) && namesAnybody(copy);

const namesAnybody = ({ leavesOut }: Copy): boolean => !leavesOut.includes('people');

/** Who worked, in how many sessions and how long, and which firms had what. */
export function whoDidIt(setting: BookSetting): string {
  const short = cameShort(setting);
  const owed = short.length === 0 ? '' : words(`Came back short: ${listedNames(short)}.`);
  return ['== Who did it', workers(setting), outsideWork(setting), outWith(setting), owed].join('\n\n');
}

function workers({ record, sheet }: BookSetting): string {
  const { copy, journal } = record;
  if (leavesHoursOut(copy)) return words('This copy leaves hours out, and with them who worked.');
  const worked = journal.sessions.flatMap(({ id, hours }) => hours.map((one) => ({ ...one, session: id })));
  const cells = [...Map.groupBy(worked, ({ by }) => by)].map(([person, hours]) => {
    const minutes = hours.reduce((sum, one) => sum + one.minutes, 0);
    return [sheet.personName(person), String(new Set(hours.map(({ session }) => session)).size), sheet.figures.time(minutes)]
      .map((cell) => `[${words(cell)}]`)
      .join(', ');
  });
  if (cells.length === 0) return words('No hours are written down.');
  const table = `#record-table(columns: (1fr, auto, auto), align: (left, right, right), head: ([Who], [Sessions], [Time]), ${cells.join(', ')})`;
  return namesAnybody(copy) ? table : `${table}\n\n${words('This copy leaves names out: all who worked are told as one.')}`;
}

function outWith({ record }: BookSetting): string {
  const firms = new Set(record.history.deeds.flatMap(({ to }) => (to.at === 'out' ? [to.firm] : [])));
  if (firms.size === 0) return '';
  return words(
    `Parts were out with ${namesAnybody(record.copy) ? listedNames([...firms].sort()) : 'firms, whose names this copy leaves out'}.`,
  );
}

function outsideWork({ record }: BookSetting): string {
  const billed = workBilled(record);
  if (billed.length === 0) return '';
  if (!namesAnybody(record.copy)) return words(`Outside work was done by firms: ${listedNames(billed.flatMap(([, what]) => what))}.`);
  return words(`Outside work was done by ${listedNames(billed.map(([firm, what]) => `${firm} (${listedNames(what)})`))}.`);
}

/** Firms whose bills are of outside work, and what that was, in the order of the notes; what was given back is no work. */
function workBilled({ journal }: Pick<JournalRecord, 'journal'>): readonly [firm: string, what: readonly string[]][] {
  const bills = journal.sessions.flatMap((session) => session.bills);
  const lines = bills.flatMap(({ from, lines }) =>
    lines.flatMap(({ as, what, gross, refund }) =>
      from !== null && as === 'outside-work' && gross >= 0 && refund === null ? [{ from, what }] : [],
    ),
  );
  return [...Map.groupBy(lines, ({ from }) => from)].map(([firm, of]) => [firm, [...new Set(of.map(({ what }) => what))]]);
}

/** What a record says of who worked, to follow `each dated`, or `dated` where there is one note. */
export function whoWorkedWords({ journal: { sessions }, copy }: Pick<JournalRecord, 'journal' | 'copy'>): string {
  if (leavesHoursOut(copy)) return '; who worked stands with the hours, which this copy leaves out';
  const unnamed = sessions.filter(({ hours }) => hours.length === 0);
  if (!namesAnybody(copy)) {
    const bare = unnamed.length === 0 ? '' : `, and ${counted(unnamed.length, 'note')} ${unnamed.length === 1 ? 'names' : 'name'} nobody`;
    return `; this copy leaves out the names of those who worked${bare}`;
  }
  const each = sessions.length === 1 ? '' : 'each ';
  return unnamed.length === 0
    ? `, ${each}with who worked`
    : `; who worked is not named in ${listed(unnamed.map(({ title }) => `‘${title}’`))}`;
}
