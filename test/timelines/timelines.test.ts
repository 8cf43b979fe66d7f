import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Verdict } from '../../src/journal/model.ts';
import { partTimeline, positionTimeline } from '../../src/journal/timelines/timelines.ts';
import { decide, did, type Evening, evening, part, record, soundRecord } from '../builders/journal.ts';
import { measured, picture } from '../builders/observed.ts';
import { journals } from '../builders/streams.ts';

const parts = [
  part('drum'),
  part('drum-spare', { for: 'drum', store: 'loft' }),
  part('drum-new', { for: 'drum', origin: 'reproduction', acquired: '2030-10-05' }),
  part('studs', { count: 5 }),
  part('studs-new', { for: 'studs', origin: 'new', count: 5 }),
];
const life = (id: string, ...evenings: Evening[]) => positionTimeline(soundRecord({ parts, evenings }), id);
const off = evening('2030-10-10', { parts: [did('drum', ['removed', 'sent-out'], { to: 'the brake works' })] });
const standIn = evening('2030-11-01', { parts: [did('drum-spare', 'fitted')] });
const home = evening('2031-02-01', { parts: [did('drum-spare', 'removed', { to: 'loft' }), did('drum', ['returned', 'fitted'])] });

describe('the life of a position', () => {
  test('shows each occupant as one track, original and stand-in told apart, and the empty spell between', () => {
    const { occupancies, gaps } = life('drum', off, standIn, home);
    expect(occupancies.map(({ part: id, asFound, from, to }) => [id, asFound, from.date, to?.date ?? null])).toEqual([
      ['drum', true, '2030-09-14', '2030-10-10'],
      ['drum-spare', false, '2030-11-01', '2031-02-01'],
      ['drum', true, '2031-02-01', null],
    ]);
    expect(gaps.map(({ count, from, to }) => [count, from.date, to?.date])).toEqual([[1, '2030-10-10', '2030-11-01']]);
  });

  test('a part that came off and went back in one evening never left', () => {
    const { occupancies, gaps } = life('drum', evening('2030-10-10', { parts: [did('drum', ['removed', 'cleaned', 'fitted'])] }));
    expect([occupancies.map(({ steps }) => steps.length), gaps.length]).toEqual([[1], 0]);
  });

  test('a lot that shrinks is one track with its numbers in turn', () => {
    const { occupancies, gaps } = life(
      'studs',
      evening('2030-10-10', { parts: [did('studs', 'removed', { count: 2 })] }),
      evening('2030-11-10', { parts: [did('studs-new', 'fitted', { count: 2 })] }),
    );
    expect(occupancies.map(({ part: id, steps }) => [id, steps.map(({ count }) => count)])).toEqual([
      ['studs', [5, 3]],
      ['studs-new', [2]],
    ]);
    expect(gaps.map(({ count, from, to }) => [count, from.date, to?.date])).toEqual([[2, '2030-10-10', '2030-11-10']]);
  });

  test('a position whose part is missing is empty from the day of arrival', () => {
    const plate = soundRecord({ parts: [part('plate', { found: 'missing' })] });
    expect(positionTimeline(plate, 'plate').gaps).toEqual([{ count: 1, from: { date: '2030-09-14', session: null }, to: null }]);
  });

  test('decisions say what they superseded and by what they were superseded, reason in full', () => {
    const { decisions } = life(
      'studs',
      evening('2030-10-01', { decisions: [decide('studs', 'keep', { because: 'sound' })] }),
      evening('2030-11-01', { decisions: [decide('studs', 'replace', { count: 2, with: 'studs-new', because: 'pulled' })] }),
      evening('2030-12-01', { decisions: [decide('studs', 'replace', { with: 'studs-new', because: 'all cracked' })] }),
    );
    const brief = (list: readonly { decision: { because: string | null }; count: number }[]) =>
      list.map(({ decision, count }) => `${count} ${decision.because}`);
    expect(decisions.map((one) => [one.decision.because, brief(one.superseded), brief(one.supersededBy), one.inForce])).toEqual([
      ['sound', [], ['2 pulled', '3 all cracked'], 0],
      ['pulled', ['2 sound'], ['2 all cracked'], 0],
      ['all cracked', ['2 pulled', '3 sound'], [], 5],
    ]);
  });

  test('of several decisions in force on a lot, the oldest gives way first', () => {
    const on = (date: string, because: string, count: number, verdict: Verdict) =>
      evening(date, { decisions: [decide('studs', verdict, { because, count })] });
    const { decisions } = life(
      'studs',
      on('2030-10-01', 'first', 2, 'keep'),
      on('2030-10-02', 'second', 2, 'conserve'),
      on('2030-10-03', 'third', 2, 'repair'),
      on('2030-10-04', 'fourth', 1, 'refinish'),
    );
    expect(decisions.map(({ decision, inForce }) => [decision.because, inForce])).toEqual([
      ['first', 0],
      ['second', 2],
      ['third', 2],
      ['fourth', 1],
    ]);
    expect(decisions.map(({ superseded }) => superseded.map(({ decision, count }) => `${count} ${decision.because}`))).toEqual([
      [],
      [],
      ['1 first'],
      ['1 first'],
    ]);
  });

  test('candidates that were considered and never used are named, with where they are', () => {
    const verdict = evening('2030-10-08', { decisions: [decide('drum', 'replace', { with: 'drum-new' })] });
    const { unused } = life('drum', verdict, off, standIn);
    expect(unused.map(({ part: id, considered, places }) => [id, considered.length, places[0]?.where.at])).toEqual([
      ['drum-new', 1, 'stores'],
    ]);
  });

  test('everything that happened to its parts stands in order, each thing once', () => {
    const note = evening('2030-10-12', {
      parts: [did('drum', 'inspected', { condition: 2 })],
      measured: [measured('drum', 'inside diameter', '9.043 in')],
      pictures: [picture('two.jpg', ['drum', 'drum-spare'])],
      opens: [{ id: 'ask', on: { part: 'drum', subsystem: 'brakes' } }],
    });
    const kinds = life('drum', note, off).events.map(({ date, kind }) => `${date} ${kind}`);
    expect(kinds).toEqual([
      '2030-10-05 arrived',
      '2030-10-10 deed',
      '2030-10-10 deed',
      '2030-10-12 deed',
      '2030-10-12 observation',
      '2030-10-12 measurement',
      '2030-10-12 picture',
      '2030-10-12 opened',
    ]);
  });

  test('hours and money laid to its parts are in it', () => {
    const of = soundRecord({ parts });
    const entry = { date: '2030-10-01', session: 's', part: 'drum-spare', position: 'drum', kind: 'labour' };
    const ledger = { entries: [entry, { ...entry, part: 'studs', position: 'studs' }], bills: [], stock: new Map() } as never;
    const events = positionTimeline({ ...of, ledger }, 'drum').events;
    expect(events.filter(({ kind }) => kind === 'entry')).toEqual([{ date: '2030-10-01', session: 's', kind: 'entry', entry }]);
  });

  test('whatever is written down, occupancies and gaps together fill the position at every change', () => {
    fc.assert(
      fc.property(journals, (of) => {
        const one = record(of);
        for (const { id, count } of of.positions.values()) {
          const { occupancies, gaps } = positionTimeline(one, id);
          const steps = [...occupancies.flatMap((track) => track.steps), ...gaps];
          for (const { from } of steps) {
            const key = (moment: { date: string; session: string | null }) => `${moment.date} ${moment.session ?? ''}`;
            const there = steps.filter((step) => key(step.from) <= key(from) && (step.to === null || key(step.to) > key(from)));
            expect(there.reduce((sum, step) => sum + step.count, 0)).toBe(count);
          }
        }
      }),
      { numRuns: 200 },
    );
  });
});

describe('the life of a part', () => {
  test('follows it through every place, and says who had it', () => {
    const { stays, custody } = partTimeline(soundRecord({ parts, evenings: [off, standIn, home] }), 'drum');
    expect(stays.map(({ where }) => where.at)).toEqual(['fitted', 'stores', 'out', 'stores', 'fitted']);
    expect(custody.map(({ custody: who, from, to }) => [who.by, from.date, to?.date ?? null])).toEqual([
      ['workshop', '2030-09-14', '2030-10-10'],
      ['firm', '2030-10-10', '2031-02-01'],
      ['workshop', '2031-02-01', null],
    ]);
  });

  test('what was not yet here has no place before it came', () => {
    expect(partTimeline(soundRecord({ parts }), 'drum-new').stays.map(({ from }) => from.date)).toEqual(['2030-10-05']);
  });
});
