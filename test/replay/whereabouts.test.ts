import { describe, expect, test } from 'vitest';
import type { Journal } from '../../src/journal/model.ts';
import { replay } from '../../src/journal/replay/replay.ts';
import { whereInWords } from '../../src/journal/replay/words.ts';
import { codes, did, type Evening, evening, journal, part } from '../builders/journal.ts';

const DRUM = part('drum');
const SPARE = part('drum-spare', { for: 'drum', store: 'shelf B2' });
const STUDS = part('studs', { count: 5 });
const PARTS = [DRUM, SPARE, STUDS, part('splash-plate', { found: 'missing' })];

const places = (of: Journal, id: string): string[] =>
  (replay(of).history.stays.get(id) ?? []).filter(({ to }) => to === null).map(({ count, where }) => `${count} ${whereInWords(where)}`);
const placesAfter = (id: string, ...evenings: Evening[]): string[] => places(journal({ parts: PARTS, evenings }), id);
const faults = (...evenings: Evening[]): string[] => codes({ parts: PARTS, evenings });

describe('the as-found state', () => {
  test('what makes a position is fitted there, a candidate lies in its store, what is missing is missing', () => {
    expect([placesAfter('drum'), placesAfter('drum-spare'), placesAfter('splash-plate')]).toEqual([
      ['1 fitted at drum'],
      ['1 in stores, shelf B2'],
      ['1 missing'],
    ]);
  });

  test('a candidate with a date of its own is not yet here until that day, and is before its sessions', () => {
    const parts = [DRUM, part('late', { for: 'drum', acquired: '2030-11-02', store: 'loft' })];
    const { stays } = replay(journal({ parts })).history;
    expect(stays.get('late')?.map(({ where, from, to }) => [where.at, from.date, to?.date])).toEqual([
      ['not-yet', '2030-09-14', '2030-11-02'],
      ['stores', '2030-11-02', undefined],
    ]);
    const same = [evening('2030-11-02', { parts: [did('drum', 'removed'), did('late', 'fitted')] })];
    expect(codes({ parts, evenings: same })).toEqual([]);
    expect(codes({ parts, evenings: [evening('2030-11-01', { parts: [did('late', 'cleaned')] })] })).toEqual(['A506']);
  });

  test('a part that a session brings is not yet here before', () => {
    const parts = [DRUM, part('drum-new', { for: 'drum', found: 'considered' })];
    const early = evening('2030-10-01', { parts: [did('drum-new', 'cleaned')] });
    const bought = evening('2030-10-05', { parts: [did('drum-new', 'acquired', { to: 'shelf B2' })] });
    expect(codes({ parts, evenings: [early, bought] })).toEqual(['A506']);
    expect(places(journal({ parts, evenings: [bought] }), 'drum-new')).toEqual(['1 in stores, shelf B2']);
  });

  test('what was lost after it was here may turn up again', () => {
    const lost = evening('2030-10-01', { parts: [did('drum-spare', 'gone', { how: 'lost' })] });
    const found = evening('2030-12-01', { parts: [did('drum-spare', 'acquired', { to: 'loft', from: 'under the bench' })] });
    expect(faults(lost, found)).toEqual([]);
    expect(placesAfter('drum-spare', lost, found)).toEqual(['1 in stores, loft']);
  });

  test('a missing part that turns up is acquired', () => {
    expect(placesAfter('splash-plate', evening('2030-10-01', { parts: [did('splash-plate', 'acquired', { to: 'loft' })] }))).toEqual([
      '1 in stores, loft',
    ]);
  });
});

