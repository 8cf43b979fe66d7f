import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { finderOf, wordsOf } from '../../../../src/site/views/search/finder.ts';
import type { SearchDocument } from '../../../../src/site/views/search/search-documents.ts';

const document = (t: string, fields: Partial<SearchDocument> = {}): SearchDocument => ({
  k: 'part',
  t,
  x: '',
  h: `${t}.html`,
  s: '',
  d: '',
  ...fields,
});

const find = finderOf([
  document('Front drum', { m: 'C 4417 under the hub flange', s: 'brakes', x: 'original. machined' }),
  document('Spare drum', { m: 'C 4418', s: 'brakes', x: 'donor' }),
  document('Engine', { m: 'TE 5207 A on the pad', s: 'power' }),
  document('Magneto', { m: 'no. 88 206', s: 'power' }),
  document('Front brakes apart', { k: 'session', x: 'C 4417 turned up under the grease. The drum is scored.', s: 'brakes power' }),
  document('Front drum: replace', { k: 'decision', x: 'scored', s: 'brakes' }),
]);
const titles = (...asked: Parameters<typeof find>): string[] => find(...asked).map(({ t }) => t);

describe('a mark found on a part', () => {
  test.each(['C 4417', 'c4417', '4417', 'C.4417', 'C-4417'])('%s finds the part, before the note that tells of it', (asked) => {
    expect(titles(asked)[0]).toBe('Front drum');
  });

  test.each([
    ['TE5207A', 'Engine'],
    ['te 5207', 'Engine'],
    ['88206', 'Magneto'],
    ['88 206', 'Magneto'],
    ['no.88', 'Magneto'],
  ])('%s finds the %s', (asked, part) => expect(titles(asked)).toEqual([part]));

  test('its beginning finds every part that it may be', () => {
    expect(titles('C 44').slice(0, 2).sort()).toEqual(['Front drum', 'Spare drum']);
  });

  test('another figure is another part: no figure is guessed at', () => {
    expect(titles('C 4418')).toEqual(['Spare drum']);
    expect([titles('C 4419'), titles('524417')]).toEqual([[], []]);
    const long = finderOf([document('Lock', { m: '1234567' })]);
    expect([long('1234567').length, long('1234568').length]).toEqual([1, 0]);
  });

  test('whatever letters and figures a mark has, typing it finds the part, however they are set apart', () => {
    const piece = fc.oneof(fc.stringMatching(/^[A-Z]{1,3}$/), fc.stringMatching(/^[0-9]{1,5}$/));
    fc.assert(
      fc.property(fc.array(piece, { minLength: 1, maxLength: 4 }), fc.constantFrom(' ', '-', '.', '/', ' · '), (pieces, between) => {
        const written = pieces.join(' ');
        const only = finderOf([document('Θ', { m: 'ζ' }), document('Marked', { m: written })]);
        expect(only(pieces.join(between)).map(({ t }) => t)).toEqual(['Marked']);
        expect(only(written.toLowerCase()).map(({ t }) => t)).toEqual(['Marked']);
      }),
      { numRuns: 200 },
    );
  });
});

describe('words', () => {
  test('all of them must be there; the beginning of one is enough', () => {
    expect(titles('drum scored')).toEqual(['Front drum: replace', 'Front brakes apart']);
    expect(titles('mach fro')).toEqual(['Front drum']);
    expect(titles('drum zzzz')).toEqual([]);
  });

  test('a long word may be a letter wrong', () => expect(titles('machinned')).toEqual(['Front drum']));

  test('letters and figures are taken apart, in every script', () => {
    expect(wordsOf("C4417, l'œuvre 12½ Ümlaut")).toEqual(['C', '4417', 'l', 'œuvre', '12½', 'Ümlaut']);
    expect(wordsOf(' · ')).toEqual([]);
  });
});

describe('filters', () => {
  test('a kind and a subsystem each narrow what is found, a note by every subsystem it touches', () => {
    const of = (kind: string, subsystem: string) => titles('4417', { kind, subsystem });
    expect(of('', '')).toEqual(['Front drum', 'Front brakes apart']);
    expect(of('session', '')).toEqual(['Front brakes apart']);
    expect(of('', 'power')).toEqual(['Front brakes apart']);
    expect(of('part', 'power')).toEqual([]);
  });

  test('a subsystem is its whole id, not the beginning of one', () => {
    const one = finderOf([document('A', { s: 'running-gear' }), document('A', { s: 'running' })]);
    expect(one('a', { kind: '', subsystem: 'running' })).toHaveLength(1);
  });
});
