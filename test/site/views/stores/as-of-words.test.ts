/** A condition is of the day on which it was seen: where something lies it is told with that. */
import { expect, test } from 'vitest';
import { storesAt } from '../../../../src/journal/registers/stores.ts';
import { NO_PICTURES } from '../../../../src/photos/plan.ts';
import type { SiteRecord } from '../../../../src/site/record.ts';
import { workOrders } from '../../../../src/site/views/firms/work-orders.ts';
import { sheetOf } from '../../../../src/site/views/page/sheet.ts';
import { storeTable } from '../../../../src/site/views/stores/store-table.ts';
import { did, evening, part, soundRecord } from '../../../builders/journal.ts';

const OF = soundRecord({
  parts: [part('drum', { condition: 2 }), part('studs', { count: 4, condition: 1 }), part('lamp')],
  stores: ['loft'],
  evenings: [
    evening('2030-10-01', { parts: ['drum', 'studs', 'lamp'].map((id) => did(id, 'removed', { to: 'loft' })) }),
    evening('2031-02-01', { parts: [did('studs', 'inspected', { count: 1, condition: 3 })] }),
    evening('2031-03-01', {
      parts: [did('lamp', 'inspected', { condition: 0 }), did('lamp', 'sent-out', { to: 'a plater', work: 'Nickel' })],
    }),
  ],
});
const sheet = sheetOf({ ...OF, pictures: NO_PICTURES, warnings: [], noteHtml: async () => '' } as unknown as SiteRecord, 'x.html');
const plain = (markup: string) => markup.replaceAll(/<[^>]*>/g, ' ').replaceAll(/\s+/g, ' ');

test('in the stores', () => {
  const lying = storesAt(OF, null).flatMap(({ things }) => things);
  const told = plain(storeTable(sheet, lying, 'loft').markup);
  expect(told).toMatch(/drum .* 2 as found /);
  expect(told).toMatch(/3 \(1 of 4\), 1 \(3 of 4\) as found and as of 1 Feb\.? 2031 /);
});

test('on the order that goes to a firm', () => {
  const facts = workOrders(sheet).flatMap(({ things }) => things.flatMap((thing) => thing.facts));
  expect(Object.fromEntries(facts).Condition).toBe('0, as of 1 March 2031');
});
