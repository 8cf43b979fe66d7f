import type { BookSetting } from '../../book/setting.ts';
import { buyerSheet } from '../../book/sheets/buyer.ts';
import type { SheetText } from '../../book/sheets/frame.ts';
import { inspectorSheet } from '../../book/sheets/inspector.ts';
import { insurerSheet } from '../../book/sheets/insurer.ts';
import { clientLetter } from '../../book/sheets/letter.ts';
import { CONTENT, type Command, type OptionValues } from '../command.ts';
import { COPY } from '../copy-option.ts';
import { TO } from '../day-option.ts';
import { EXIT, Refusal } from '../exit-codes.ts';
import { PAPER, printSheet } from '../print-sheet.ts';

const READERS: Readonly<Record<string, (setting: BookSetting) => SheetText>> = {
  buyer: buyerSheet,
  inspector: inspectorSheet,
  insurer: insurerSheet,
};

/** A few sheets for somebody who asks: a buyer, an inspector, an insurer, the client. */
export const sheet: Command = {
  name: 'sheet',
  summary: 'prints a few sheets for a buyer, an inspector or an insurer, or the client’s letter of a month',
  takes: [],
  options: {
    content: CONTENT,
    for: { type: 'string', value: 'buyer|inspector|insurer|client', help: 'for whom' },
    month: { type: 'string', value: 'YYYY-MM', help: 'the month of the client’s letter (else that of the newest note)' },
    out: { type: 'string', value: 'FILE.pdf', help: 'the PDF to write; it must not be there yet' },
    paper: PAPER,
    copy: COPY,
    to: TO,
  },
  run: async (values, _takes, effects) => printSheet(values, effects, 'sheet', (setting) => sheetFor(values, setting)(setting)),
};

function sheetFor(values: OptionValues, { record }: BookSetting): (setting: BookSetting) => SheetText {
  const reader = typeof values.for === 'string' ? values.for : '';
  if (reader === 'client') {
    const month = typeof values.month === 'string' ? values.month : record.day.slice(0, 7);
    if (!/^\d{4}-(?:0[1-9]|1[0-2])$/.test(month))
      throw new Refusal(EXIT.notUnderstood, `--month is a month such as 2031-03, not \`${month}\`.`);
    return clientLetter(month);
  }
  const make = Object.hasOwn(READERS, reader) ? READERS[reader] : undefined;
  if (make === undefined) throw new Refusal(EXIT.notUnderstood, '`sheet` needs --for buyer, inspector, insurer or client.');
  return make;
}
