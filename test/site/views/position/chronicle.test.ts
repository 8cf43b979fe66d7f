import { expect, test } from 'vitest';
import { eventsOfPosition } from '../../../../src/journal/timelines/timelines.ts';
import { NO_PICTURES } from '../../../../src/photos/plan.ts';
import { sheetOf } from '../../../../src/site/views/page/sheet.ts';
import { chronicleOf } from '../../../../src/site/views/position/chronicle.ts';
import { did, evening, part, soundRecord } from '../../../builders/journal.ts';

test('what came here is told with who had it, and what went with who has it now', () => {
  const record = soundRecord({
    parts: [part('wheel'), part('wheel-lent', { for: 'wheel', name: 'Wheel, lent', found: 'considered' })],
    evenings: [
      evening('2030-10-01', {
        parts: [
          did('wheel', ['removed', 'gone'], { how: 'given', to: 'the forge' }),
          did('wheel-lent', 'acquired', { from: 'a carter', to: 'loft' }),
        ],
      }),
      evening('2030-10-02', { parts: [did('wheel-lent', 'gone', { how: 'returned', to: 'a carter' })] }),
    ],
  });
  const sheet = sheetOf({ ...record, pictures: NO_PICTURES, warnings: [], noteHtml: () => Promise.resolve('') }, 'parts/wheel.html');
  const lines = chronicleOf(sheet, eventsOfPosition(record, 'wheel')).flatMap((day) => day.lines);
  expect(lines.map((line) => line.markup.replace(/<[^>]*>/g, '').trim())).toEqual([
    'Wheel: removed and gone; given away, to the forge.',
    'Wheel, lent: acquired from a carter; in stores: loft.',
    'Wheel, lent: gone; given back, to a carter.',
  ]);
});
