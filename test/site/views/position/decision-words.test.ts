import { expect, test } from 'vitest';
import { registerAt } from '../../../../src/journal/registers/register.ts';
import type { SiteRecord } from '../../../../src/site/record.ts';
import { sheetOf } from '../../../../src/site/views/page/sheet.ts';
import { inForceWords } from '../../../../src/site/views/position/decision-words.ts';
import { decide, evening, part, soundRecord } from '../../../builders/journal.ts';

test('what holds of a decision is what a later one has left of it', () => {
  const record = soundRecord({
    parts: [part('studs', { count: 8 }), part('studs-new', { for: 'studs', origin: 'new', count: 4 })],
    evenings: [
      evening('2030-10-01', { decisions: [decide('studs', 'keep', { count: 8 })] }),
      evening('2030-10-02', { decisions: [decide('studs', 'replace', { count: 2, with: 'studs-new' })] }),
    ],
  });
  const site = { ...record, warnings: [] } as unknown as SiteRecord;
  const [row] = registerAt(record, null);
  const said = row?.inForce.map((one) => inForceWords(sheetOf(site, 'parts/studs.html'), one).markup.replace(/<[^>]*>/g, ''));
  expect(said).toEqual(['replace (2 of 8) with studs-new', 'keep as it is (6 of 8), the rest of 8 superseded since']);
});
