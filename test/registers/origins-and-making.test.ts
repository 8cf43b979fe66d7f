import { describe, expect, test } from 'vitest';
import type { Attribution } from '../../src/journal/model.ts';
import { errandOf } from '../../src/journal/registers/errands.ts';
import { notConfirmedAt, waysBackOf } from '../../src/journal/registers/goes-back.ts';
import { makingOf } from '../../src/journal/registers/making.ts';
import { waitingAt } from '../../src/journal/registers/open-items.ts';
import { originalityAt, originalitySeries } from '../../src/journal/registers/originality.ts';
import { opinionsOf, originAt } from '../../src/journal/registers/origins.ts';
import { registerRowAt } from '../../src/journal/registers/register.ts';
import { goesWithVehicleAt } from '../../src/journal/registers/stores.ts';
import { did, type Evening, evening, part, placeAt, soundRecord } from '../builders/journal.ts';
import { compileFiles, NOTE, note } from '../journal/base.ts';

const parts = [
  part('lamp', { evidence: 'It looks right.' }),
  part('sill', {}),
  part('sill-end', { for: 'sill', origin: 'made', found: 'considered' }),
];
const believed = (date: string, origin: Attribution['origin'], because: string): Attribution => ({
  part: 'lamp',
  origin,
  because,
  by: null,
  paper: null,
  session: `${date}-work`,
  date,
  place: placeAt('sessions/note.md'),
});
const recordOf = (...evenings: Evening[]) => soundRecord({ parts, evenings });
const off = evening('2030-10-01', { parts: [did('lamp', 'removed', { to: 'loft' })] });

describe('an opinion on an origin', () => {
  const stamped = evening('2030-11-01', { attributed: [believed('2030-11-01', 'earlier-replacement', 'Stamped 1958.')] });
  const again = evening('2030-12-01', { attributed: [believed('2030-12-01', 'original', 'The stamp is the works order.')] });
  const of = recordOf(stamped, again);

  test('stands from its day until the next, and all are kept with their reasons', () => {
    expect(['2030-10-31', '2030-11-01', '2030-12-01'].map((date) => originAt(of, 'lamp', date))).toEqual([
      'original',
      'earlier-replacement',
      'original',
    ]);
    expect(opinionsOf(of, 'lamp').map(({ because, date }) => [because, date])).toEqual([
      ['It looks right.', null],
      ['Stamped 1958.', '2030-11-01'],
      ['The stamp is the works order.', '2030-12-01'],
    ]);
  });

  test('is what the register and the share of originals go by', () => {
    expect(registerRowAt(of, 'lamp', '2030-11-15').fitted.map(({ origin }) => origin)).toEqual(['earlier-replacement']);
    expect(registerRowAt(of, 'lamp', '2030-11-15').originals).toEqual([]);
    const dates = ['2030-10-31', '2030-11-01', '2030-12-01'];
    expect(dates.map((date) => originalityAt(of, date).overall.fitted)).toEqual([2, 1, 2]);
    expect(originalitySeries(of, dates).map(({ overall }) => overall.fitted)).toEqual([2, 1, 2]);
  });

  test('decides whether a part off the vehicle goes with it', () => {
    const loose = recordOf(off, stamped);
    expect(['2030-10-15', '2030-11-15'].map((date) => goesWithVehicleAt(loose, date).length)).toEqual([1, 0]);
  });
});

