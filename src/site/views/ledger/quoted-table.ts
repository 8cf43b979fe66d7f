import type { PositionId } from '../../../journal/model.ts';
import type { JournalRecord } from '../../../journal/record.ts';
import type { QuotedWork } from '../../../journal/registers/quoted.ts';
import { quotedWork } from '../../../journal/registers/quoted.ts';
import { once } from '../../../journal/values/once.ts';
import { entryAddress } from '../books/entry-place.ts';
import { html, joined, type Piece } from '../page/html.ts';
import { chargeLink, linked, sessionDay, sub } from '../page/links.ts';
import type { RecordSheet, Sheet } from '../page/sheet.ts';
import { rows, type SetTable, setTable } from '../tables/table.ts';

/** Work that was quoted for. None in a copy that names no firms: by whom a bill is cannot be told there. */
export function worksQuoted({ record }: RecordSheet): readonly QuotedWork[] {
  return allQuoted(record);
}

/** Of one position: of every part that belongs to it. */
export function worksQuotedOn({ record }: RecordSheet, position: PositionId): readonly QuotedWork[] {
  return quotedByPosition(record).get(position) ?? [];
}

const allQuoted = once((record: JournalRecord): readonly QuotedWork[] =>
  record.journal.settings.currency !== null && !record.copy.leavesOut.includes('people') ? quotedWork(record, null) : [],
);

const quotedByPosition = once((record: JournalRecord) =>
  Map.groupBy(allQuoted(record), ({ on: { part } }) => (part === null ? null : (record.journal.parts.get(part)?.position ?? null))),
);

/** What was quoted, beside what the bills for it came to, each opening its note or its lines. */
export function quotedTable(sheet: Sheet, works: readonly QuotedWork[]): SetTable {
  const { figures } = sheet;
  const sum = (of: (work: QuotedWork) => number): number => works.reduce((all, work) => all + of(work), 0);
  const billed = ({ billed: { entries, gross, net, tax } }: QuotedWork): Piece => {
    if (entries.length === 0) return false;
    const [first] = entries;
    const opened =
      first === undefined || entries.length > 1 ? figures.amount(gross) : linked(figures.amount(gross), sheet.link(entryAddress(first)));
    const lines = entries.map((entry, n) => linked(`line ${n + 1}`, sheet.link(entryAddress(entry))));
    return html`${opened}${entries.length > 1 && sub(joined(lines, ', '))}${tax !== 0 && sub(`${figures.amount(net)} without tax`)}`;
  };
  return setTable<QuotedWork, true>({
    label: 'Quoted and billed',
    caption:
      'What a firm quoted, as the note has it, beside the lines of its bills: outside work laid to the same part, of the same firm, of that day or later and before its next quote. Billed is with tax and carriage; whether the quote was is not known.',
    set: 'account totals quoted',
    columns: [
      { head: 'Work', names: true, cell: (work) => html`${chargeLink(sheet, work.on)}${sub(work.work)}` },
      { head: 'By', cell: ({ firm }) => firm ?? 'nobody said' },
      { head: 'On', set: 'date', cell: ({ session, date }) => sessionDay(sheet, session, date) },
      {
        head: 'Quoted',
        set: 'num',
        cell: ({ quoted, before }) =>
          html`${figures.amount(quoted)}${before.length > 0 && sub(`before that ${before.map(figures.amount).join(', ')}`)}`,
        sum: () => figures.amount(sum(({ quoted }) => quoted)),
      },
      { head: 'Billed', set: 'num', cell: billed, sum: () => figures.amount(sum(({ billed: { gross } }) => gross)) },
      { head: 'Beside the quote', cell: (work) => besideWords(sheet, work) },
    ],
    groups: rows<QuotedWork, true>(works),
    foot: works.length > 1 ? [{ words: 'Together', sum: true }] : [],
  });
}

/** `over by 34.00; without tax by 10.00, 12.00 of it carriage`; a bill that is the quote without its tax, or its carriage, says so. */
export function besideWords({ figures }: Sheet, { quoted, billed: { entries, net, tax, gross }, carriage, open }: QuotedWork): Piece {
  if (entries.length === 0) return open ? 'no bill yet' : 'no bill is of it';
  if (gross === quoted) return 'as quoted';
  if (tax !== 0 && net === quoted) return 'as quoted, the tax on top';
  if (carriage.own !== 0 && gross - carriage.own === quoted) return 'as quoted, the carriage on top';
  const difference = figures.amount(Math.abs(gross - quoted));
  if (gross < quoted) return `under by ${difference}${open ? ' so far' : ''}`;
  const without = tax === 0 ? '' : net > quoted ? `; without tax by ${figures.amount(net - quoted)}` : '; without tax it is within';
  return html`<span class="attention">over by ${difference}</span>${without}${carriageWords(figures, gross - quoted, carriage)}`;
}

/** What of a difference is carriage, and where only some of it is known to be, that. */
function carriageWords({ amount }: Sheet['figures'], over: number, { own, shared }: QuotedWork['carriage']): string {
  const told =
    own === 0 ? '' : own <= over ? `, of which carriage ${amount(own)}` : `; without its carriage of ${amount(own)} it is within`;
  return shared === 0 ? told : `${told}; carriage of ${amount(shared)} is shared over all lines of the bill`;
}
