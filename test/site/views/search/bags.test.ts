import { expect, test } from 'vitest';
import { picturePlan } from '../../../../src/photos/plan.ts';
import type { SiteRecord } from '../../../../src/site/record.ts';
import { sheetOf } from '../../../../src/site/views/page/sheet.ts';
import { searchDocuments } from '../../../../src/site/views/search/search-documents.ts';
import { compileFiles, NOTE, note } from '../../../journal/base.ts';

test('a bag is found by what is in it, whether its note describes it or a part opened it', () => {
  const fields = `parts:
  - { part: studs, did: removed, count: 2, to: bag 7, goes-back: long end inboard }
  - { part: drum, did: removed }
bags: [{ bag: 8, holds: [2 clips], off: drum }]`;
  const { record, diagnostics } = compileFiles({ more: { [NOTE]: note(fields) } });
  expect(diagnostics).toEqual([]);
  if (!record) throw new Error('no record');
  const pictures = picturePlan({ renditions: [], papers: [], inOrder: [] });
  const site: SiteRecord = { ...record, pictures, warnings: [], noteHtml: async () => '' };
  const found = searchDocuments(sheetOf(site, 'search.html')).filter(({ k }) => k === 'bag');
  expect(found.map(({ t, x }) => [t, x])).toEqual([
    ['Bag 8', '2 clips, , Front brake drum'],
    ['Bag 7', '2 Wheel studs, long end inboard, '],
  ]);
});