describe('where a part goes', () => {
  test('one entry takes it off, out to a firm; another brings it back and refits it', () => {
    const out = evening('2030-10-01', { parts: [did('drum', ['removed', 'sent-out'], { to: 'the brake works' })] });
    const back = evening('2030-11-01', { parts: [did('drum', ['returned', 'fitted'])] });
    expect(placesAfter('drum', out)).toEqual(['1 out with the brake works']);
    expect(placesAfter('drum', out, back)).toEqual(['1 fitted at drum']);
  });

  test('a part of a lot moves and the rest stays; counts always add up', () => {
    const work = evening('2030-10-01', {
      bags: [14],
      parts: [did('studs', 'removed', { count: 3, to: 'bag 14' }), did('studs', 'gone', { count: 1, how: 'scrapped' })],
    });
    expect(placesAfter('studs', work)).toEqual(['2 fitted at studs', '2 in bag 14', '1 gone (scrapped)']);
  });

  test('the words of one entry are about the same pieces', () => {
    const first = evening('2030-10-01', { parts: [did('studs', 'removed', { count: 2, to: 'loft' })] });
    const second = evening('2030-10-02', { parts: [did('studs', ['removed', 'inspected', 'fitted'])] });
    expect(placesAfter('studs', first, second)).toEqual(['2 in stores, loft', '3 fitted at studs']);
  });

  test('work in place is done on the pieces that the entry goes on to move', () => {
    const first = evening('2030-10-01', { parts: [did('studs', 'removed', { count: 2, to: 'loft' })] });
    const second = evening('2030-10-02', { parts: [did('studs', ['inspected', 'stored'], { count: 2, to: 'shelf A1' })] });
    const { deeds } = replay(journal({ parts: PARTS, evenings: [first, second] })).history;
    expect(deeds.filter((deed) => deed.did === 'inspected').map(({ count, from }) => [count, from.at])).toEqual([[2, 'stores']]);
  });

  test('`from` says which of several places is meant, else the oldest stay goes first', () => {
    const off = evening('2030-10-01', {
      parts: [did('studs', 'removed', { count: 2, to: 'loft' }), did('studs', 'removed', { count: 2, to: 'shelf A1' })],
    });
    const oldest = evening('2030-10-02', { parts: [did('studs', 'gone', { count: 1, how: 'lost' })] });
    const said = evening('2030-10-02', { parts: [did('studs', 'gone', { count: 1, how: 'lost', from: 'shelf A1' })] });
    expect(placesAfter('studs', off, oldest)).toContain('1 in stores, loft');
    expect(placesAfter('studs', off, said)).toEqual(['1 fitted at studs', '2 in stores, loft', '1 in stores, shelf A1', '1 gone (lost)']);
  });

  test('a part may stand at another position, and be taken off there', () => {
    const parts = [part('near'), part('off')];
    const swap = evening('2030-10-01', { parts: [did('near', 'removed'), did('off', 'removed'), did('near', 'fitted', { at: 'off' })] });
    const undo = evening('2030-10-02', { parts: [did('near', 'removed', { at: 'off', to: 'loft' })] });
    expect(places(journal({ parts, evenings: [swap] }), 'near')).toEqual(['1 fitted at off']);
    expect(places(journal({ parts, evenings: [swap, undo] }), 'near')).toEqual(['1 in stores, loft']);
  });

  test('putting a part where it lies leaves its stay whole', () => {
    const { stays } = replay(
      journal({ parts: PARTS, evenings: [evening('2030-10-01', { parts: [did('drum-spare', 'stored', { to: 'shelf B2' })] })] }),
    ).history;
    expect(stays.get('drum-spare')).toHaveLength(1);
  });

  test('a firm may do work on what it has', () => {
    const out = evening('2030-10-01', {
      parts: [did('drum', ['removed', 'sent-out'], { to: 'the brake works' }), did('drum', 'machined')],
    });
    expect(faults(out)).toEqual([]);
  });

  test('what a firm has may go from there for good', () => {
    const out = evening('2030-10-01', { parts: [did('drum', ['removed', 'sent-out'], { to: 'the brake works' })] });
    expect(placesAfter('drum', out, evening('2030-10-09', { parts: [did('drum', 'gone', { how: 'lost' })] }))).toEqual(['1 gone (lost)']);
  });
});

