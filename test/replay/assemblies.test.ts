import { describe, expect, test } from 'vitest';
import { whereaboutsCsv } from '../../src/exports/whereabouts.ts';
import { originalityAt } from '../../src/journal/registers/originality.ts';
import { registerRowAt } from '../../src/journal/registers/register.ts';
import { whereaboutsAt } from '../../src/journal/registers/stays.ts';
import { storesAt } from '../../src/journal/registers/stores.ts';
import { replay } from '../../src/journal/replay/replay.ts';
import { whereInWords } from '../../src/journal/replay/words.ts';
import { codes, did, type Evening, evening, journal, part, placeAt, soundRecord } from '../builders/journal.ts';

const parts = [
  part('impulse', { inside: 'magneto' }),
  part('magneto', { inside: 'engine' }),
  part('engine'),
  part('engine-spare', { for: 'engine', store: 'loft' }),
  part('magneto-spare', { for: 'magneto', store: 'shelf A1' }),
  part('panel'),
  part('lettering', { inside: 'panel' }),
];
const out = evening('2030-10-01', { parts: [did('engine', 'removed', { to: 'shelf B2' })] });
const at = (date: string, ...entries: Parameters<typeof did>[]) => evening(date, { parts: entries.map((entry) => did(...entry)) });
const now = (id: string, ...evenings: Evening[]) =>
  (replay(journal({ parts, evenings })).history.stays.get(id) ?? [])
    .filter(({ to }) => to === null)
    .map(({ where }) => whereInWords(where));
const faults = (...evenings: Evening[]) => codes({ parts, evenings });

