import { expect, test } from 'vitest';
import { NO_PICTURES } from '../../../../src/photos/plan.ts';
import { PAGES } from '../../../../src/site/addresses.ts';
import { sheetOf } from '../../../../src/site/views/page/sheet.ts';
import { stateLines } from '../../../../src/site/views/register/state-words.ts';
import { did, evening, part, soundRecord } from '../../../builders/journal.ts';

function linesOf(of: ReturnType<typeof soundRecord>): Record<string, string> {
  const site = { ...of, pictures: NO_PICTURES, warnings: [], noteHtml: () => Promise.resolve('') };
  return Object.fromEntries([...stateLines(sheetOf(site, PAGES.home))].map(([id, [, state]]) => [id, state]));
}

const studs = part('studs', { count: 4 });

test('a position in a line: what came of it, what stands there, and where the original is', () => {
  const parts = [part('drum'), part('drum-new', { for: 'drum', origin: 'reproduction', store: 'loft' }), part('plate'), studs];
  const evenings = [
    evening('2030-10-10', { parts: [did('drum', 'removed', { to: 'loft' }), did('drum-new', 'fitted'), did('plate', 'removed')] }),
  ];
  expect(linesOf(soundRecord({ parts, evenings }))).toEqual({
    drum: expect.stringMatching(
      /^Replaced \(reproduction\)\. On the vehicle: reproduction, since 10 Oct\.? 2030\. The original in stores: loft\.$/,
    ),
    plate: 'Off for now. Nothing is on the vehicle there. The original in stores: no place noted.',
    studs: 'Untouched. On the vehicle: original, since it was found.',
  });
});

test('of a lot it tells how many stand there, and where how many of the others are', () => {
  const some = [evening('2030-10-10', { parts: [did('studs', 'removed', { count: 1, to: 'loft' })] })];
  expect(linesOf(soundRecord({ parts: [studs], evenings: some })).studs).toContain(
    'On the vehicle: 3 of 4: original, since it was found. Of the originals 1 of 4: in stores: loft.',
  );
  const all = [evening('2030-10-10', { parts: [did('studs', 'removed', { to: 'loft' })] })];
  expect(linesOf(soundRecord({ parts: [studs], evenings: all })).studs).toContain('The originals in stores: loft.');
});

test('it tells the condition of what stands there, as the page of the position does, and of which day that is', () => {
  const evenings = [
    evening('2030-10-10', { parts: [did('drum', 'inspected', { condition: 2 })] }),
    evening('2030-10-19', { parts: [did('drum', 'repaired')] }),
  ];
  expect(linesOf(soundRecord({ parts: [part('drum')], evenings })).drum).toContain(
    'On the vehicle: original, since it was found; condition 2, moderately strong symptoms, as of 10 October 2030.',
  );
  const lot = [part('studs', { count: 4, condition: 1 })];
  const some = [evening('2030-10-10', { parts: [did('studs', 'inspected', { count: 1, condition: 3 })] })];
  expect(linesOf(soundRecord({ parts: lot, evenings: some })).studs).toContain(
    'since it was found; condition 3 (1 of 4), 1 (3 of 4), as found and as of 10 October 2030.',
  );
});

test('what came off with what it is in, and went back with it, is in its place since before and on the vehicle again since then', () => {
  const parts = [part('magneto'), part('points', { inside: 'magneto' })];
  const evenings = [
    evening('2030-10-10', { parts: [did('magneto', 'removed', { to: 'loft' })] }),
    evening('2030-10-19', { parts: [did('magneto', 'fitted')] }),
  ];
  expect(linesOf(soundRecord({ parts, evenings })).points).toMatch(
    /On the vehicle: original, in its place since it was found and on the vehicle again since 19 Oct\.? 2030\.$/,
  );
});

test('what came here in a part that was fitted later is on the vehicle since then, and not again', () => {
  const parts = [
    part('magneto'),
    part('points', { inside: 'magneto' }),
    part('magneto-sale', { for: 'magneto', found: 'considered' }),
    part('points-sale', { for: 'points', within: 'magneto-sale', found: 'considered' }),
  ];
  const evenings = [
    evening('2030-10-10', {
      parts: [did('magneto', ['removed', 'gone'], { how: 'given' }), did('magneto-sale', 'acquired', { to: 'loft' })],
    }),
    evening('2030-10-19', { parts: [did('magneto-sale', 'fitted')] }),
  ];
  expect(linesOf(soundRecord({ parts, evenings })).points).toMatch(
    /On the vehicle: donor, in its place since 10 Oct\.? 2030 and on the vehicle since 19 Oct\.? 2030\./,
  );
});
