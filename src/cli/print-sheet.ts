import type { BookSetting } from '../book/setting.ts';
import type { SheetText } from '../book/sheets/frame.ts';
import type { SiteRecord } from '../site/record.ts';
import type { Option, OptionValues } from './command.ts';
import type { Effects } from './effects.ts';
import { EXIT, type Exit, Refusal } from './exit-codes.ts';
import { printPaper } from './print-paper.ts';

export const PAPER: Option = { type: 'string', value: 'a4|us-letter', help: 'the paper (else a4)' };

/**
 * Prints a paper of a few sheets, of the copy that is asked for, once it is proved.
 *
 * @param ask may refuse, when the record is known
 */
export async function printSheet(
  values: OptionValues,
  effects: Effects,
  name: string,
  make: (setting: BookSetting) => SheetText,
  ask: (record: SiteRecord) => void = () => undefined,
): Promise<Exit> {
  const { paper = 'a4' } = values;
  if (paper !== 'a4' && paper !== 'us-letter') throw new Refusal(EXIT.notUnderstood, `--paper is a4 or us-letter, not \`${paper}\`.`);
  return printPaper(values, effects, name, async ({ record, workspace }) => {
    ask(record);
    const { sheetPdf } = await import('../book/sheets/frame.ts');
    return sheetPdf(record, make, { paper, workspace });
  });
}
