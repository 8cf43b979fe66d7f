/** The head of a client statement: who sends it and to whom, what for, and by when it is to be paid. Pure. */
import { dueDay } from '../journal/ledger/due-day.ts';
import type { Statement } from '../journal/ledger/statement.ts';
import { HEAD_NAMES, type HeadLine, type IsoDate, type Settings } from '../journal/model.ts';
import { keptIn } from '../journal/values/once.ts';

const dates = new Map<string, Intl.DateTimeFormat>();

/** A day as a statement says it: `5 Mar 2031`. */
export function dayWords(date: IsoDate, locale: string): string {
  const format = keptIn(
    dates,
    locale,
    () => new Intl.DateTimeFormat(locale, { day: 'numeric', month: 'short', year: 'numeric', timeZone: 'UTC' }),
  );
  return format.format(new Date(`${date}T00:00Z`));
}

/** Who sends a statement and to whom: as it was sent, else as journal.yaml has it. */
export function headOf({ head, to, account }: Statement, { title, vehicle, workshop, client, locale }: Settings): readonly HeadLine[] {
  if (head !== null) return head;
  const due = account.owed > 0 ? dueDay(client.terms, to) : null;
  const lines: readonly (readonly [string, string | null])[] = [
    [HEAD_NAMES.from, joined([workshop.name, workshop.address])],
    [HEAD_NAMES.taxNumber, workshop.taxNumber],
    [HEAD_NAMES.to, joined([client.name, client.address])],
    [HEAD_NAMES.reference, client.reference],
    [HEAD_NAMES.vehicle, joined([title, joined([vehicle.year, vehicle.make, vehicle.model], ' ')])],
    [HEAD_NAMES.terms, client.terms],
    [HEAD_NAMES.due, due && dayWords(due, locale)],
  ];
  return lines.flatMap(([name, words]) => (words === null ? [] : [{ name, words }]));
}

/** What there is of some words, in one text; null where there are none. */
export function joined(words: readonly (string | null)[], by = ', '): string | null {
  const said = words.filter((each) => each !== null && each !== '');
  return said.length === 0 ? null : said.join(by);
}
