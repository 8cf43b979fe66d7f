import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { inSessionOrder } from '../../src/journal/model/session-order.ts';
import { replay } from '../../src/journal/replay/replay.ts';
import { compareText } from '../../src/journal/values/text-order.ts';
import { recordOf } from '../arbitraries/compiled.ts';
import { did, evening, journal, part } from '../builders/journal.ts';

const DAY = '2030-10-01';
const named = (id: string) => ({ date: id.slice(0, 10), id });
const sorted = (...ids: string[]) =>
  ids
    .map(named)
    .sort(inSessionOrder)
    .map(({ id }) => id);

describe('notes of one day', () => {
  test('are replayed by their ids, the first before the second and the ninth before the tenth', () => {
    const ids = [`${DAY}-brakes`, `${DAY}-brakes-2`, `${DAY}-brakes-9`, `${DAY}-brakes-10`];
    expect(sorted(...ids.toReversed())).toEqual(ids);
  });

  test('a date comes before what follows it in the name', () => {
    expect(sorted(`${DAY}-a`, DAY, '2030-09-30-z')).toEqual(['2030-09-30-z', DAY, `${DAY}-a`]);
  });

  test('numbers of any length are compared as numbers, and ids that differ are never equal', () => {
    const long = '9'.repeat(30);
    expect(sorted(`${DAY}-1${long}`, `${DAY}-${long}`, `${DAY}-02`, `${DAY}-2`, `${DAY}-1`)).toEqual([
      `${DAY}-1`,
      `${DAY}-02`,
      `${DAY}-2`,
      `${DAY}-${long}`,
      `${DAY}-1${long}`,
    ]);
  });

  test('have one order, whatever they are called', () => {
    const id = fc.stringMatching(/^[a-c0-2-]{0,5}$/).map((tail) => named(`${DAY}${tail}`));
    fc.assert(
      fc.property(id, id, id, (a, b, c) => {
        expect(Math.sign(inSessionOrder(a, b))).toBe(-Math.sign(inSessionOrder(b, a)) || 0);
        expect(inSessionOrder(a, b) === 0).toBe(compareText(a.id, b.id) === 0);
        if (inSessionOrder(a, b) < 0 && inSessionOrder(b, c) < 0) expect(inSessionOrder(a, c)).toBeLessThan(0);
      }),
      { numRuns: 2000 },
    );
  });

  test('a part taken off in the first note of a day is refitted in the second', () => {
    const evenings = [
      evening(DAY, { parts: [did('drum', 'removed')] }, 'brakes'),
      evening(DAY, { parts: [did('drum', 'fitted')] }, 'brakes-2'),
    ];
    // As a folder of its own and as a file the two sort the other way by their paths.
    const of = journal({ parts: [part('drum')], evenings });
    const sessions = of.sessions.map((one) => ({ ...one, file: one.file.replace(/\.md$/, '/index.md') }));
    expect(replay({ ...of, sessions }).diagnostics).toEqual([]);
  });

  test('cost what is used in the order of the notes', () => {
    const note = (fields: string) => `---\ndate: ${DAY}\ntitle: Stock\n${fields}\n---\n`;
    const { ledger, journal: of } = recordOf({
      'journal.yaml': 'title: Van\narrived: 2030-09-14\ncurrency: GBP\nsubsystems: { brakes: { name: Brakes } }\n',
      'consumables.yaml': 'cleaner: { name: Cleaner, unit: L }\n',
      [`sessions/${DAY}-shop/index.md`]: note('bought: [{ consumable: cleaner, amount: 1 L, cost: 4.00 }]'),
      [`sessions/${DAY}-shop-2/index.md`]: note('used: [{ consumable: cleaner, amount: 1 L, on: brakes }]'),
      [`sessions/${DAY}-shop-10/index.md`]: note('bought: [{ consumable: cleaner, amount: 1 L, cost: 6.00 }]'),
    });
    expect(of.sessions.map(({ id }) => id)).toEqual([`${DAY}-shop`, `${DAY}-shop-2`, `${DAY}-shop-10`]);
    expect(ledger.stock.get('cleaner')?.movements.map(({ kind, value }) => [kind, value])).toEqual([
      ['bought', 400],
      ['used', -400],
      ['bought', 600],
    ]);
  });
});

describe('notes that seem to be the wrong way round', () => {
  test('are told of where something cannot be, never for warnings alone', () => {
    const evenings = [
      evening('2030-10-01', { bags: [{ bag: 2, off: 'drum' }], reached: [{ milestone: 'first-start' }] }),
      evening('2030-10-02', { parts: [did('drum', 'removed', { to: 'loft' })], reached: [{ milestone: 'stripped' }] }),
    ];
    const { diagnostics } = replay(journal({ parts: [part('drum')], evenings }));
    expect(diagnostics.map(({ code }) => code)).toEqual(['A618', 'A616']);
  });
});
