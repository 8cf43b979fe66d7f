import { relative, resolve } from 'node:path';
import { type Label, type LabelSheet, labelsOf, labelsTypst, PLAIN_SHEET, sheetProblem } from '../../exports/labels.ts';
import { bagsAt, isLeftEmpty } from '../../journal/registers/bags.ts';
import { bagAddress } from '../../site/addresses.ts';
import { hasErrors } from '../../site/check-journal.ts';
import { CONTENT, type Command, type Option, type OptionValues } from '../command.ts';
import { EXIT, Refusal } from '../exit-codes.ts';
import { reportProblems } from '../report.ts';
import { journalFolder, openJournal } from '../the-journal.ts';
import { writeNew } from '../write-new.ts';

const length = (help: string): Option => ({ type: 'string', value: 'MM', help });

/** Labels for bags, on sheets of a stated size. */
export const labels: Command = {
  name: 'labels',
  summary: 'prints labels for bags: number, contents, how it goes back, and a code to its entry',
  takes: [],
  options: {
    content: CONTENT,
    bags: { type: 'string', value: '12-20,25', help: 'which bags (else every bag that has something in it)' },
    out: { type: 'string', value: 'FILE.pdf', help: 'the PDF to write; it must not be there yet' },
    paper: { type: 'string', value: 'a4|us-letter', help: 'the paper (else a4)' },
    columns: { type: 'string', value: 'N', help: 'labels across (else 2)' },
    rows: { type: 'string', value: 'N', help: 'labels down (else 6)' },
    width: length('width of a label (else what the margins leave)'),
    height: length('height of a label (else what the margins leave)'),
    left: length('margin at the left (else 10)'),
    top: length('margin at the top (else 12)'),
    'gap-across': length('between two columns (else 3)'),
    'gap-down': length('between two rows (else 2)'),
    skip: { type: 'string', value: 'N', help: 'labels already used on the first sheet' },
  },
  more: 'The code needs `address` in journal.yaml; without one labels have no code.',
  run: async (values, _takes, effects) => {
    const out = values.out;
    if (typeof out !== 'string' || !/\.pdf$/i.test(out)) throw new Refusal(EXIT.notUnderstood, '`labels` needs --out FILE.pdf.');
    const sheet = sheetFrom(values);
    const wanted = typeof values.bags === 'string' ? bagsIn(values.bags) : null;
    const opened = await openJournal(journalFolder(values, effects), effects);
    if (opened.record === null || hasErrors(opened.diagnostics)) {
      reportProblems(opened, effects);
      effects.err('No labels were printed.\n');
      return EXIT.journalHasErrors;
    }
    const { history } = opened.record;
    const filled = bagsAt(opened.record, null).filter(({ emptied }) => emptied === null);
    const left = wanted === null ? filled.filter(isLeftEmpty).map(({ bag }) => bag) : [];
    const bags = wanted ?? filled.map(({ bag }) => bag).filter((bag) => !left.includes(bag));
    const made: Label[] = labelsOf(opened.record, bags, bagAddress);
    const absent = bags.filter((bag) => !history.bags.has(bag));
    if (made.length === 0)
      throw new Refusal(EXIT.notUnderstood, wanted === null ? 'no bag is filled.' : 'no bag of those numbers is filled in any note.');
    if (left.length > 0)
      effects.err(
        `No label for bag ${left.join(', ')}: all of it has gone elsewhere, and no note says \`emptied: [${left.join(', ')}]\`.\n`,
      );
    const { typeset } = await import('../../exports/typeset.ts');
    const path = resolve(effects.cwd, out);
    const { pdf, cut } = typeset(labelsTypst(made, sheet));
    writeNew(path, pdf);
    if (absent.length > 0) effects.err(`No note fills bag ${absent.join(', ')}.\n`);
    if (cut.length > 0) effects.err(`The words of bag ${cut.join(', ')} are cut: they need a larger label.\n`);
    effects.out(`${relative(effects.cwd, path)}: ${made.length} label${made.length === 1 ? '' : 's'}\n`);
    return EXIT.done;
  },
};

/** `12-20,25` as numbers. */
export function bagsIn(text: string): number[] {
  const bags = text.split(',').flatMap((piece) => {
    const found = /^\s*(\d{1,5})(?:\s*-\s*(\d{1,5}))?\s*$/.exec(piece);
    const from = Number(found?.[1]);
    const to = Number(found?.[2] ?? found?.[1]);
    if (!found || from < 1 || to < from || to - from > 2000)
      throw new Refusal(EXIT.notUnderstood, `--bags takes numbers such as 12-20,25, not \`${piece}\`.`);
    return Array.from({ length: to - from + 1 }, (_, i) => from + i);
  });
  return [...new Set(bags)];
}

function sheetFrom(values: OptionValues): LabelSheet {
  const paper = values.paper ?? PLAIN_SHEET.paper;
  if (paper !== 'a4' && paper !== 'us-letter') throw new Refusal(EXIT.notUnderstood, `--paper is a4 or us-letter, not \`${paper}\`.`);
  const sheet: LabelSheet = {
    paper,
    columns: numberFrom(values, 'columns', PLAIN_SHEET.columns, true),
    rows: numberFrom(values, 'rows', PLAIN_SHEET.rows, true),
    width: values.width === undefined ? null : numberFrom(values, 'width', 0),
    height: values.height === undefined ? null : numberFrom(values, 'height', 0),
    left: numberFrom(values, 'left', PLAIN_SHEET.left),
    top: numberFrom(values, 'top', PLAIN_SHEET.top),
    gapAcross: numberFrom(values, 'gap-across', PLAIN_SHEET.gapAcross),
    gapDown: numberFrom(values, 'gap-down', PLAIN_SHEET.gapDown),
    skip: numberFrom(values, 'skip', 0),
  };
  const problem = sheetProblem(sheet);
  if (problem !== null) throw new Refusal(EXIT.notUnderstood, `such a sheet cannot be printed: ${problem}.`);
  return sheet;
}

function numberFrom(values: OptionValues, name: string, otherwise: number, atLeastOne = false): number {
  const text = values[name];
  if (text === undefined) return otherwise;
  const value = typeof text === 'string' && /^\d{1,4}(\.\d{1,2})?$/.test(text) ? Number(text) : Number.NaN;
  const whole = name === 'columns' || name === 'rows' || name === 'skip';
  if (Number.isNaN(value) || (atLeastOne && value < 1) || (whole && !Number.isInteger(value))) {
    throw new Refusal(EXIT.notUnderstood, `--${name} takes a ${whole ? 'whole number' : 'number of millimetres'}, not \`${text}\`.`);
  }
  return value;
}
