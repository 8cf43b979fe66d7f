import { expect, test } from 'vitest';
import { positionAddress } from '../../../../src/site/addresses.ts';
import type { SiteRecord } from '../../../../src/site/record.ts';
import { sheetOf } from '../../../../src/site/views/page/sheet.ts';
import { part, soundRecord } from '../../../builders/journal.ts';

test('a link to a part leads to the page of its own position, whichever page asked for it first', () => {
  const record = { ...soundRecord({ parts: [part('wheel'), part('bracket')] }), warnings: [] } as unknown as SiteRecord;
  const own = sheetOf(record, positionAddress('wheel'));
  const other = sheetOf(record, positionAddress('bracket'));
  const links = [own, other, own, other].map((sheet) => sheet.toPart('wheel'));
  expect(links).toEqual(['#wheel', 'wheel.html#wheel', '#wheel', 'wheel.html#wheel']);
});
