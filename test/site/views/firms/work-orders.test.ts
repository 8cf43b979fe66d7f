import { expect, test } from 'vitest';
import { NO_PICTURES } from '../../../../src/photos/plan.ts';
import { PAGES } from '../../../../src/site/addresses.ts';
import { workOrders } from '../../../../src/site/views/firms/work-orders.ts';
import { sheetOf } from '../../../../src/site/views/page/sheet.ts';
import { did, evening, part, soundRecord } from '../../../builders/journal.ts';

test('an order tells the marks that an earlier note found on what goes out', () => {
  const evenings = [
    evening('2030-10-10', { parts: [did('lamp', 'removed', { marks: 'K 2' }), did('wheel', 'removed', { marks: 'none' })] }),
    evening('2030-10-12', { parts: [did('lamp', 'sent-out', { to: 'a plater' }), did('wheel', 'sent-out', { to: 'a plater' })] }),
  ];
  const site = {
    ...soundRecord({ parts: [part('lamp'), part('wheel')], evenings }),
    pictures: NO_PICTURES,
    warnings: [],
    noteHtml: () => Promise.resolve(''),
  };
  const [order] = workOrders(sheetOf(site, PAGES.workOrders));
  const marks = order?.things.map(({ facts }) => facts.find(([name]) => name === 'Marks')?.[1] ?? null);
  expect(marks).toEqual(['K 2', null]);
});