describe('how a part goes back', () => {
  const taken = evening('2030-10-01', {
    bags: [{ bag: 4, off: 'lamp', goesBack: 'lens outward' }],
    parts: [did('lamp', 'removed', { goesBack: 'long bolt on top', stack: ['bolt', 'washer', 'bracket'] })],
  });
  const back = (asWas: boolean | null, more = {}) =>
    evening('2030-11-01', { emptied: [4], parts: [did('lamp', 'fitted', { from: 'bag 4', asWas, ...more })] });

  test('is told on the part after its bag was emptied', () => {
    expect(waysBackOf(recordOf(taken, back(true)), 'lamp', null).map(({ bag, goesBack, stack }) => [bag, goesBack, stack.length])).toEqual([
      [null, 'long bolt on top', 3],
      [4, 'lens outward', 0],
    ]);
  });

  test('is to be confirmed where it is refitted; what nobody said is listed', () => {
    expect(notConfirmedAt(recordOf(taken, back(null)), null).map(({ part: id, ways }) => [id, ways.length])).toEqual([['lamp', 2]]);
    expect(notConfirmedAt(recordOf(taken, back(true)), null)).toEqual([]);
    expect(notConfirmedAt(recordOf(taken, back(false, { note: 'Bolt shortened.' })), null)).toEqual([]);
    expect(notConfirmedAt(recordOf(taken), null)).toEqual([]);
  });

  test('is told once where a part and its bag say it alike, and of no other part in that bag', () => {
    const bagged = (bagSays: string) =>
      soundRecord({
        parts: [part('lug', { finish: 'green' }), part('bolts', { count: 2 })],
        evenings: [
          evening('2030-10-01', {
            bags: [{ bag: 4, holds: ['a lug', '2 bolts'], goesBack: bagSays }],
            parts: [
              did('lug', 'removed', { to: 'bag 4', goesBack: 'worn lug uppermost', stack: ['lug', 'washer'] }),
              did('bolts', 'removed', { to: 'bag 4' }),
            ],
          }),
        ],
      });
    const ways = (record: ReturnType<typeof bagged>, id: string) =>
      waysBackOf(record, id, null).map(({ bag, goesBack, stack }) => [bag, goesBack, stack.length]);
    const alike = bagged('Worn lug uppermost.');
    expect([ways(alike, 'lug'), ways(alike, 'bolts')]).toEqual([[[4, 'worn lug uppermost', 2]], []]);
    const other = bagged('heads inboard');
    expect(ways(other, 'lug')).toEqual([
      [null, 'worn lug uppermost', 2],
      [4, 'heads inboard', 0],
    ]);
    expect(ways(other, 'bolts')).toEqual([[4, 'heads inboard', 0]]);
  });

  test('otherwise than it was needs a word on how', () => {
    const { diagnostics } = compileFiles({
      more: { [NOTE]: note('parts: [{ part: drum, did: removed }, { part: drum, did: fitted, as-was: no }]') },
    });
    expect(diagnostics.map(({ code, message }) => [code, /note/.test(message)])).toEqual([['A302', true]]);
  });
});

test('what was made from a part and what a part was made into are one fact, whichever note says it', () => {
  const gone = evening('2030-10-01', { parts: [did('sill', ['removed', 'gone'], { how: 'made-into', into: ['sill-end'] })] });
  const made = evening('2030-10-02', { parts: [did('sill-end', 'made', { madeFrom: ['sill'], pattern: 'sill' })] });
  for (const record of [recordOf(gone, evening('2030-10-02', { parts: [did('sill-end', 'made')] })), recordOf(made)]) {
    expect([makingOf(record, 'sill').into, makingOf(record, 'sill-end').from]).toEqual([['sill-end'], ['sill']]);
  }
  expect([makingOf(recordOf(made), 'sill').patternOf, makingOf(recordOf(made), 'sill-end').pattern]).toEqual([['sill-end'], 'sill']);
});

test('a part made into nothing said is told so', () => {
  const { diagnostics } = compileFiles({ more: { [NOTE]: note('parts: [{ part: drum, did: [removed, gone], how: made-into }]') } });
  expect(diagnostics.map(({ code, hint }) => [code, hint])).toEqual([['A510', 'Add `into:` and what it was made into.']]);
});

test('a part out with a firm says what for, by when and for how much, until it is back', () => {
  const fields = { to: 'a plater', work: 'Nickel', due: '2030-11-01', quoted: 18000 };
  const sent = evening('2030-10-01', { parts: [did('lamp', ['removed', 'sent-out'], fields)] });
  const back = evening('2030-12-01', { parts: [did('lamp', 'returned')] });
  const of = recordOf(sent, back);
  expect(errandOf(of, 'lamp', '2030-10-15')).toMatchObject({
    firm: 'a plater',
    work: 'Nickel',
    overdue: false,
    loan: false,
    quoted: 18000,
  });
  expect(errandOf(of, 'lamp', '2030-11-15')?.overdue).toBe(true);
  expect(errandOf(of, 'lamp', null)).toBeNull();
  const lent = recordOf(evening('2030-10-01', { parts: [did('lamp', ['removed', 'sent-out'], { to: 'the club', how: 'loan' })] }));
  expect(errandOf(lent, 'lamp', null)).toMatchObject({ firm: 'the club', loan: true });
});

test('what others promised is listed by the day it was promised for', () => {
  const opens = [
    { id: 'late', kind: 'waiting', from: 'a plater', due: '2031-02-01' },
    { id: 'some-day', kind: 'waiting', from: 'a friend' },
    { id: 'soon', kind: 'waiting', due: '2031-01-01' },
    { id: 'own', kind: 'task' },
  ] as const;
  const rows = waitingAt(recordOf(evening('2030-10-01', { opens })), null);
  expect(rows.map(({ id, from, promised }) => [id, from, promised])).toEqual([
    ['soon', null, '2031-01-01'],
    ['late', 'a plater', '2031-02-01'],
    ['some-day', 'a friend', null],
  ]);
});

test('one entry is taken from one place', () => {
  const { diagnostics } = compileFiles({
    more: { [NOTE]: note('parts: [{ part: drum-donor, did: stored, from: [shelf B2, shelf A1], to: shelf A1 }]') },
  });
  expect(diagnostics.map(({ code }) => code)).toEqual(['A303']);
});
