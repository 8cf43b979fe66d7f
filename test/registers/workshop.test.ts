import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Part } from '../../src/journal/model.ts';
import type { JournalRecord } from '../../src/journal/record.ts';
import { bagsAt } from '../../src/journal/registers/bags.ts';
import { filmIndex } from '../../src/journal/registers/film.ts';
import { seriesOf } from '../../src/journal/registers/measurements.ts';
import { methodsIndex } from '../../src/journal/registers/methods.ts';
import { gatesAt, openItemsBySubsystem, questionsAt, temporaryMeasuresAt, thingsToBuyAt } from '../../src/journal/registers/open-items.ts';
import { goesWithVehicleAt, storesAt } from '../../src/journal/registers/stores.ts';
import { unrecordedAt } from '../../src/journal/registers/unrecorded.ts';
import { did, type Evening, evening, part, record, soundRecord } from '../builders/journal.ts';
import { clip, measured, method, picture } from '../builders/observed.ts';
import { soundJournals } from '../builders/streams.ts';
import { readFragment } from '../values/media-fragment.ts';

const parts = [
  part('drum'),
  part('drum-spare', { for: 'drum', store: 'shelf B2' }),
  part('bolts', { count: 4 }),
  part('plate', { subsystem: 'frame' }),
];
const recordOf = (...evenings: Evening[]) => soundRecord({ parts, evenings });

describe('the stores', () => {
  const of = recordOf(evening('2030-10-01', { parts: [did('drum', 'removed', { to: 'loft' }), did('plate', 'removed')] }));

  test('list every place, empty ones too, and what is unplaced last', () => {
    expect(storesAt(of, null).map(({ store, things }) => [store, things.map(({ part: id }) => id)])).toEqual([
      ['shelf A1', []],
      ['shelf B2', ['drum-spare']],
      ['loft', ['drum']],
      [null, ['plate']],
    ]);
  });

  test('know what goes with the vehicle: the originals', () => {
    expect(goesWithVehicleAt(of, null).map(({ part: id }) => id)).toEqual(['drum', 'plate']);
  });
});

test('a bag shows what is in it and what has been', () => {
  const of = recordOf(
    evening('2030-10-01', { bags: [14], parts: [did('bolts', 'removed', { count: 3, to: 'bag 14' })] }),
    evening('2030-10-05', { parts: [did('bolts', 'fitted', { count: 1 })] }),
  );
  expect(bagsAt(of, null)).toMatchObject([{ bag: 14, emptied: null, parts: [{ part: 'bolts', count: 2 }] }]);
  expect(bagsAt(of, null)[0]?.held.map(({ count, to }) => [count, to?.date ?? null])).toEqual([
    [1, '2030-10-05'],
    [2, null],
  ]);
  expect(bagsAt(of, '2030-09-30')).toEqual([]);
});

