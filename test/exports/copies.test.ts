/** The downloads of a copy: no column, file or sheet of what it leaves out, which would be blank or nought. */

import { read } from '@e965/xlsx';
import { parse } from 'csv-parse/sync';
import { describe, expect, test } from 'vitest';
import { archiveWords } from '../../src/exports/archive-words.ts';
import { dataFilesOf } from '../../src/exports/data-files.ts';
import { copyOf } from '../../src/journal/copy/copy.ts';
import type { LeaveOut } from '../../src/journal/model.ts';
import { JOURNAL, journalWith } from '../ledger/small-journal.ts';

function copyWithout(...kinds: LeaveOut[]) {
  const { record, problems } = journalWith({ journal: `${JOURNAL}copies: { copy: { leave-out: [${kinds.join(', ')}] } }\n` }, [
    '2031-03-01',
    'hours: [{ by: jm, on: brakes, time: 2h }]\nbills: [{ from: Quill Forge, lines: [{ what: A hose, for: drum, cost: 84.00 }] }]\nopens: [{ id: hose, kind: waiting, what: The other hose, on: brakes, from: Quill Forge }]',
  ]);
  expect(problems).toEqual([]);
  return copyOf(record, 'copy');
}

async function made(...kinds: LeaveOut[]): Promise<ReadonlyMap<string, string | Uint8Array>> {
  const copy = copyWithout(...kinds);
  const files = dataFilesOf(copy).map(async ({ path, make }) => [path.replace('data/', ''), await make(copy)] as const);
  return new Map(await Promise.all(files));
}

const columns = (files: ReadonlyMap<string, string | Uint8Array>, file: string): string[] =>
  (parse(String(files.get(file)), { bom: true }) as string[][])[0] ?? [];

describe('the tables of a copy', () => {
  test('without hours have neither minutes nor who worked, nor a file of hours', async () => {
    const [whole, copy] = [await made(), await made('hours', 'stores')];
    expect([...whole.keys()]).toContain('hours.csv');
    expect([...copy.keys()]).not.toContain('hours.csv');
    expect(columns(whole, 'entries.csv')).toEqual(expect.arrayContaining(['minutes', 'person', 'gross']));
    expect(columns(copy, 'entries.csv')).not.toEqual(expect.arrayContaining(['minutes']));
    expect(columns(copy, 'entries.csv')).not.toEqual(expect.arrayContaining(['person']));
  });

  test('without people have no column for who worked, sold or promised', async () => {
    const copy = await made('people', 'stores');
    for (const file of ['entries.csv', 'hours.csv', 'bills.csv', 'open-items.csv']) {
      for (const column of ['person', 'from']) expect(columns(copy, file), file).not.toContain(column);
    }
    expect(columns(await made(), 'open-items.csv')).toContain('from');
    expect(columns(copy, 'hours.csv')).toContain('minutes');
  });

  test('without papers have no column for the paper of a bill, and without money no bills', async () => {
    expect(columns(await made(), 'bills.csv')).toContain('paper');
    expect(columns(await made('papers', 'marks'), 'bills.csv')).not.toContain('paper');
    expect([...(await made('papers', 'money')).keys()]).not.toContain('bills.csv');
  });

  test('without money say nothing of what is not charged, and why', () => {
    const { record } = journalWith({ journal: `${JOURNAL}copies: { copy: { leave-out: [money] } }\n` }, [
      '2031-03-01',
      'hours: [{ by: jm, on: brakes, time: 1h, unpaid: Learning how }]',
    ]);
    const told = ({ ledger }: typeof record) => ledger.entries.map(({ what }) => what);
    expect(told(record)).toEqual(['Work; not charged: Learning how']);
    expect(told(copyOf(record, 'copy'))).toEqual(['Work']);
  });

  test('are the sheets of its workbook, with the sums of what is left', async () => {
    const sheets = async (...kinds: LeaveOut[]) => read((await made(...kinds)).get('ledger.xlsx') as Uint8Array, { cellFormula: true });
    expect((await sheets()).SheetNames).toEqual(['entries', 'bills', 'stock', 'hours']);
    expect((await sheets('money', 'hours', 'people')).SheetNames).toEqual(['entries', 'stock']);
    const { Sheets } = await sheets('money', 'people');
    const hours = Sheets.hours ?? {};
    expect(['F1', 'F2', 'A3', 'F3'].map((at) => hours[at]?.v)).toEqual(['minutes', 120, 'Together', 120]);
    expect(hours.F3?.f).toBe('SUBTOTAL(109,F2:F2)');
  });
});

test('an archive without the notes does not say how to copy them back', () => {
  const words = archiveWords(copyWithout('hours', 'people'), { notes: 'none' });
  expect(words).toContain('The notes themselves are not in this copy');
  expect(words).not.toMatch(/To restore|journal\//);
  expect(archiveWords(copyWithout(), { notes: 'as written' })).toContain('To restore the journal: copy the folder journal/ to any place.');
});
