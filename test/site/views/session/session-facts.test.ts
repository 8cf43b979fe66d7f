import { expect, test } from 'vitest';
import type { PartId, PositionId, Session } from '../../../../src/journal/model.ts';
import { NO_PICTURES } from '../../../../src/photos/plan.ts';
import { sheetOf } from '../../../../src/site/views/page/sheet.ts';
import { deedWords, eveningTold } from '../../../../src/site/views/session/session-facts.ts';
import { did, evening, part, soundRecord } from '../../../builders/journal.ts';

const sheet = {
  positionName: (id: PositionId) => (id === 'tail-lamp' ? 'Tail lamp and number light' : 'another'),
  partName: (id: PartId) => (id === 'wheel-near' ? 'Front wheel, nearside' : id),
};

test('where a part was fitted is told by the name of the position, not by its id', () => {
  const entry = did('lamp', ['acquired', 'fitted'], { to: 'shelf A2', at: 'tail-lamp' as PositionId });
  expect(deedWords(sheet, entry)).toBe('acquired to shelf A2 and fitted, at Tail lamp and number light');
  const washed = did('lamp', ['acquired', 'cleaned', 'fitted'], { to: 'shelf A2', from: 'a dealer' });
  expect(deedWords(sheet, washed)).toBe('acquired to shelf A2, cleaned and fitted, from a dealer');
  expect(deedWords(sheet, did('lamp', ['removed', 'cleaned'], { to: 'shelf A2' }))).toBe('removed and cleaned, to shelf A2');
});

test('what it was taken out of is told by name, a store or a bag as the note has it', () => {
  const from = (where: string) => deedWords(sheet, did('tyre', 'removed', { from: where }));
  expect([from('wheel-near'), from('rack'), from('bag 3')]).toEqual([
    'removed, from Front wheel, nearside',
    'removed, from rack',
    'removed, from bag 3',
  ]);
});

test('an evening without words is told by what was done, with some of the names, as far as there is room', () => {
  const wheels = ['near', 'off', 'spare', 'jockey', 'fifth'].map((name) => part(name));
  const record = soundRecord({
    parts: [...wheels, part('lamp', { name: 'Lamp, near' }), part('plumes', { count: 6, numbered: 'I to VI', found: 'loose' })],
    evenings: [
      evening('2030-10-10', {
        parts: [...wheels.map(({ id }) => did(id, ['removed', 'cleaned'])), did('lamp', 'inspected')],
      }),
      evening('2030-10-11', { body: 'Words enough.', parts: [did('lamp', ['cleaned', 'removed'])] }),
      evening('2030-10-12', {
        parts: [
          did('plumes', 'gone', { how: 'lost', which: [3] }),
          did('lamp', 'gone', { how: 'sold' }),
          did('plumes', 'cleaned', { which: [1, 2] }),
        ],
      }),
      evening('2030-10-13', { parts: [did('plumes', 'fitted')] }),
    ],
  });
  const sheet = sheetOf({ ...record, pictures: NO_PICTURES, warnings: [], noteHtml: () => Promise.resolve('') }, 'index.html');
  const told = (n: number, most: number) => eveningTold(sheet, record.journal.sessions[n] as Session, most);
  expect(told(0, 200)).toBe('Removed and cleaned: near, off, spare and 2 more. Inspected: Lamp, near.');
  expect(told(0, 60)).toBe('Removed and cleaned: near, off, spare and 2 more.');
  expect(told(1, 200)).toBe('Words enough.');
  expect(told(2, 200)).toBe('Lost: plumes (1 of 6). Sold: Lamp, near. Cleaned: plumes (2 of 6).');
  expect(told(3, 200)).toBe('Fitted: plumes (5 of 6).');
});
