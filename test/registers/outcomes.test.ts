import { describe, expect, test } from 'vitest';
import type { ActionWord } from '../../src/journal/model.ts';
import { placeStateOf } from '../../src/journal/registers/place-state.ts';
import { registerRowAt } from '../../src/journal/registers/register.ts';
import { whereaboutsAt } from '../../src/journal/registers/stays.ts';
import { decide, did, type Evening, evening, part, soundRecord } from '../builders/journal.ts';
import { measured } from '../builders/observed.ts';

const parts = [
  part('drum'),
  part('drum-spare', { for: 'drum', store: 'shelf B2' }),
  part('drum-new', { for: 'drum', origin: 'new-old-stock', store: 'loft' }),
  part('studs', { count: 5 }),
  part('studs-new', { for: 'studs', origin: 'new', count: 5 }),
  part('plate', { found: 'missing' }),
  part('plate-made', { for: 'plate', origin: 'made' }),
  part('flasher', { acquired: '2030-10-01', origin: 'new' }),
  part('flasher-late', { origin: 'new', found: 'loose', acquired: '2031-01-01' }),
  part('wing'),
  part('lamp', { origin: 'earlier-replacement' }),
  part('hub', { origin: null }),
];
const row = (id: string, ...evenings: Evening[]) => registerRowAt(soundRecord({ parts, evenings }), id, null);
const outcome = (id: string, ...evenings: Evening[]): string => row(id, ...evenings).outcome.words;
const reading = (id: string, within: boolean) => measured(id, 'inside diameter', '9.1 in', { within });
const day = (fields: Parameters<typeof evening>[1], date = '2030-10-01') => evening(date, fields);

