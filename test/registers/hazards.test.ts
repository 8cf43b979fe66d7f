import Fraction from 'fraction.js';
import { describe, expect, test } from 'vitest';
import type { Bill, BillLine, Consumable, PartEntry, Sale, Session } from '../../src/journal/model.ts';
import {
  hazardsOfConsumable,
  hazardsOfLying,
  hazardsOfPart,
  hazardsOfParts,
  hazardsOfSession,
} from '../../src/journal/registers/hazards.ts';
import { unsafePlaces } from '../../src/journal/registers/made-safe.ts';
import { decide, did, type Evening, evening, journal, part, placeAt, record } from '../builders/journal.ts';
import { clip, measured, method, picture } from '../builders/observed.ts';

const place = placeAt('sessions/note.md');
const parts = [
  part('shoes', { hazards: ['asbestos'], count: 2 }),
  part('shoes-old', { for: 'shoes', hazards: ['asbestos'], store: 'loft' }),
  part('wing', { hazards: ['lead-paint'] }),
  part('drum'),
];
const consumable = (id: string, statements: readonly string[], hazards: Consumable['hazards'] = []): Consumable => ({
  id,
  name: id,
  unit: 'L',
  statements,
  hazards,
  packs: new Map(),
  opening: null,
  place,
});
const CONSUMABLES = [consumable('thinner', ['H225', 'H336']), consumable('linseed', [], ['oily-rags']), consumable('water', ['H290'])];

function recordOf(...evenings: Evening[]) {
  const of = journal({ parts, evenings });
  return record({ ...of, consumables: new Map(CONSUMABLES.map((one) => [one.id, one])) });
}
const told = (fields: Parameters<typeof evening>[1], ...before: Evening[]) => {
  const of = recordOf(...before, evening('2030-11-01', fields, 'told'));
  return hazardsOfSession(of, of.journal.sessions.at(-1) as Session);
};
const on = { part: 'shoes', subsystem: 'brakes' };
const link = (scheme: 'part' | 'bag' | 'item' | 'consumable', id: string) => ({ links: [{ scheme, id, paragraph: 1, place }] });
const bagged = evening('2030-10-01', { bags: [4], parts: [did('shoes', 'removed', { to: 'bag 4' })] }, 'bagged');
const opened = evening('2030-10-01', { opens: [{ id: 'reline', on }] }, 'opened');
const quantity = measured('drum', 'depth', '2 mm').value;
/** A bill, as far as cautions read it. */
const bill = (line: Partial<BillLine>) => ({
  bills: [{ lines: [{ consumable: null, charges: [], ...line }] }] as unknown as readonly Bill[],
});
const sold = { sold: [{ what: 'shoes', charge: on }] as unknown as readonly Sale[] };

describe('a caution comes up for a note that touches the part in any field', () => {
  test.each<[string, Parameters<typeof evening>[1], Evening[]]>([
    ['an entry of the part', { parts: [did('shoes', 'inspected')] }, []],
    ['a measurement', { measured: [measured('shoes', 'lining', '3 mm')] }, []],
    ['a decision on it', { decisions: [decide('shoes', 'keep')] }, []],
    ['a decision for it', { decisions: [decide('drum', 'replace', { with: 'shoes-old' })] }, []],
    ['a method tried on it', { methods: [method('wiped', ['shoes'])] }, []],
    [
      'hours charged to it',
      { hours: [{ by: 'rh', on, minutes: 60, days: [], span: null, text: '1h', unpaid: null, perHour: null, place }] },
      [],
    ],
    ['a bill laid to it', bill({ charges: [{ charge: on, weight: new Fraction(1) }] }), []],
    ['stuff used up on it', { used: [{ consumable: 'water', amount: quantity, on, notCharged: null, place }] }, []],
    ['what was sold', sold, []],
    ['an item opened on it', { opens: [{ id: 'reline', on }] }, []],
    ['an item on it closed', { closes: ['reline'] }, [opened]],
    ['a link to an item on it', link('item', 'reline'), [opened]],
    ['a picture of it', { pictures: [picture('a.jpg', ['shoes'])] }, []],
    ['film of it', { film: [clip('a.mp4', [[1, ['shoes']]])] }, []],
    ['a paper about it', { papers: [{ file: 'a.pdf', kind: 'letter', what: null, date: null, shows: ['shoes'], place }] }, []],
    ['a link to it', link('part', 'shoes'), []],
    ['a bag it came into', { bags: [{ bag: 5, off: 'shoes' }] }, []],
    ['a bag it is in, linked', link('bag', '4'), [bagged]],
    ['the bag it was in, emptied', { emptied: [4], parts: [] }, [bagged]],
    ['a caution of its own', { cautions: ['asbestos'] }, []],
  ])('%s', (_, fields, before) => {
    expect(told(fields, ...before)).toEqual(['asbestos']);
  });

  test('a note on something else brings none', () => {
    expect(told({ parts: [did('drum', 'inspected')], ...link('part', 'drum') }, bagged)).toEqual([]);
  });
});

