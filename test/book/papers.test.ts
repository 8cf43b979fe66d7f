/** What the book says of the day of a paper. */
import { expect, test } from 'vitest';
import { papers } from '../../src/book/appendices.ts';
import type { BookSetting } from '../../src/book/setting.ts';
import { NO_PICTURES } from '../../src/photos/plan.ts';
import type { SiteRecord } from '../../src/site/record.ts';
import { sheetOf } from '../../src/site/views/page/sheet.ts';
import { kindOfPapers } from '../../src/site/views/papers/listed-papers.ts';
import { compileFiles, NOTE, note } from '../journal/base.ts';

test('a paper is of a day only where something says of which: that of the note it was laid in is none', () => {
  const fields =
    'papers: [{ paper: a.pdf, kind: letter, what: The letter }, { paper: b.pdf, kind: letter, date: 1952-03-19, what: The order }]';
  const compiled = compileFiles({ more: { [NOTE]: note(fields) }, assets: ['papers/a.pdf', 'papers/b.pdf'] });
  const record = { ...compiled.record, pictures: NO_PICTURES, warnings: [], noteHtml: async () => '' } as unknown as SiteRecord;
  const set = papers({ sheet: sheetOf(record, 'x.html'), record, named: new Set() } as unknown as BookSetting);
  expect(set).toMatch(/\[#"The letter";\], \[\]/);
  expect(set).toMatch(/\[#"The order";\], \[#"19 March 1952";\]/);
  expect(set).toContain('#heading(level: 2)[#"Letters";]');
});

test('papers stand under the name of their kind, of one and of several', () => {
  expect(['receipt', 'other', 'build-sheet'].map((kind) => kindOfPapers(kind, 2))).toEqual(['Receipts', 'Other papers', 'Build sheets']);
  expect(['receipt', 'other', 'money received'].map((kind) => kindOfPapers(kind, 1))).toEqual([
    'Receipt',
    'Another paper',
    'Money received',
  ]);
});