describe('gates', () => {
  const open = evening('2030-10-01', {
    opens: [
      { id: 'cap', kind: 'temporary', before: 'first-start', on: { part: 'drum', subsystem: 'brakes' } },
      { id: 'lamp', kind: 'buy', price: 2000 },
      { id: 'who-lettered-it', kind: 'question' },
      { id: 'bleed', before: 'road-test', on: { part: null, subsystem: 'brakes' } },
    ],
  });

  test('a temporary measure holds its own gate and those after it, and tells its age', () => {
    const of = recordOf(open);
    expect(
      gatesAt(of, null).map(({ milestone, mayPass, temporary, items, earlier }) => [
        milestone.id,
        mayPass,
        temporary.length,
        items.length,
        earlier.length,
      ]),
    ).toEqual([
      ['stripped', true, 0, 0, 0],
      ['first-start', false, 1, 0, 0],
      ['road-test', false, 0, 1, 1],
    ]);
    expect(temporaryMeasuresAt(of, '2030-10-31').map(({ id, days }) => [id, days])).toEqual([['cap', 30]]);
  });

  test('an item put off holds the later gate instead, and keeps its history', () => {
    const of = recordOf(open, evening('2030-11-01', { defers: [{ id: 'cap', to: 'road-test' }] }));
    expect(gatesAt(of, null).map(({ mayPass }) => mayPass)).toEqual([true, true, false]);
    expect(gatesAt(of, '2030-10-31').map(({ mayPass }) => mayPass)).toEqual([true, false, false]);
  });

  test('what an earlier milestone was passed with holds the later one too', () => {
    const admitted = { milestone: 'first-start', withOpen: ['cap'], because: 'only idled' };
    const of = recordOf(
      open,
      evening('2030-10-05', { reached: [{ milestone: 'stripped' }] }),
      evening('2030-11-01', { reached: [admitted] }),
    );
    expect(gatesAt(of, null).map(({ reached, earlier }) => [reached?.date, earlier.length])).toEqual([
      ['2030-10-05', 0],
      ['2030-11-01', 0],
      [undefined, 1],
    ]);
    expect(gatesAt(of, '2030-10-31')[2]?.earlier.map(({ id }) => id)).toEqual(['cap']);
  });

  test('what is to be bought is a list; what names no subsystem is general', () => {
    const of = recordOf(open);
    expect(thingsToBuyAt(of, null).map(({ id, price }) => [id, price])).toEqual([['lamp', 2000]]);
    expect(questionsAt(of, null).map(({ id }) => id)).toEqual(['who-lettered-it']);
    expect([...openItemsBySubsystem(of, null)].map(([id, rows]) => [id, rows.map((row) => row.id)])).toEqual([
      ['brakes', ['cap', 'bleed']],
      ['general', ['lamp', 'who-lettered-it']],
    ]);
  });
});

