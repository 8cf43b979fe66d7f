import { expect, test } from 'vitest';
import { gatesAt } from '../../../../src/journal/registers/open-items.ts';
import { heldUp } from '../../../../src/site/views/items/held-up.ts';
import { JOURNAL, journalWith } from '../../../ledger/small-journal.ts';

test('what was owned up to at one milestone holds up the next, and every page counts it', () => {
  const journal = JOURNAL.replace('milestones: { stripped: Stripped }', 'milestones: { first-start: First start, road-test: Road test }');
  const { record, problems } = journalWith(
    { journal },
    [
      '2031-03-02',
      `opens:
  - { id: wire, kind: temporary, what: Wire for a fuse, before: first-start }
  - { id: fuse, kind: question, what: Which fuse, before: road-test }
reached: [{ milestone: first-start, with-open: [wire], because: Only a try. }]`,
    ],
    ['2031-03-03', 'closes: [{ id: fuse, how: Asked. }]'],
  );
  expect(problems).toEqual([]);
  const roadTest = (day: string) => gatesAt(record, day).find(({ milestone }) => milestone.id === 'road-test');
  const said = ['2031-03-02', '2031-03-03'].map((day) => {
    const gate = roadTest(day);
    return gate && heldUp(gate);
  });
  expect(said).toEqual(['held up by 2 open items', 'held up by 1 open item']);
});
