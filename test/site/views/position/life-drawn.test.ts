import { expect, test } from 'vitest';
import type { SiteRecord } from '../../../../src/site/record.ts';
import { sheetOf } from '../../../../src/site/views/page/sheet.ts';
import { positionPage } from '../../../../src/site/views/position/position-page.ts';
import { did, evening, part, soundRecord } from '../../../builders/journal.ts';

test('what was sold and came back is not said to have gone for good, nor what came here to have been moved', () => {
  const record = soundRecord({
    parts: [part('badge')],
    evenings: [
      evening('2030-10-01', { parts: [did('badge', 'removed')] }),
      evening('2031-01-05', { parts: [did('badge', 'gone', { how: 'sold' })] }),
      evening('2031-06-05', { parts: [did('badge', 'acquired', { from: 'a collector' })] }),
    ],
  });
  const sheet = sheetOf(
    { ...record, pictures: { rendition: () => null }, warnings: [], noteHtml: async () => '' } as unknown as SiteRecord,
    'x.html',
  );
  expect(positionPage(sheet, 'badge').drawn?.signs.map(({ words }) => words)).toEqual([
    'taken off',
    'came here, or moved while off',
    'gone',
  ]);
});