describe('recorded before it is covered', () => {
  const off = evening('2030-10-01', { parts: [did('drum', 'removed')] });
  const back = evening('2030-10-09', { parts: [did('drum', 'fitted')] });
  const lacking = (...evenings: Evening[]) => {
    const { offNow, backOn } = unrecordedAt(recordOf(...evenings), null);
    return [offNow, backOn].map((list) => list.map(({ part: id }) => id));
  };

  test('a part off without marks or a picture is on the one list, and on the other once it is back', () => {
    expect([lacking(off), lacking(off, back)]).toEqual([
      [['drum'], []],
      [[], ['drum']],
    ]);
  });

  test.each([
    ['marks written down as it came off', [evening('2030-10-01', { parts: [did('drum', 'removed', { marks: 'C 4417' })] }), back]],
    ['a mark put on', [off, evening('2030-10-03', { parts: [did('drum', 'marked')] }), back]],
    ['a picture', [off, evening('2030-10-03', { pictures: [picture('drum.jpg', ['drum'])] }), back]],
    ['a picture taken when it was back', [off, back, evening('2030-10-11', { pictures: [picture('drum.jpg', ['drum'])] })]],
    ['a mark on film', [off, evening('2030-10-03', { film: [clip('reel.mp4', [[12, ['plate', 'drum']]])] }), back]],
    [
      'the picture of the bag it went into',
      [evening('2030-10-01', { bags: [{ bag: 1, picture: 'bag-1.jpg' }], parts: [did('drum', 'removed', { to: 'bag 1' })] }), back],
    ],
    ['that there are no marks', [evening('2030-10-01', { parts: [did('drum', 'removed', { marks: 'none' })] }), back]],
  ])('%s is a record', (_, evenings) => {
    expect(lacking(...evenings)).toEqual([[], []]);
  });

  test.each([
    ['a picture of another part', { pictures: [picture('plate.jpg', ['plate'])] }],
    ['another part on film', { film: [clip('reel.mp4', [[12, ['plate']]])] }],
    [
      'a picture that is named for another part, beside whose words it stands',
      { pictures: [{ ...picture('plate.jpg', ['plate', 'drum']), named: ['plate'] }] },
    ],
    ['the picture of a bag of what came off it', { bags: [{ bag: 1, off: 'drum', picture: 'bag-1.jpg' }] }],
    ['that nobody took its marks', { parts: [did('drum', 'inspected', { marks: 'not taken' })] }],
    ['a bag without a picture', { bags: [{ bag: 1, off: 'drum' }] }],
    ['the picture of a bag of another part', { bags: [{ bag: 1, off: 'plate', picture: 'bag-1.jpg' }] }],
    ['its condition and its finish', { parts: [did('drum', 'inspected', { condition: 2, finish: 'bare' })] }],
    ['a measurement', { measured: [measured('drum', 'inside diameter', '9.043 in')] }],
  ])('%s is no record', (_, fields) => {
    expect(lacking(off, evening('2030-10-03', fields), back)).toEqual([[], ['drum']]);
  });

  test('what is fitted for the first time counts too: a spare, a new part, one that was found loose', () => {
    const spare = evening('2030-10-02', { parts: [did('drum-spare', 'fitted')] });
    expect(lacking(off, spare)).toEqual([['drum'], ['drum-spare']]);
    const loose = [part('badge', { found: 'loose', store: 'loft' }), part('bolts-new', { for: 'bolts', found: 'considered', count: 4 })];
    const on = (more: Partial<Part>, ...evenings: Evening[]) => {
      const of = soundRecord({ parts: [...parts, ...loose.map((one) => ({ ...one, ...more }))], evenings });
      const { offNow, backOn } = unrecordedAt(of, null);
      return [offNow, backOn].map((list) => list.map(({ part: id, count, since }) => `${count} ${id} ${since.how} ${since.date}`));
    };
    const bought = evening('2030-10-01', {
      parts: [did('bolts-new', 'acquired', { to: 'loft' }), did('bolts', 'removed', { marks: 'none' })],
    });
    const fitted = evening('2030-10-03', { parts: [did('badge', 'fitted'), did('bolts-new', 'fitted', { count: 3 })] });
    expect(on({})).toEqual([['1 badge arrived 2030-09-14'], []]);
    expect(on({}, bought, fitted)).toEqual([[], ['1 badge arrived 2030-09-14', '3 bolts-new arrived 2030-10-01']]);
    expect(on({ marks: 'C 4417' }, bought, fitted)).toEqual([[], []]);
    expect(on({ marks: 'not taken' }, bought, fitted)[1]).toHaveLength(2);
  });

  test('what was recorded before it came off does not count, nor at an earlier time when it was off', () => {
    const pictured = { pictures: [picture('drum.jpg', ['drum'])] };
    expect(lacking(evening('2030-09-20', pictured), off, back)).toEqual([[], ['drum']]);
    const before = evening('2030-09-20', { ...pictured, parts: [did('drum', ['removed', 'fitted'])] });
    expect(lacking(before)).toEqual([[], []]);
    expect(lacking(before, off, back)).toEqual([[], ['drum']]);
  });

  test('a part that went back unrecorded, came off again and was recorded is off the lists', () => {
    const again = (marks: string | null) => evening('2030-10-20', { parts: [did('drum', 'removed', { marks })] });
    expect(lacking(off, back, again('C 4417'))).toEqual([[], []]);
    expect(lacking(off, back, again(null))).toEqual([['drum'], []]);
  });

  test('of a lot, some are off now and some went back, each counted', () => {
    const lists = unrecordedAt(
      recordOf(
        evening('2030-10-01', { parts: [did('bolts', 'removed', { count: 3 })] }),
        evening('2030-10-09', { parts: [did('bolts', 'fitted', { count: 2 })] }),
      ),
      null,
    );
    expect([lists.offNow, lists.backOn].map((list) => list.map(({ count, since, backOn }) => [count, since.date, backOn?.date]))).toEqual([
      [[1, '2030-10-01', undefined]],
      [[2, '2030-10-01', '2030-10-09']],
    ]);
  });

  test('of a numbered lot each is on its own list, by what was recorded of it', () => {
    const spokes = part('spokes', { count: 6, numbered: '1 to 6' });
    const lists = (...evenings: Evening[]) => {
      const { offNow, backOn } = unrecordedAt(soundRecord({ parts: [...parts, spokes], evenings }), null);
      return [offNow, backOn].map((list) => list.map(({ count, since, backOn: back }) => [count, since.date, back?.date ?? null]));
    };
    const marked = evening('2030-10-01', { parts: [did('spokes', 'removed', { which: [3, 4], marks: 'K 3' })] });
    const bare = evening('2030-10-02', { parts: [did('spokes', 'removed', { which: [5, 6] })] });
    const refit = (which: number[]) => evening('2030-10-09', { parts: [did('spokes', 'fitted', { which })] });
    expect(lists(marked, bare, refit([3, 4]))).toEqual([[[2, '2030-10-02', null]], []]);
    expect(lists(marked, bare, refit([3, 6]))).toEqual([[[1, '2030-10-02', null]], [[1, '2030-10-02', '2030-10-09']]]);
    const later = evening('2030-10-05', { parts: [did('spokes', 'inspected', { which: [5], marks: 'none' })] });
    expect(lists(marked, bare, later, refit([5, 6]))).toEqual([[], [[1, '2030-10-02', '2030-10-09']]]);
    const pictured = evening('2030-10-05', { pictures: [picture('spokes.jpg', ['spokes'])] });
    expect(lists(marked, bare, pictured, refit([5, 6]))).toEqual([[], []]);
  });

  test('of a lot, those that came off and one that was lost and found are told apart, each with its own day', () => {
    const { offNow, backOn } = unrecordedAt(
      recordOf(
        evening('2030-10-01', { parts: [did('bolts', 'removed', { to: 'loft' })] }),
        evening('2030-10-09', { parts: [did('bolts', 'gone', { count: 1, how: 'lost' })] }),
        evening('2030-10-20', {
          parts: [did('bolts', 'acquired', { count: 1, from: 'a drawer', to: 'loft' }), did('bolts', 'fitted')],
        }),
      ),
      null,
    );
    expect(offNow).toEqual([]);
    expect(backOn.map(({ count, since, backOn: back }) => [count, since.how, since.date, back?.date])).toEqual([
      [3, 'off', '2030-10-01', '2030-10-20'],
      [1, 'arrived', '2030-10-20', '2030-10-20'],
    ]);
  });

  test('what was lost and came back, or was missing and turned up, is awaited on the vehicle; a spare that came is not', () => {
    const lost = evening('2030-10-05', { parts: [did('drum', 'gone', { how: 'lost' })] });
    const found = evening('2030-10-20', { parts: [did('drum', 'acquired', { from: 'a hedge', to: 'loft' })] });
    expect(lacking(off, lost, found)).toEqual([['drum'], []]);
    const turnedUp = evening('2030-10-20', {
      parts: [did('lens', 'acquired', { to: 'loft' }), did('lens-new', 'acquired', { to: 'loft' })],
    });
    const more = [part('lens', { found: 'missing' }), part('lens-new', { for: 'lens', found: 'considered' })];
    const { offNow } = unrecordedAt(soundRecord({ parts: [...parts, ...more], evenings: [turnedUp] }), null);
    expect(offNow.map(({ part: id, since }) => [id, since.how, since.date])).toEqual([['lens', 'arrived', '2030-10-20']]);
  });

  test('of a lot, those that went back before the others were recorded stay on the list only while nothing was recorded since', () => {
    const early = [
      evening('2030-10-01', { parts: [did('bolts', 'removed', { count: 2 })] }),
      evening('2030-10-02', { parts: [did('bolts', 'fitted', { count: 2 })] }),
    ];
    const scrapped = evening('2030-10-05', {
      parts: [did('bolts', 'removed', { count: 2 }), did('bolts', 'gone', { count: 1, how: 'scrapped' })],
    });
    const counts = (...evenings: Evening[]) => {
      const { offNow, backOn } = unrecordedAt(recordOf(...evenings), null);
      return [offNow, backOn].map((list) => list.map(({ count }) => count));
    };
    expect(counts(...early)).toEqual([[], [2]]);
    expect(counts(...early, scrapped)).toEqual([[1], [2]]);
    expect(counts(...early, scrapped, evening('2030-10-06', { pictures: [picture('bolts.jpg', ['bolts'])] }))).toEqual([[], []]);
  });

  test('whatever is written down, a single part is listed just when nothing recorded it since it last came off or arrived', () => {
    fc.assert(
      fc.property(soundJournals, (of) => {
        const one = record(of);
        const { offNow, backOn } = unrecordedAt(one, null);
        for (const id of ['drum', 'drum-spare', 'drum-new', 'plate']) {
          expect([offNow, backOn].map((list) => list.some((row) => row.part === id))).toEqual(unrecordedByHand(one, id));
        }
      }),
      { numRuns: 300 },
    );
  });

  test('a part that was never off, or is gone, is on neither list', () => {
    expect(lacking(evening('2030-10-01', { parts: [did('drum', ['removed', 'gone'], { how: 'lost' })] }))).toEqual([[], []]);
  });
});

