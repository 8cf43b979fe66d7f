import { describe, expect, test } from 'vitest';
import { acquiredOnTwoDays } from '../../src/journal/check/acquired-on-two-days.ts';
import { registerAt } from '../../src/journal/registers/register.ts';
import { storesAt } from '../../src/journal/registers/stores.ts';
import { replay } from '../../src/journal/replay/replay.ts';
import { whereInWords } from '../../src/journal/replay/words.ts';
import { codes, did, type Evening, evening, journal, part, record } from '../builders/journal.ts';
import { compileFiles, note } from '../journal/base.ts';

const DRUM = part('drum');
const heard = part('drum-heard-of', { for: 'drum', found: 'considered' });
const inStores = (of: Parameters<typeof record>[0], date: string) =>
  storesAt(record(of), date).flatMap(({ things }) => things.map(({ part: id }) => id));
const now = (parts: readonly ReturnType<typeof part>[], id: string, ...evenings: Evening[]) =>
  (replay(journal({ parts, evenings })).history.stays.get(id) ?? [])
    .filter(({ to }) => to === null)
    .map(({ count, where }) => `${count} ${whereInWords(where)}`);

describe('what is here', () => {
  test('a candidate that was only considered is not here until a note says so', () => {
    const bought = evening('2030-11-01', { parts: [did('drum-heard-of', 'acquired', { to: 'loft' })] });
    const of = journal({ parts: [DRUM, heard], evenings: [bought] });
    expect([inStores(of, '2030-10-31'), inStores(of, '2030-11-01')]).toEqual([[], ['drum-heard-of']]);
    expect(now([DRUM, heard], 'drum-heard-of')).toEqual(['1 considered, not here']);
    expect(codes({ parts: [DRUM, heard], evenings: [evening('2030-10-01', { parts: [did('drum-heard-of', 'cleaned')] })] })).toEqual([
      'A506',
    ]);
  });

  test.each([
    ['with `at`', 'at: shelf B2', ['drum-x']],
    ['found loose', 'found: loose', ['drum-x']],
    ['acquired on a day to come', 'acquired: 2031-05-01', []],
    ['acquired, and put somewhere', 'acquired: 2031-05-01, at: shelf B2', []],
    ['with neither', 'note: seen at a sale', []],
  ])('a candidate %s', (_, fields, there) => {
    const parts = `- { id: drum, name: Drum }\n- { id: drum-x, name: Other drum, for: drum, ${fields} }\n`;
    const { record: made } = compileFiles({ parts, more: { 'sessions/2031-03-12.md': note('') } });
    const things = made ? storesAt(made, '2031-03-12').flatMap((store) => store.things.map(({ part: id }) => id)) : null;
    expect(things).toEqual(there);
  });

  test('what a later note says changes nothing before it', () => {
    const spare = part('spare', { for: 'drum', store: 'loft' });
    const again = evening('2030-11-01', { parts: [did('spare', 'acquired', { to: 'shelf A1' })] });
    expect(inStores(journal({ parts: [DRUM, spare], evenings: [again] }), '2030-10-01')).toEqual(['spare']);
    expect(codes({ parts: [DRUM, spare], evenings: [again] })).toEqual(['A507']);
  });

  test('a part that the catalogue dates is brought by the note of that day, and by the catalogue where no note says so', () => {
    const dated = part('dated', { for: 'drum', acquired: '2030-11-01', store: 'loft' });
    const brings = evening('2030-11-01', { parts: [did('dated', 'acquired', { to: 'shelf A1' })] });
    expect([now([DRUM, dated], 'dated', brings), now([DRUM, dated], 'dated')]).toEqual([['1 in stores, shelf A1'], ['1 in stores, loft']]);
    expect(codes({ parts: [DRUM, dated], evenings: [brings] })).toEqual([]);
  });

  test.each([
    ['before', '2030-10-01'],
    ['after', '2030-12-01'],
  ])('a note that acquires it on a day %s the one in the catalogue is told, once', (_, date) => {
    const dated = part('dated', { for: 'drum', acquired: '2030-11-01', store: 'loft' });
    const brings = evening(date, { parts: [did('dated', 'acquired', { to: 'shelf A1' })] });
    const later = evening('2030-12-05', { parts: [did('drum', 'removed'), did('dated', 'fitted')] });
    const told = { parts: [DRUM, dated], evenings: [brings, later] };
    expect([...codes(told), ...acquiredOnTwoDays(record(journal(told))).map(({ code }) => code)]).toEqual(['A514']);
  });
});