describe('what is in a part', () => {
  test('is in it as found, and on the vehicle while the chain ends there', () => {
    expect([now('magneto'), now('impulse')]).toEqual([['fitted at magneto in engine'], ['fitted at impulse in magneto']]);
  });

  test('goes where that goes: into stores, out to a firm, back, and on again', () => {
    expect(now('impulse', out)).toEqual(['in magneto, in engine, in stores, shelf B2']);
    const sent = at('2030-10-02', ['engine', 'sent-out', { to: 'a works' }]);
    expect(now('impulse', out, sent)).toEqual(['in magneto, in engine, out with a works']);
    const back = at('2030-10-03', ['engine', ['returned', 'fitted']]);
    expect(now('impulse', out, sent, back)).toEqual(['fitted at impulse in magneto']);
  });

  describe('that is a spare is in it from the start, where the catalogue says so', () => {
    const spares = [
      part('engine'),
      part('magneto', { inside: 'engine' }),
      part('impulse', { inside: 'magneto' }),
      part('engine-spare', { for: 'engine', store: 'loft' }),
      part('magneto-in-it', { for: 'magneto', within: 'engine-spare' }),
      part('impulse-in-it', { for: 'impulse', within: 'magneto-in-it' }),
      part('engine-thought-of', { for: 'engine', found: 'considered' }),
      part('magneto-thought-of', { for: 'magneto', within: 'engine-thought-of' }),
    ];
    const lies = (id: string, ...evenings: Evening[]) =>
      (replay(journal({ parts: spares, evenings })).history.stays.get(id) ?? [])
        .filter(({ to }) => to === null)
        .map(({ where }) => whereInWords(where));

    test('and goes where it goes', () => {
      expect(lies('impulse-in-it')).toEqual(['in magneto-in-it, in engine-spare, in stores, loft']);
      const swapped = at('2030-10-01', ['engine', 'removed'], ['engine-spare', 'fitted']);
      expect(lies('magneto-in-it', swapped)).toEqual(['fitted at magneto in engine-spare']);
      expect(lies('magneto-in-it', at('2030-10-01', ['magneto-in-it', 'removed', { to: 'shelf A1' }]))).toEqual(['in stores, shelf A1']);
      expect(lies('magneto-in-it', at('2030-10-01', ['engine-spare', 'gone', { how: 'sold' }]))).toEqual(['gone (sold)']);
    });

    test('comes with it, and is no more here than it', () => {
      const [before] = lies('magneto-thought-of');
      expect(before).toBe(lies('engine-thought-of')[0]);
      const brought = at('2030-10-01', ['engine-thought-of', 'acquired', { to: 'loft' }]);
      expect(lies('magneto-thought-of', brought)).toEqual(['in engine-thought-of, in stores, loft']);
    });

    test('and nothing goes into it that belongs into what stood on the vehicle', () => {
      const off = at('2030-10-01', ['engine', 'removed', { to: 'loft' }], ['impulse', 'removed', { to: 'loft' }]);
      const back = at('2030-10-02', ['impulse', 'fitted']);
      expect(lies('impulse', off, back)).toEqual(['in magneto, in engine, in stores, loft']);
    });
  });

  test('has a stay of its own for each place, since the day the whole moved', () => {
    const of = soundRecord({ parts, evenings: [out] });
    expect(whereaboutsAt(of, 'magneto', '2030-10-05').map(({ since }) => since.date)).toEqual(['2030-10-01']);
    expect(whereaboutsAt(of, 'magneto', '2030-09-30').map(({ where }) => where.at)).toEqual(['fitted']);
  });

  test('comes off the whole on the bench by `removed`, and goes back into it by `fitted`', () => {
    const off = at('2030-10-02', ['magneto', 'removed', { to: 'shelf A1' }]);
    expect(faults(out, off)).toEqual([]);
    expect([now('magneto', out, off), now('impulse', out, off)]).toEqual([['in stores, shelf A1'], ['in magneto, in stores, shelf A1']]);
    const again = at('2030-10-03', ['magneto', 'fitted']);
    expect(now('impulse', out, off, again)).toEqual(['in magneto, in engine, in stores, shelf B2']);
  });

  test('is not on the vehicle while the whole is off: the position is empty, and so is its share', () => {
    const of = soundRecord({ parts, evenings: [at('2030-10-01', ['panel', 'removed', { to: 'loft' }])] });
    expect(registerRowAt(of, 'lettering', null).fitted).toEqual([]);
    expect(registerRowAt(of, 'lettering', '2030-09-30').fitted.map(({ part: id }) => id)).toEqual(['lettering']);
    expect([originalityAt(of, '2030-09-30').overall.fitted, originalityAt(of, null).overall.fitted]).toEqual([5, 3]);
    expect(
      storesAt(of, null)
        .find(({ store }) => store === 'loft')
        ?.things.map(({ part: id }) => id),
    ).toEqual(['engine-spare', 'panel', 'lettering']);
  });
});

describe('`fitted` at a place in another part', () => {
  const bare = at('2030-10-02', ['magneto', 'removed', { to: 'shelf A1' }]);

  test('puts it into what stands on the vehicle', () => {
    const other = at('2030-10-03', ['engine-spare', 'fitted']);
    expect(now('magneto', out, bare, other, at('2030-10-04', ['magneto', 'fitted']))).toEqual(['fitted at magneto in engine-spare']);
  });

  test('or, while nothing does, into what stood there last', () => {
    const swapped = [out, at('2030-10-02', ['engine-spare', 'fitted']), at('2030-10-03', ['engine-spare', 'removed', { to: 'loft' }])];
    expect(now('magneto-spare', ...swapped, at('2030-10-04', ['magneto-spare', 'fitted']))).toEqual(['in engine-spare, in stores, loft']);
  });

  test('or where `into` says; two engines may each have one', () => {
    const into = at('2030-10-02', ['magneto-spare', 'fitted', { into: ['engine-spare'] }]);
    expect(faults(out, into)).toEqual([]);
    expect([now('magneto-spare', out, into), now('magneto', out, into)]).toEqual([
      ['in engine-spare, in stores, loft'],
      ['in engine, in stores, shelf B2'],
    ]);
    expect(faults(out, at('2030-10-02', ['magneto-spare', 'fitted']))).toEqual(['A502']);
  });

  test('is refused where that is not here, once, and then believed', () => {
    const sent = [bare, at('2030-10-03', ['engine', ['removed', 'sent-out'], { to: 'a works' }])];
    const fit = at('2030-10-04', ['magneto', 'fitted']);
    expect(faults(...sent, fit)).toEqual(['A515']);
    expect(faults(...sent, fit, at('2030-10-05', ['engine', 'returned', { to: 'loft' }], ['magneto', 'removed', { to: 'loft' }]))).toEqual([
      'A515',
    ]);
  });

  test('puts nothing into itself, nor into what is in it', () => {
    const removed = at('2030-10-02', ['magneto', 'removed', { to: 'shelf A1' }]);
    expect(faults(out, removed, at('2030-10-03', ['magneto', 'fitted', { into: ['impulse'] }]))).toEqual(['A516']);
    expect(faults(out, removed, at('2030-10-03', ['magneto', 'fitted', { into: ['magneto'] }]))).toEqual(['A516']);
  });
});