/** The rule as it is written, for a part of which there is one: whether it is off, or back on, and lacks a record. */
function unrecordedByHand({ journal, history }: JournalRecord, id: string): [boolean, boolean] {
  const sessions = [...journal.sessions].sort((a, b) => (a.file < b.file ? -1 : 1));
  const deeds = history.deeds.filter(({ part: about }) => about === id);
  const came = deeds.findLast(({ did: word }) => word === 'removed' || word === 'acquired' || word === 'made');
  const stood = history.stays.get(id)?.[0]?.where.at === 'fitted';
  if (!came && stood) return [false, false];
  const { acquired = null } = journal.parts.get(id) ?? {};
  const since = came
    ? sessions.slice(sessions.findIndex((session) => session.id === came.session))
    : sessions.filter(({ date }) => acquired === null || date >= acquired);
  const recorded = since.some(
    ({ parts: entries, pictures, film }) =>
      entries.some((entry) => entry.part === id && ((entry.marks ?? 'not taken') !== 'not taken' || entry.did.includes('marked'))) ||
      pictures.some(({ shows }) => shows.includes(id)) ||
      film.some(({ marks }) => marks.some((mark) => mark.parts.includes(id))),
  );
  const now = history.stays.get(id)?.find(({ to }) => to === null)?.where.at;
  const off = now === 'stores' || now === 'bag' || now === 'out';
  const awaited = came?.did === 'removed' || journal.positions.has(id);
  return [!recorded && off && awaited, !recorded && now === 'fitted'];
}