describe('a part that was lost, sold or given away', () => {
  const studs = part('studs', { count: 5, found: 'loose' });
  const lose = evening('2030-10-01', { parts: [did('studs', 'gone', { how: 'lost', count: 2 })] });

  test('does not come back by an `acquired` that does not say from where', () => {
    const come = evening('2030-12-01', { parts: [did('studs', 'acquired', { to: 'loft' })] });
    expect(codes({ parts: [studs], evenings: [lose, come] })).not.toEqual([]);
    const half = part('studs-new', { for: 'studs', count: 5, found: 'considered' });
    const evenings = [
      evening('2030-10-01', { parts: [did('studs-new', 'acquired', { count: 3 }), did('studs-new', 'gone', { how: 'lost', count: 1 })] }),
      evening('2030-11-01', { parts: [did('studs-new', 'acquired', { to: 'loft' })] }),
    ];
    expect(now([studs, half], 'studs-new', ...evenings)).toEqual(['2 in stores, unplaced', '1 gone (lost)', '2 in stores, loft']);
  });

  test.each(['lost', 'sold', 'given', 'returned'] as const)('comes back by `acquired` with `from`: %s', (how) => {
    const go = evening('2030-10-01', { parts: [did('studs', 'gone', { how, count: 2 })] });
    const come = evening('2030-12-01', { parts: [did('studs', 'acquired', { to: 'loft', from: 'a neighbour' })] });
    expect(codes({ parts: [studs], evenings: [go, come] })).toEqual([]);
    expect(now([studs], 'studs', go, come)).toEqual(['3 in stores, unplaced', '2 in stores, loft']);
  });

  test('without a count what was lost is not among what came back, when some were sold', () => {
    const go = evening('2030-10-01', {
      parts: [did('studs', 'gone', { how: 'lost', count: 1 }), did('studs', 'gone', { how: 'sold', count: 1 })],
    });
    const come = evening('2030-12-01', { parts: [did('studs', 'acquired', { to: 'loft', from: 'a neighbour' })] });
    expect(now([studs], 'studs', go, come)).toEqual(['3 in stores, unplaced', '1 gone (lost)', '1 in stores, loft']);
  });

  test('is told with who has it, off the vehicle in one entry, and what was borrowed is given back', () => {
    const drum = part('drum');
    const lent = part('drum-lent', { for: 'drum', origin: 'borrowed', found: 'considered' });
    const first = evening('2030-10-01', {
      parts: [did('drum', ['removed', 'gone'], { how: 'given', to: 'a neighbour' }), did('drum-lent', 'acquired', { from: 'a carter' })],
    });
    const second = evening('2030-10-02', { parts: [did('drum-lent', 'gone', { how: 'returned', to: 'a carter' })] });
    expect(codes({ parts: [drum, lent], evenings: [first, second] })).toEqual([]);
    expect(now([drum, lent], 'drum', first)).toEqual(['1 gone (given)']);
    expect(now([drum, lent], 'drum-lent', first, second)).toEqual(['1 gone (returned)']);
  });

  test('what was scrapped does not', () => {
    const go = evening('2030-10-01', { parts: [did('studs', 'gone', { how: 'scrapped' })] });
    const come = evening('2030-12-01', { parts: [did('studs', 'acquired', { from: 'a neighbour' })] });
    expect(codes({ parts: [studs], evenings: [go, come] })).toEqual(['A505']);
  });
});

test('a candidate that stands in the catalogue before its position belongs to it once', () => {
  const parts = '- { id: spare, name: Spare, for: drum, at: shelf B2 }\n- { id: drum, name: Drum, origin: original }\n';
  const { record: made } = compileFiles({ parts, more: { 'sessions/2031-03-12.md': note('') } });
  expect(made?.journal.positions.get('drum')?.parts).toEqual(['drum', 'spare']);
  expect(made && registerAt(made, null)[0]?.originals.length).toBe(1);
});