describe('a caution comes up for what is used up, by its statements', () => {
  test.each<[string, Parameters<typeof evening>[1]]>([
    ['used', { used: [{ consumable: 'thinner', amount: quantity, on: { part: null, subsystem: 'brakes' }, notCharged: null, place }] }],
    ['counted', { counted: [{ consumable: 'thinner', amount: quantity, on: null, because: 'spilt', value: null, place }] }],
    ['bought', bill({ consumable: 'thinner' })],
    ['tried', { methods: [method('wiped', ['drum'], { with: ['thinner'] })] }],
    ['linked', link('consumable', 'thinner')],
  ])('%s', (_, fields) => {
    expect(told(fields)).toEqual(['solvents']);
  });

  test('what no statement tells, the catalogue says', () => {
    expect(told(link('consumable', 'linseed'))).toEqual(['oily-rags']);
  });

  test.each([
    [
      ['H222', 'H229'],
      ['pressure', 'solvents'],
    ],
    [['EUH204'], ['isocyanates']],
    [['EUH201'], ['lead-paint']],
    [['H252'], ['oily-rags']],
    [['H260'], ['light-metal']],
    [['H302+H336'], ['solvents']],
    [['H290', 'H412', 'not a code'], []],
  ])('%s tell %s', (statements, hazards) => {
    expect(hazardsOfConsumable(consumable('x', statements))).toEqual(hazards);
  });
});

describe('a hazard is shown where the thing is, while it is there', () => {
  const away = evening('2030-11-10', { parts: [did('shoes', ['removed', 'gone'], { how: 'scrapped', count: 1 })] }, 'one');
  const allAway = evening('2030-11-20', { parts: [did('shoes', ['removed', 'gone'], { how: 'scrapped' })] }, 'other');
  const shoesOn = (of: ReturnType<typeof recordOf>, date: string) => hazardsOfPart(of, 'shoes', date);

  test('no longer once all of it is gone', () => {
    const of = recordOf(away, allAway);
    expect([shoesOn(of, '2030-11-10'), shoesOn(of, '2030-11-20')]).toEqual([['asbestos'], []]);
  });

  test('the note that sends it away still touches it, later ones do not', () => {
    const later = evening('2030-12-01', link('part', 'shoes'), 'later');
    const of = recordOf(away, allAway, later);
    expect(of.journal.sessions.map((session) => hazardsOfSession(of, session))).toEqual([['asbestos'], ['asbestos'], []]);
  });

  test('no longer once as many as there are were made safe', () => {
    const safe = (date: string, count: number | null) =>
      evening(date, { parts: [did('shoes', 'cleaned', { how: 'made-safe', count })] }, date);
    const of = recordOf(safe('2030-11-01', 1), safe('2030-11-02', 1));
    expect([shoesOn(of, '2030-11-01'), shoesOn(of, '2030-11-02')]).toEqual([['asbestos'], []]);
    expect(shoesOn(recordOf(safe('2030-11-01', null)), '2030-11-01')).toEqual([]);
  });

  describe('what is said of some of a lot makes no others safe', () => {
    const linings = [part('linings', { count: 4, hazards: ['asbestos'] })];
    const numbered = [part('linings', { count: 4, hazards: ['asbestos'], numbered: 'I to IIII, front to back' })];
    const off = evening('2030-11-01', { bags: [4], parts: [did('linings', 'removed', { count: 3, to: 'bag 4' })] }, 'off');
    const safe = (date: string, fields: Parameters<typeof did>[2]) =>
      evening(date, { parts: [did('linings', 'cleaned', { how: 'made-safe', ...fields })] }, date);
    const onLast = (of: typeof linings, ...evenings: Evening[]) =>
      hazardsOfPart(record(journal({ parts: of, evenings })), 'linings', '2030-11-30');

    test('not as many times as there are, where fewer lay there', () => {
      const [three, one] = [safe('2030-11-02', { count: 3, from: 'bag 4' }), safe('2030-11-06', { count: 1, from: 'bag 4' })];
      expect(onLast(linings, off, three, one)).toEqual(['asbestos']);
    });

    test('nor where some were moved in between: the same ones may have been meant', () => {
      const back = evening('2030-11-03', { emptied: [4], parts: [did('linings', 'fitted', { count: 3, from: 'bag 4' })] }, 'back');
      const [three, one] = [safe('2030-11-02', { count: 3, from: 'bag 4' }), safe('2030-11-06', { count: 1 })];
      expect(onLast(linings, off, three, back, one)).toEqual(['asbestos']);
      expect(onLast(linings, off, three, back, one, safe('2030-11-07', { count: 4 }))).toEqual([]);
    });

    test('of those that can be told apart, until each was named', () => {
      const [some, again] = [safe('2030-11-02', { count: 3, which: [1, 2, 3] }), safe('2030-11-06', { count: 1, which: [1] })];
      expect(onLast(numbered, some, again)).toEqual(['asbestos']);
      expect(onLast(numbered, some, again, safe('2030-11-07', { count: 1, which: [4] }))).toEqual([]);
    });
  });

  test('a candidate that is only considered endangers nobody', () => {
    const only = record(
      journal({ parts: [...parts, part('lamp'), part('lamp-spare', { for: 'lamp', found: 'considered', hazards: ['luminous-dials'] })] }),
    );
    expect(hazardsOfPart(only, 'lamp-spare', '2030-12-01')).toEqual([]);
  });

  test('what is in a part goes with it: a panel carries the lead of its coats, wherever it is', () => {
    const all = [
      ...parts,
      part('panel'),
      part('coat', { inside: 'panel', hazards: ['lead-paint'] }),
      part('ticket', { inside: 'coat', hazards: ['dust'] }),
    ];
    const off = evening('2030-11-01', { parts: [did('panel', 'removed', { to: 'loft' })] }, 'off');
    const stripped = evening('2030-11-05', { parts: [did('coat', ['removed', 'gone'], { how: 'scrapped' })] }, 'strip');
    const later = evening('2030-11-09', { parts: [did('panel', 'inspected')] }, 'later');
    const of = record(journal({ parts: all, evenings: [off, stripped, later] }));
    expect(of.journal.sessions.map((session) => hazardsOfSession(of, session))).toEqual([
      ['lead-paint', 'dust'],
      ['lead-paint', 'dust'],
      [],
    ]);
    expect([hazardsOfParts(of, ['panel'], '2030-11-01'), hazardsOfParts(of, ['panel'], '2030-11-05')]).toEqual([
      ['lead-paint', 'dust'],
      [],
    ]);
  });

  test('several parts: each hazard once, in one order', () => {
    expect(hazardsOfParts(recordOf(), ['wing', 'shoes', 'shoes-old'], '2030-12-01')).toEqual(['asbestos', 'lead-paint']);
  });
});