test('methods are gathered by what was done and by material, newest first, with what came of them', () => {
  const of = recordOf(
    evening('2030-10-01', {
      methods: [method('Citric acid bath', ['drum'], { material: 'cast iron', with: ['citric-acid'], result: 'poor' })],
    }),
    evening('2031-03-01', {
      methods: [
        method('citric  acid bath', ['plate'], { material: 'Steel', with: ['citric-acid'], result: 'good' }),
        method('Scalpel', ['plate']),
      ],
    }),
  );
  const { byMethod, byMaterial, byConsumable } = methodsIndex(of);
  expect(byMethod.map(({ name, trials, results }) => [name, trials.map(({ date }) => date), results.good, results.poor])).toEqual([
    ['Citric acid bath', ['2031-03-01', '2030-10-01'], 1, 1],
    ['Scalpel', ['2031-03-01'], 0, 0],
  ]);
  expect(byMaterial.map(({ name }) => name)).toEqual(['cast iron', 'Steel', null]);
  expect(byConsumable.map(({ consumable, group }) => [consumable, group.trials.length])).toEqual([['citric-acid', 2]]);
});

test('a series of one measurement has its first as found beside its last as left', () => {
  const of = recordOf(
    evening('2030-10-01', { measured: [measured('drum', 'inside diameter', '9.043 in', { as: 'found', within: false })] }),
    evening('2030-11-20', { measured: [measured('drum', 'inside diameter', '9.050 in', { as: 'left', within: true })] }),
    evening('2030-12-01', {
      measured: [measured('drum', 'Inside diameter', '229.90 mm', { as: 'left', within: true }), measured('drum', 'weight', '4 kg')],
    }),
  );
  const [diameter, ...others] = seriesOf(of, 'drum');
  expect(diameter).toMatchObject({ what: 'inside diameter', dimension: 'length', within: true });
  expect([diameter?.asFound, diameter?.asLeft].map((reading) => reading?.measurement.value.text)).toEqual(['9.043 in', '229.90 mm']);
  expect(others.map(({ what }) => what)).toEqual(['weight']);
  expect(seriesOf(of, 'drum', '2030-11-01')[0]).toMatchObject({ asLeft: null, within: false });
});