describe('the outcome of a position is computed from what is there and what was done', () => {
  test('nobody has decided and nobody touched it: untouched, whatever it was found to be', () => {
    expect(['wing', 'lamp', 'hub'].map((id) => outcome(id))).toEqual(['untouched', 'untouched', 'untouched']);
    expect(outcome('wing', day({ parts: [did('wing', ['inspected', 'measured'])] }))).toBe('untouched');
    expect(outcome('wing', day({ parts: [did('wing', 'cleaned')] }))).toBe('kept as found');
    expect(row('wing').undecided).toBe(0);
  });

  test('undecided is what has no verdict and was taken off, failed, has a candidate, or was put off', () => {
    expect(outcome('wing', day({ parts: [did('wing', ['removed', 'cleaned', 'fitted'])] }))).toBe('undecided');
    expect(outcome('wing', day({ parts: [did('wing', 'inspected', { condition: 3 })] }))).toBe('undecided');
    expect(outcome('wing', day({ measured: [reading('wing', false)] }))).toBe('undecided');
    expect(outcome('wing', day({ measured: [reading('wing', true)] }))).toBe('untouched');
    expect(outcome('wing', day({ decisions: [decide('wing', 'defer')] }))).toBe('undecided');
    expect([outcome('drum'), row('drum').undecided]).toEqual(['undecided', 1]);
  });

  test('a candidate puts the question while it is here or considered, not before its day and not once it is gone', () => {
    const later = [part('hub'), part('hub-new', { for: 'hub', origin: 'new', acquired: '2030-11-01' })];
    const on = (date: string) =>
      registerRowAt(
        soundRecord({ parts: later, evenings: [evening('2030-12-01', { parts: [did('hub-new', 'gone', { how: 'sold' })] })] }),
        'hub',
        date,
      ).outcome.words;
    expect([on('2030-10-31'), on('2030-11-01'), on('2030-12-01')]).toEqual(['untouched', 'undecided', 'untouched']);
  });

  test('what was missing as found is missing again when what stood in for it has gone back', () => {
    const lent = [did('plate-made', 'fitted')];
    const back = [did('plate-made', ['removed', 'gone'], { how: 'returned' })];
    expect(outcome('plate', day({ parts: lent }), day({ parts: back }, '2030-10-02'))).toBe('missing');
    expect(row('plate', day({ parts: lent }), day({ parts: back }, '2030-10-02')).outcome.kind).toBe('missing');
  });

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
    expect(outcome('studs', off)).toBe('kept, repaired (2 of 5), 3 of 5 on');
    expect(outcome('studs', day({ parts: [did('studs', 'removed', { count: 1 })] }))).toBe('undecided, 4 of 5 on');
  });

  test('what was done to some of a lot is said of so many, never of the others', () => {
    const two = did('studs', ['removed', 'repaired', 'machined', 'fitted'], { count: 2 });
    expect(outcome('studs', day({ parts: [two] }))).toBe('kept, repaired (2 of 5)');
    expect(outcome('studs', day({ parts: [did('studs', ['removed', 'conserved', 'fitted']), two] }))).toBe('kept, repaired (2 of 5)');
    const three = did('studs', ['removed', 'repaired', 'fitted'], { count: 3 });
    expect(outcome('studs', day({ parts: [two] }), day({ parts: [three] }, '2030-10-02'))).toBe('kept, repaired');
  });

  test('and never of those that are gone', () => {
    const repairedAndGone = did('studs', ['removed', 'repaired', 'gone'], { count: 2, how: 'scrapped' });
    expect(outcome('studs', day({ parts: [repairedAndGone] }))).toBe('undecided, 3 of 5 on, 2 gone');
    const wheels = [part('wheels', { count: 4, numbered: 'I to IIII' })];
    const third = (...words: ActionWord[]) => did('wheels', words, { which: [3], count: 1 });
    const work = day({ parts: [third('removed', 'repaired')] });
    const off = day({ parts: [{ ...third('gone'), how: 'scrapped' }] }, '2030-10-02');
    const words = (...evenings: Evening[]) => registerRowAt(soundRecord({ parts: wheels, evenings }), 'wheels', null).outcome.words;
    expect(words(work)).toBe('kept, repaired (1 of 4), 3 of 4 on');
    expect(words(work, off)).toBe('undecided, 3 of 4 on, 1 gone');
  });

  test('nor is a place empty because one is gone, where another stands in for that one', () => {
    const caps = [part('caps', { count: 4, numbered: 'I to IIII' }), part('cap-donor', { for: 'caps', store: 'loft' })];
    const those = (which: number[], words: ActionWord[], more = {}) => did('caps', words, { which, count: which.length, ...more });
    const words = (...evenings: Evening[]) => registerRowAt(soundRecord({ parts: caps, evenings }), 'caps', null).outcome.words;
    const replaced = day({ parts: [those([4], ['removed', 'gone'], { how: 'scrapped' }), did('cap-donor', 'fitted')] });
    const off = day({ parts: [those([1], ['removed'], { to: 'loft' })] }, '2030-10-02');
    const lost = day({ parts: [those([1], ['gone'], { how: 'lost' })] }, '2030-10-03');
    expect(words(replaced)).toBe('partly replaced (1 of 4)');
    expect(words(replaced, off)).toBe('partly replaced (1 of 4), 3 of 4 on');
    expect(words(replaced, off, lost)).toBe('partly replaced (1 of 4), 3 of 4 on, 1 gone');
  });

  test('what stands in the same place of a spare assembly replaces nothing on the vehicle', () => {
    const engines = [
      part('engine'),
      part('engine-spare', { for: 'engine', store: 'loft' }),
      part('magneto', { inside: 'engine' }),
      part('magneto-other', { for: 'magneto', store: 'loft' }),
    ];
    const other = day({ parts: [did('magneto-other', 'fitted', { into: ['engine-spare'] }), did('magneto', 'repaired')] });
    const off = day({ parts: [did('engine', 'removed', { to: 'loft' })] }, '2030-10-02');
    const on = day({ parts: [did('engine-spare', 'fitted')] }, '2030-10-03');
    const magneto = (...evenings: Evening[]) => registerRowAt(soundRecord({ parts: engines, evenings }), 'magneto', null).outcome;
    expect(magneto(other)).toEqual({ kind: 'kept-repaired', words: 'kept, repaired' });
    expect(magneto(other, off)).toEqual({ kind: 'kept-repaired', words: 'kept, repaired, off with engine' });
    expect(magneto(other, off, on)).toEqual({ kind: 'replaced', words: 'replaced (donor)' });
  });

  test('what was thrown away is gone, and not off for now', () => {
    const gone = (how: 'scrapped' | 'sold', count?: number) => did('studs', 'gone', count === undefined ? { how } : { how, count });
    const off = (count: number) => did('studs', 'removed', { count });
    expect(outcome('studs', day({ parts: [off(5), gone('scrapped')] }))).toBe('gone (scrapped)');
    expect(outcome('studs', day({ parts: [off(5), gone('scrapped', 2), gone('sold')] }))).toBe('gone (scrapped, sold)');
    expect(outcome('studs', day({ parts: [off(5), gone('scrapped', 2)] }))).toBe('off for now, 2 of 5 gone');
    expect(outcome('studs', day({ parts: [off(2), gone('scrapped', 2)] }))).toBe('undecided, 3 of 5 on, 2 gone');
    const other = [did('drum', ['removed', 'gone'], { how: 'scrapped' }), did('drum-new', ['fitted', 'removed'])];
    expect(outcome('drum', day({ parts: other }))).toBe('off for now');
    expect(outcome('drum', day({ parts: other.slice(0, 1) }))).toBe('gone (scrapped)');
  });

  test('what stands at another place of the vehicle is not off', () => {
    const wheels = [part('wheels', { count: 4 }), part('spare'), part('caps', { count: 2 }), part('caps-off', { count: 2 })];
    const moved = day({
      parts: [
        did('wheels', ['removed', 'gone'], { count: 1, how: 'scrapped' }),
        did('spare', 'removed'),
        did('spare', 'fitted', { at: 'wheels' }),
        did('caps-off', ['removed', 'gone'], { how: 'scrapped' }),
        did('caps', 'removed'),
        did('caps', 'fitted', { count: 1, at: 'caps-off' }),
      ],
    });
    const of = soundRecord({ parts: wheels, evenings: [moved] });
    expect(registerRowAt(of, 'spare', null).outcome).toEqual({ kind: 'elsewhere', words: 'fitted elsewhere' });
    expect(registerRowAt(of, 'caps', null).outcome.words).toBe('off for now');
    expect(placeStateOf(registerRowAt(of, 'spare', null))).toMatchObject({ kind: 'missing' });
  });

  test('a part that is not here yet and has a position of its own stands nowhere', () => {
    expect(registerRowAt(soundRecord({ parts }), 'flasher-late', '2030-12-31').outcome.words).toBe('not yet fitted');
  });

  test('what lies here and never stood in its place is not off for now: nobody took it off', () => {
    const loose = soundRecord({ parts: [part('handle', { found: 'loose' }), part('lamp', { acquired: '2030-10-02' })] });
    const words = (id: string) => registerRowAt(loose, id, '2030-10-03').outcome;
    expect(words('handle')).toEqual({ kind: 'off-for-now', words: 'found loose, not fitted since' });
    expect(words('lamp')).toEqual({ kind: 'off-for-now', words: 'not yet fitted' });
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
    expect(registerRowAt(runners, 'runners', null).outcome.words).toBe('not yet fitted, 2 of 3 missing');
  });

  describe('a lot of which some were missing as found', () => {
    const lots = [part('trays', { count: 5, missing: 2 }), part('slats', { count: 4, numbered: '1 to 4', missing: 1, missingWhich: [3] })];
    const rowOf = (id: string, ...evenings: Evening[]) => registerRowAt(soundRecord({ parts: lots, evenings }), id, null);
    const wordsOf = (id: string, ...evenings: Evening[]) => rowOf(id, ...evenings).outcome.words;
    const keep = day({ decisions: [decide('trays', 'keep')] });

    test('stands there with the others, and the row says how many are missing', () => {
      expect(wordsOf('trays')).toBe('untouched, 3 of 5 on, 2 missing');
      expect(rowOf('trays').empty).toBe(2);
      const slats = whereaboutsAt(soundRecord({ parts: lots }), 'slats', '2030-10-01');
      expect(slats.map(({ where, which }) => [where.at, which])).toEqual([
        ['fitted', [1, 2, 4]],
        ['missing', [3]],
      ]);
    });

    test('what is said of it is said of those that are there', () => {
      const off = day({ parts: [did('trays', 'removed')] });
      expect(wordsOf('trays', off)).toBe('off for now, 2 of 5 missing');
      expect(wordsOf('trays', off, day({ parts: [did('trays', 'fitted')] }, '2030-10-02'))).toBe('undecided, 3 of 5 on, 2 missing');
      expect(wordsOf('trays', day({ parts: [did('trays', ['removed', 'gone'], { how: 'scrapped' })] }))).toBe(
        'gone (scrapped), 2 of 5 missing',
      );
    });

    test('to be kept, the missing ones are not still to be put back', () => {
      expect(rowOf('trays', keep).pending).toEqual([]);
      const off = day({ parts: [did('trays', 'removed', { count: 1 })] }, '2030-10-02');
      expect(rowOf('trays', keep, off).pending.map(({ words }) => words)).toEqual(['not back on (1 of 5)']);
    });

    test('one that turns up is acquired, and is then on like the others', () => {
      const found = day({ parts: [did('trays', ['acquired', 'fitted'], { count: 1 })] });
      expect(wordsOf('trays', found)).toMatch(/, 4 of 5 on, 1 missing$/);
      const third = day({ parts: [did('slats', ['acquired', 'fitted'], { which: [3], count: 1 })] });
      expect(rowOf('slats', third).empty).toBe(0);
    });
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

describe('what a note says went back otherwise than it came off', () => {
  const back = (id: string, fields: Parameters<typeof did>[2]) =>
    did(id, ['removed', 'fitted'], { asWas: false, note: 'Flat side up.', ...fields });
  const keep = day({ decisions: [decide('wing', 'keep'), decide('studs', 'keep')] });

  test('is not kept as found, and its row says how it is now', () => {
    const now = row('wing', keep, day({ parts: [back('wing', {})] }));
    expect(now.outcome).toEqual({ kind: 'kept-otherwise', words: 'kept, went back otherwise' });
    expect(now.otherwise).toMatchObject([
      { words: 'went back otherwise than it came off: Flat side up.', fitted: { date: '2030-10-01', session: '2030-10-01-work' } },
    ]);
  });

  test('is told beside what was done to it, and beside that nobody decided', () => {
    expect(outcome('wing', day({ parts: [did('wing', 'repaired'), back('wing', {})] }))).toBe('kept, repaired, went back otherwise');
    expect(outcome('wing', day({ parts: [back('wing', {})] }))).toBe('undecided, went back otherwise');
  });

  test('holds until a note says that it is as it was, and while it is off says nothing', () => {
    const other = day({ parts: [back('wing', {})] });
    const again = (fields: Parameters<typeof did>[2]) => day({ parts: [did('wing', ['removed', 'fitted'], fields)] }, '2030-11-01');
    expect(outcome('wing', keep, other, again({}))).toBe('kept, went back otherwise');
    expect(outcome('wing', keep, other, again({ asWas: true }))).toBe('kept as found');
    expect(row('wing', keep, other, day({ parts: [did('wing', 'removed')] }, '2030-11-01'))).toMatchObject({
      outcome: { words: 'off for now' },
      otherwise: [],
    });
  });

  test('of a lot is told of so many, the newest word first', () => {
    const some = day({ parts: [back('studs', { count: 2 }), did('studs', ['removed', 'fitted'], { count: 3, asWas: true })] });
    const now = row('studs', keep, some);
    expect(now.outcome.words).toBe('kept, went back otherwise (2 of 5)');
    expect(now.otherwise.map(({ words }) => words)).toEqual(['went back otherwise than they came off (2 of 5): Flat side up.']);
    expect(outcome('studs', keep, some, day({ parts: [did('studs', ['removed', 'fitted'], { asWas: true })] }, '2030-11-01'))).toBe(
      'kept as found',
    );
  });

  test('of a numbered lot is told of those that are there', () => {
    const slats = [part('slats', { count: 4, numbered: 'I to IIII' })];
    const evenings = [
      day({ decisions: [decide('slats', 'keep')], parts: [back('slats', { which: [2, 4], count: 2 })] }),
      day({ parts: [did('slats', 'removed', { which: [2], count: 1 })] }, '2030-11-01'),
    ];
    const now = registerRowAt(soundRecord({ parts: slats, evenings }), 'slats', null);
    expect(now.outcome.words).toBe('kept, went back otherwise (1 of 4), 3 of 4 on');
    expect(now.otherwise.map(({ which }) => which)).toEqual([[4]]);
  });

  test('of what stands in for it is told of that, and the outcome claims nothing of it', () => {
    const now = row('drum', day({ parts: [did('drum', 'removed'), did('drum-new', 'fitted', { asWas: false, note: 'Turned.' })] }));
    expect(now.outcome.words).toBe('replaced (new old stock)');
    expect(now.otherwise.map(({ words }) => words)).toEqual(['went on otherwise than what came off: Turned.']);
  });
});

describe('what comes back from a firm that was sent it to do something', () => {
  const out = (work: string | null, how: 'loan' | null = null) => [
    day({ parts: [did('wing', 'removed', { to: 'shelf B2' }), did('wing', 'sent-out', { to: 'a tinsmith', work, how })] }),
    day({ parts: [did('wing', ['returned', 'fitted'])] }, '2030-11-01'),
  ];
  test.each([
    ['as it was decided', [day({ decisions: [decide('wing', 'conserve')] }), ...out('Take the dents out')], 'kept, conserved'],
    ['of no kind that anybody said where nothing was decided', out('Nickel plate'), 'kept, worked on'],
    ['nor where it was only to be kept', [day({ decisions: [decide('wing', 'keep')] }), ...out('Nickel plate')], 'kept, worked on'],
    [
      'and repaired where a note says so',
      [...out('Nickel plate'), day({ parts: [did('wing', 'repaired')] }, '2030-11-02')],
      'kept, repaired',
    ],
    [
      'beside what is said, which may have been the lesser',
      [...out('Nickel plate'), day({ parts: [did('wing', 'conserved')] }, '2030-11-02')],
      'kept, conserved, other work too',
    ],
    ['not where nothing was to be done', [day({ decisions: [decide('wing', 'keep')] }), ...out(null)], 'kept as found'],
    ['nor from a loan', [day({ decisions: [decide('wing', 'keep')] }), ...out('Show it', 'loan')], 'kept as found'],
  ] as const)('has had it done, %s', (_, evenings, words) => expect(outcome('wing', ...evenings)).toBe(words));

  test('so what was decided is not still to do', () => {
    const evenings = [day({ decisions: [decide('wing', 'repair')] }), ...out('Take the dents out')];
    expect([row('wing', ...evenings.slice(0, 2)).pending.length, row('wing', ...evenings).pending.length]).toEqual([1, 0]);
  });
});