test('the table of whereabouts says what it is in, and the whole has a line of its own', () => {
  const lines = whereaboutsCsv(soundRecord({ parts, evenings: [out] })).split('\n');
  expect(lines.filter((line) => /^[^,]*,(magneto|engine),/.test(line)).map((line) => /,(in|stores),[^,]*/.exec(line)?.[0])).toEqual([
    ',in,engine',
    ',stores,shelf B2',
  ]);
});

describe('what goes for good', () => {
  test('takes along what is in it, and a warning lists the originals', () => {
    const gone = at('2030-10-02', ['engine', 'gone', { how: 'sold' }]);
    const { diagnostics } = replay(journal({ parts, evenings: [out, gone] }));
    expect(diagnostics.map(({ code, severity }) => [code, severity])).toEqual([['A519', 'warning']]);
    expect(diagnostics[0]?.message).toMatch(/`magneto`, `impulse`/);
    expect([now('magneto', out, gone), now('impulse', out, gone)]).toEqual([['gone (sold)'], ['gone (sold)']]);
  });

  test('says nothing of what is in it where none of that is original', () => {
    const fit = at('2030-10-02', ['magneto', 'removed'], ['magneto-spare', 'fitted']);
    expect(faults(out, fit, at('2030-10-03', ['engine', 'gone', { how: 'scrapped' }]))).toEqual([]);
  });

  test('counts as originals what is believed to be by then', () => {
    const belief = {
      origin: 'donor',
      because: 'Off another.',
      by: null,
      paper: null,
      session: '2030-10-01-doubt',
      date: '2030-10-01',
    } as const;
    const about = (id: string) => ({ ...belief, part: id, place: placeAt('sessions/note.md') });
    const doubt = evening('2030-10-01', { attributed: [about('magneto'), about('impulse')] }, 'doubt');
    expect(faults(out, doubt, at('2030-10-02', ['engine', 'gone', { how: 'sold' }]))).toEqual([]);
  });

  test('what went with it and came back is a part of its own again', () => {
    const gone = at('2030-10-02', ['engine', 'gone', { how: 'sold' }]);
    const back = at('2030-10-03', ['magneto', 'acquired', { from: 'the buyer', to: 'loft' }]);
    expect(now('magneto', out, gone, back)).toEqual(['in stores, loft']);
  });
});

test('what is in a part that is missing as found is missing with it, and turns up with it', () => {
  const missing = [part('case', { found: 'missing' }), part('lens', { inside: 'case' })];
  const where = (...evenings: Evening[]) =>
    replay(journal({ parts: missing, evenings }))
      .history.stays.get('lens')
      ?.at(-1)?.where;
  expect(where()).toEqual({ at: 'missing' });
  expect(where(at('2030-10-01', ['case', 'acquired', { to: 'loft' }]))).toMatchObject({ at: 'in', part: 'case' });
});
