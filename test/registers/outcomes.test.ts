import { describe, expect, test } from 'vitest';
import { registerRowAt } from '../../src/journal/registers/register.ts';
import { decide, did, type Evening, evening, part, soundRecord } from '../builders/journal.ts';

const parts = [
  part('drum'),
  part('drum-spare', { for: 'drum', store: 'shelf B2' }),
  part('drum-new', { for: 'drum', origin: 'new-old-stock', store: 'loft' }),
  part('studs', { count: 5 }),
  part('studs-new', { for: 'studs', origin: 'new', count: 5 }),
  part('plate', { found: 'missing' }),
  part('plate-made', { for: 'plate', origin: 'made' }),
  part('flasher', { acquired: '2030-10-01', origin: 'new' }),
];
const row = (id: string, ...evenings: Evening[]) => registerRowAt(soundRecord({ parts, evenings }), id, null);
const outcome = (id: string, ...evenings: Evening[]): string => row(id, ...evenings).outcome.words;
const day = (fields: Parameters<typeof evening>[1], date = '2030-10-01') => evening(date, fields);

describe('the outcome of a position is computed from what is there and what was done', () => {
  test('nobody has decided: undecided; decided to keep: kept as found', () => {
    expect(outcome('drum')).toBe('undecided');
    expect(outcome('drum', day({ decisions: [decide('drum', 'defer')] }))).toBe('undecided');
    expect(outcome('drum', day({ decisions: [decide('drum', 'keep')] }))).toBe('kept as found');
  });

  test.each([
    ['conserved', 'kept, conserved'],
    ['refinished', 'kept, refinished'],
    ['repaired', 'kept, repaired'],
    ['machined', 'kept, repaired'],
  ] as const)('%s and back on: %s, decided or not', (word, words) => {
    expect(outcome('drum', day({ parts: [did('drum', ['removed', word, 'fitted'])] }))).toBe(words);
  });

  test('the most invasive deed counts, whatever came after it', () => {
    expect(outcome('drum', day({ parts: [did('drum', ['removed', 'repaired', 'conserved', 'refinished', 'fitted'])] }))).toBe(
      'kept, repaired',
    );
    expect(outcome('drum', day({ parts: [did('drum', ['conserved', 'refinished'])] }))).toBe('kept, refinished');
  });

  test('another part stands there: replaced, by its origin', () => {
    expect(outcome('drum', day({ parts: [did('drum', 'removed'), did('drum-new', 'fitted')] }))).toBe('replaced (new old stock)');
    expect(outcome('plate', day({ parts: [did('plate-made', 'fitted')] }))).toBe('replaced (made)');
  });

  test('two of five studs are others: partly replaced, and all five are accounted for', () => {
    const work = day({
      parts: [
        did('studs', 'removed', { count: 2 }),
        did('studs', 'gone', { count: 1, how: 'scrapped' }),
        did('studs-new', 'fitted', { count: 2 }),
      ],
    });
    const { outcome: found, fitted, originals } = row('studs', work);
    expect(found).toEqual({ kind: 'partly-replaced', words: 'partly replaced (2 of 5)' });
    expect(fitted.map(({ part: id, count }) => [id, count])).toEqual([
      ['studs', 3],
      ['studs-new', 2],
    ]);
    expect(originals.map(({ count, where }) => [count, where.at])).toEqual([
      [3, 'fitted'],
      [1, 'stores'],
      [1, 'gone'],
    ]);
  });

  test('a lot that is partly off says how many are on', () => {
    const off = day({ parts: [did('studs', ['removed', 'repaired'], { count: 2 })] });
    expect(outcome('studs', off)).toBe('kept, repaired, 3 of 5 on');
    expect(outcome('studs', day({ parts: [did('studs', 'removed', { count: 1 })] }))).toBe('undecided, 4 of 5 on');
  });

  test('nothing there: left off when so decided, missing as found, else off for now', () => {
    const off = did('drum', 'removed');
    expect(outcome('drum', day({ parts: [off] }))).toBe('off for now');
    expect(outcome('drum', day({ parts: [off], decisions: [decide('drum', 'omit')] }))).toBe('left off');
    expect(outcome('plate')).toBe('missing');
    const runners = soundRecord({
      parts: [part('runners', { found: 'missing', count: 3 })],
      evenings: [day({ parts: [did('runners', 'acquired', { count: 1, to: 'loft' })] })],
    });
    expect(registerRowAt(runners, 'runners', null).outcome.words).toBe('off for now');
  });

  test('a part that came later and has a position of its own is added, not replaced', () => {
    expect(outcome('flasher', day({ parts: [did('flasher', ['acquired', 'fitted'])] }))).toBe('added (new)');
  });

  test('how an original went and what the note said stand in its row', () => {
    const work = day({ parts: [did('drum', ['removed', 'gone'], { how: 'scrapped', note: 'Cracked through.' })] });
    expect(row('drum', work).originals).toMatchObject([{ where: { at: 'gone' }, gone: { how: 'scrapped', note: 'Cracked through.' } }]);
  });

  test('`since` is when what stands there last changed', () => {
    expect(row('drum').since).toEqual({ date: '2030-09-14', session: null });
    expect(row('drum', day({ parts: [did('drum', 'removed')] })).since.date).toBe('2030-10-01');
  });
});