describe('what lies at one place', () => {
  const four = [part('linings', { hazards: ['asbestos'], count: 4 })];
  const inBag3 = { part: 'linings', place: 'bag:3' };
  const hazardsThere = (...nights: (readonly PartEntry[])[]) => {
    const evenings = nights.map((entries, index) => evening(`2030-10-0${index + 1}`, { parts: entries }, `n${index}`));
    return hazardsOfLying(record(journal({ parts: four, evenings })), [inBag3], '2030-11-01');
  };
  const off = did('linings', 'removed', { count: 3, to: 'bag 3' });
  const safe = (count: number) => did('linings', 'cleaned', { count, from: 'bag 3', how: 'made-safe' });

  test('has no caution where all of it was made safe there, or as it came', () => {
    expect(hazardsThere([off])).toEqual(['asbestos']);
    expect(hazardsThere([off], [safe(3)])).toEqual([]);
    expect(hazardsThere([{ ...off, how: 'made-safe' }])).toEqual([]);
  });

  test('has it where some of it was not, or where others came', () => {
    expect(hazardsThere([off], [safe(2)])).toEqual(['asbestos']);
    expect(hazardsThere([off], [safe(3)], [did('linings', 'removed', { count: 1, to: 'bag 3' })])).toEqual(['asbestos']);
  });

  test('has it where some went since, and those may have been the safe ones', () => {
    const two = did('linings', 'stored', { count: 2, from: 'bag 3', to: 'loft' });
    expect(hazardsThere([off], [safe(2)], [two])).toEqual(['asbestos']);
    expect(hazardsThere([off], [safe(3)], [two])).toEqual([]);
    const [old, came] = [did('linings', 'removed', { count: 2, to: 'bag 3' }), did('linings', 'removed', { count: 2, to: 'bag 3' })];
    expect(hazardsThere([old], [{ ...came, how: 'made-safe' }], [two])).toEqual(['asbestos']);
  });

  test('a part has it no longer once it is safe wherever it lies', () => {
    const out = (firm: string) => did('linings', ['removed', 'sent-out'], { count: 2, to: firm });
    const back = (firm: string) => did('linings', 'returned', { count: 2, from: firm, to: 'loft', how: 'made-safe' });
    const evenings = [[out('a works'), out('another')], [back('a works')], [back('another')]].map((entries, index) =>
      evening(`2030-10-0${index + 1}`, { parts: entries }, `n${index}`),
    );
    const of = record(journal({ parts: four, evenings }));
    expect(['2030-10-02', '2030-10-03'].map((date) => hazardsOfPart(of, 'linings', date))).toEqual([['asbestos'], []]);
  });

  test('and of how many it may still be said is told place by place', () => {
    const two = did('linings', 'removed', { count: 2, to: 'bag 4' });
    const evenings = [[off], [safe(2)]].map((entries, index) => evening(`2030-10-0${index + 1}`, { parts: entries }, `n${index}`));
    const left = (of: Evening[], date: string) =>
      unsafePlaces(record(journal({ parts: four, evenings: of })), 'linings', date).map(({ where, count }) => [where.at, count]);
    const on = ['fitted', 1];
    expect(left(evenings, '2030-10-01')).toEqual([on, ['bag', 3]]);
    expect(left(evenings, '2030-10-02')).toEqual([on, ['bag', 1]]);
    const safely = evening('2030-10-01', { parts: [{ ...two, how: 'made-safe' }] });
    expect(left([safely], '2030-10-01')).toEqual([['fitted', 2]]);
  });
});
