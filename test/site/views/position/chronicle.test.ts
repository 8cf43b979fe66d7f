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

test('what a note says of a part that a later note puts right is told with when', () => {
  const record = soundRecord({
    parts: [part('wheel')],
    evenings: [
      evening('2030-10-10', { parts: [did('wheel', 'removed', { to: 'loft' })] }),
      evening('2030-10-12', { parts: [did('wheel', 'cleaned')] }),
      evening('2030-10-20', { corrects: '2030-10-10-work' }, 'right'),
    ],
  });
  const site = { ...record, pictures: NO_PICTURES, warnings: [], noteHtml: () => Promise.resolve('') };
  const days = chronicleOf(sheetOf(site, 'parts/wheel.html'), eventsOfPosition(record, 'wheel'));
  const said = days.map(({ lines }) => lines.map(({ markup }) => markup.replaceAll(/<[^>]+>/g, '')).join(' '));
  expect(said[0]).toContain('Something written that evening was wrong: right of 20 October 2030 puts it right.');
  expect(said[1]).not.toContain('wrong');
});
