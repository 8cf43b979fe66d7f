import { settingOf } from '../../book/setting.ts';
import { firmsWith, workOrder as makeWorkOrder } from '../../book/sheets/work-order.ts';
import { CONTENT, type Command } from '../command.ts';
import { COPY } from '../copy-option.ts';
import { TO } from '../day-option.ts';
import { EXIT, Refusal } from '../exit-codes.ts';
import { PAPER, printSheet } from '../print-sheet.ts';

/** What goes out to a firm, for the driver to take along. */
export const workOrder: Command = {
  name: 'work-order',
  summary: 'prints what is out with a firm: how many, as it is, what is to be done and not to be done, with lines to sign on',
  takes: [],
  options: {
    content: CONTENT,
    firm: { type: 'string', value: 'NAME', help: 'the firm, as the note has it under `to`' },
    out: { type: 'string', value: 'FILE.pdf', help: 'the PDF to write; it must not be there yet' },
    paper: PAPER,
    copy: { ...COPY, help: 'which copy (else workshop)' },
    to: TO,
  },
  run: async (values, _takes, effects) => {
    const { firm } = values;
    if (typeof firm !== 'string') throw new Refusal(EXIT.notUnderstood, '`work-order` needs --firm NAME.');
    return printSheet({ ...values, copy: values.copy ?? 'workshop' }, effects, 'work-order', makeWorkOrder(firm), (record) => {
      if (record.copy.leavesOut.includes('people')) {
        throw new Refusal(EXIT.notUnderstood, `the ${record.copy.name} copy leaves out the names of firms, and has no work orders.`);
      }
      const firms = firmsWith(settingOf(record));
      if (!firms.includes(firm)) {
        throw new Refusal(
          EXIT.notUnderstood,
          `nothing is out with ${firm}. ${firms.length === 0 ? 'Nothing is out.' : `Something is with: ${firms.join(', ')}.`}`,
        );
      }
    });
  },
};