describe('what cannot be', () => {
  const off = evening('2030-10-01', { parts: [did('drum', 'removed', { to: 'shelf A1' })] });

  test.each([
    ['A501', 'a part on the shelf does not come off', did('drum', 'removed')],
    ['A506', 'a missing part is not fitted', did('splash-plate', 'fitted')],
    ['A504', 'six of five studs do not come off', did('studs', 'removed', { count: 6 })],
    ['A503', 'a part on the vehicle is not fitted again', did('studs', 'fitted')],
    ['A509', 'a part on the vehicle is not shelved', did('studs', 'stored', { to: 'loft' })],
    ['A508', 'a part that is here does not come back', did('drum', 'returned')],
    ['A506', 'what is missing cannot be made: the new one is another part', did('splash-plate', 'made')],
    ['A510', 'what is gone went somehow', did('drum', 'gone')],
    ['A510', 'what is stored lies somewhere', did('drum', 'stored')],
    ['A511', 'a part is not taken from where it is not', did('drum', 'fitted', { from: 'loft' })],
    ['A406', 'a store is one that the journal names', did('drum', 'stored', { to: 'shelf B3' })],
    ['A513', 'a destination needs a move', did('drum', 'cleaned', { to: 'loft' })],
    ['A513', 'what is gone lies in no store', did('drum', 'gone', { how: 'given', to: 'loft' })],
    ['A513', 'what is lost nobody has', did('drum', 'gone', { how: 'lost', to: 'a neighbour' })],
    ['A606', 'a bag is one that a note fills', did('drum', 'fitted', { from: 'bag 9' })],
  ])('%s: %s', (code, _, entry) => {
    expect(faults(off, evening('2030-10-02', { parts: [entry] }))).toEqual([code]);
  });

  test('a part is acquired once', () => {
    const parts = [DRUM, part('drum-new', { for: 'drum', found: 'considered' })];
    const bought = evening('2030-10-02', { parts: [did('drum-new', 'acquired')] });
    expect(codes({ parts, evenings: [bought, evening('2030-10-03', { parts: [did('drum-new', 'acquired')] })] })).toEqual(['A507']);
  });

  test('what came later and was written as a place of its own is told to say what it is for', () => {
    const told = (evenings: readonly Evening[]) =>
      replay(journal({ parts: PARTS, evenings: [...evenings] })).diagnostics.map(({ code, hint }) => [code, hint]);
    const come = evening('2030-10-02', { parts: [did('drum', 'acquired', { from: 'a carter' })] });
    expect(told([come])).toEqual([['A507', expect.stringMatching(/^Without `for` .* `for: …`; else take/)]]);
    expect(told([off, come])).toEqual([['A507', expect.stringMatching(/^Take that word out/)]]);
  });

  test('a scrapped part is not found on the bench', () => {
    const gone = evening('2030-10-02', { parts: [did('drum', 'gone', { how: 'scrapped' })] });
    expect(faults(off, gone, evening('2030-10-03', { parts: [did('drum', 'cleaned')] }))).toEqual(['A505']);
  });

  test('it says where the part is, since which session, and shows the entry that put it there', () => {
    const { diagnostics } = replay(journal({ parts: PARTS, evenings: [off, evening('2030-10-02', { parts: [did('drum', 'removed')] })] }));
    expect(diagnostics[0]?.message).toContain('in stores, shelf A1, since session 2030-10-01-work');
    expect(diagnostics[0]?.related.map(({ place }) => place.file)).toEqual(['sessions/2030-10-01-work.md']);
    expect(diagnostics[0]?.related.map(({ message }) => message)).toEqual([expect.stringMatching(/^This is why drum is /)]);
  });

  test('a full position says what it holds and how many there is room for', () => {
    const parts = [STUDS, part('studs-new', { for: 'studs', count: 5 })];
    const evenings = [
      evening('2030-10-01', { parts: [did('studs', 'removed', { count: 2 })] }),
      evening('2030-10-02', { parts: [did('studs-new', 'fitted')] }),
    ];
    const [problem] = replay(journal({ parts, evenings })).diagnostics;
    expect(problem).toMatchObject({ code: 'A502', hint: expect.stringContaining('`count: 2`') });
    expect(problem?.message).toContain('3 of `studs`');
  });

  test('an entry that fails at one of its words is told once, and what it speaks of is where it puts it', () => {
    const slip = evening('2030-10-01', { parts: [did('drum', ['removed', 'returned'], { to: 'loft' })] });
    expect(faults(slip)).toEqual(['A508']);
    expect(placesAfter('drum', slip)).toEqual(['1 in stores, loft']);
  });

  test('where one is fitted that there is no room for, what stood there is taken to have come off', () => {
    const slip = evening('2030-10-01', { parts: [did('drum-spare', 'fitted')] });
    const goesOn = evening('2030-10-02', { parts: [did('drum-spare', 'removed', { to: 'loft' }), did('drum', 'fitted')] });
    expect(faults(slip, goesOn)).toEqual(['A502']);
  });

  test('the old part taken off below the new one in one note is one slip, and the repair says where to put its entry', () => {
    const evenings = [evening('2030-10-01', { parts: [did('drum-spare', 'fitted'), did('drum', 'removed', { to: 'shelf A1' })] })];
    const { diagnostics } = replay(journal({ parts: PARTS, evenings }));
    expect(diagnostics.map(({ code, hint }) => [code, hint])).toEqual([
      ['A502', '`drum` is taken off below: put that entry above this one.'],
    ]);
    expect(placesAfter('drum', ...evenings)).toEqual(['1 in stores, shelf A1']);
    const again = evening('2030-10-02', { parts: [did('drum', 'removed')] });
    expect(faults(...evenings, again)).toEqual(['A502', 'A501']);
  });

  test('a catalogue that fits too much as found is told so, and what does not fit is left off', () => {
    const parts = [DRUM, part('second', { for: 'drum', found: 'fitted' })];
    expect(codes({ parts })).toEqual(['A512']);
    expect(places(journal({ parts }), 'second')).toEqual(['1 in stores, unplaced']);
  });
});