test('what does not convert is a series of its own, under whatever name it was measured', () => {
  const of = recordOf(
    evening('2030-10-01', {
      measured: [measured('drum', 'at the terminal', '6.1 V', { as: 'found' }), measured('drum', 'at the terminal', '8 A')],
    }),
    evening('2030-10-05', { measured: [measured('drum', 'At the terminal', '6200 mV', { as: 'left' })] }),
  );
  const texts = seriesOf(of, 'drum').map(({ readings }) => readings.map(({ measurement }) => measurement.value.text));
  expect(texts).toEqual([['6.1 V', '6200 mV'], ['8 A']]);
});

describe('film', () => {
  const of = recordOf(
    evening('2030-10-01', {
      film: [
        clip(
          'reel-07.mp4',
          [
            [1085, ['plate']],
            [760, ['drum']],
          ],
          'Nearside strip',
        ),
      ],
    }),
    evening('2030-10-05', { film: [clip('reel-07.mp4', [[20, ['drum', 'plate']]])] }),
  );

  test('a clip that two notes mark is one clip, its marks in order of time, each as a Media Fragment up to the next', () => {
    const [reel] = filmIndex(of).clips;
    expect(reel).toMatchObject({ title: 'Nearside strip' });
    expect(reel?.marks.map(({ fragment }) => fragment)).toEqual(['#t=20,760', '#t=760,1085', '#t=1085']);
  });

  test('a part has the list of places it was shown, by session', () => {
    expect(
      filmIndex(of)
        .byPart.get('drum')
        ?.map(({ session, seconds }) => [session, seconds]),
    ).toEqual([
      ['2030-10-01-work', 760],
      ['2030-10-05-work', 20],
    ]);
  });

  test('no fragment is one that the standard calls invalid, even where two marks stand at one time', () => {
    const marks = [0, 12, 12, 40].map((seconds) => [seconds, ['drum']] as const);
    const [reel] = filmIndex(recordOf(evening('2030-10-01', { film: [clip('reel.mp4', marks)] }))).clips;
    expect(reel?.marks.map(({ fragment }) => fragment)).toEqual(['#t=0,12', '#t=12,40', '#t=12,40', '#t=40']);
  });

  test('whatever is marked, by however many notes, a fragment is valid and plays from its mark to the next later one', () => {
    const marked = fc.array(fc.integer({ min: 0, max: 20_000 }), { maxLength: 8 });
    fc.assert(
      fc.property(marked, marked, (first, second) => {
        const film = (list: readonly number[]) => [
          clip(
            'reel.mp4',
            list.map((seconds) => [seconds, ['drum']] as const),
          ),
        ];
        const record = recordOf(evening('2030-10-01', { film: film(first) }), evening('2030-10-05', { film: film(second) }));
        const all = [...first, ...second];
        const [reel] = filmIndex(record).clips;
        for (const { fragment, seconds } of reel?.marks ?? []) {
          const later = all.filter((one) => one > seconds);
          expect(readFragment(fragment)).toEqual({ start: seconds, end: later.length === 0 ? null : Math.min(...later) });
        }
        expect(reel?.marks.map(({ seconds }) => seconds)).toEqual(all.sort((a, b) => a - b));
      }),
      { numRuns: 200 },
    );
  });
});
