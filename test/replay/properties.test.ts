import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Journal } from '../../src/journal/model.ts';
import { ACTIONS } from '../../src/journal/model.ts';
import type { Stay } from '../../src/journal/record.ts';
import { momentOrder, sessionRanks } from '../../src/journal/replay/order.ts';
import { replay } from '../../src/journal/replay/replay.ts';
import { did, evening, journal } from '../builders/journal.ts';
import { asText } from '../builders/observed.ts';
import { evenings, journals, PARTS } from '../builders/streams.ts';

const RUNS = { numRuns: 300 };
const sum = (stays: readonly Stay[]): number => stays.reduce((total, { count }) => total + count, 0);

/** The stays that hold just after a moment at which something changed. */
function standing(of: Journal, stays: readonly Stay[], at: Stay['from']): readonly Stay[] {
  const order = momentOrder(sessionRanks(of.sessions));
  return stays.filter(({ from, to }) => order(from, at) <= 0 && (to === null || order(to, at) > 0));
}

describe('whatever is written down', () => {
  test('the counts over all whereabouts of a part add up to its count at every moment', () => {
    fc.assert(
      fc.property(journals, (of) => {
        const { stays } = replay(of).history;
        for (const part of of.parts.values()) {
          const own = stays.get(part.id) ?? [];
          for (const { from } of own) expect(sum(standing(of, own, from))).toBe(part.count);
        }
      }),
      RUNS,
    );
  });

  test('no position ever holds more than its count', () => {
    fc.assert(
      fc.property(journals, (of) => {
        const { occupants } = replay(of).history;
        for (const { id, count } of of.positions.values()) {
          const own = occupants.get(id) ?? [];
          for (const { from } of own) expect(sum(standing(of, own, from))).toBeLessThanOrEqual(count);
        }
      }),
      RUNS,
    );
  });

  test('the order in which files are read makes no difference', () => {
    fc.assert(
      fc.property(
        journals.chain((of) => fc.tuple(fc.constant(of), fc.shuffledSubarray([...of.sessions], { minLength: of.sessions.length }))),
        ([of, sessions]) => {
          expect(asText(replay({ ...of, sessions }))).toBe(asText(replay(of)));
        },
      ),
      RUNS,
    );
  });

  test('an entry that cannot be is told once', () => {
    fc.assert(
      fc.property(journals, (of) => {
        const errors = replay(of).diagnostics.filter(({ severity }) => severity === 'error');
        const places = errors.filter(({ code }) => /^A(406|5|604|606)/.test(code)).map(({ place }) => `${place.file}:${place.line}`);
        expect(places).toEqual([...new Set(places)]);
      }),
      RUNS,
    );
  });

  test('and believed: what it moves last is where it says, and the next note may go on from there', () => {
    const single = PARTS.filter(({ count }) => count === 1).map(({ id }) => id);
    fc.assert(
      fc.property(evenings, fc.constantFrom(...single), (list, id) => {
        const put = (name: string) => evening('2031-06-01', { parts: [did(id, 'stored', { to: 'loft' })] }, name);
        const before = replay(journal({ parts: PARTS, evenings: list })).diagnostics;
        const { diagnostics, history } = replay(journal({ parts: PARTS, evenings: [...list, put('once'), put('twice')] }));
        // Two notes the wrong way round are told in place of all that they explain, which more notes may end.
        const isExchange = [...before, ...diagnostics].some(({ code }) => code === 'A520');
        if (!isExchange) expect(diagnostics.length - before.length).toBeLessThanOrEqual(1);
        expect(history.stays.get(id)?.at(-1)?.where).toEqual({ at: 'stores', store: 'loft' });
      }),
      RUNS,
    );
  });

  test('every entry of which nothing is told leaves one deed or more for each of its words', () => {
    fc.assert(
      fc.property(journals, (of) => {
        const { history, diagnostics } = replay(of);
        const told = new Set(diagnostics.map(({ place }) => `${place.file}:${place.line}`));
        // Of a lot nothing more is told after the first.
        const all = of.sessions.flatMap(({ parts }) => parts).filter(({ place }) => told.has(`${place.file}:${place.line}`));
        const tipped = diagnostics.flatMap(({ code, message }) => (code === 'A605' ? (/of `([^`]+)`/.exec(message)?.[1] ?? []) : []));
        const inDoubt = new Set([...all.map(({ part }) => part), ...tipped].filter((id) => (of.parts.get(id)?.count ?? 1) > 1));
        for (const session of of.sessions) {
          for (const entry of session.parts) {
            if (told.has(`${entry.place.file}:${entry.place.line}`) || inDoubt.has(entry.part)) continue;
            const deeds = history.deeds.filter((deed) => deed.entry === entry);
            expect(new Set(deeds.map((deed) => deed.did))).toEqual(new Set(entry.did));
          }
        }
      }),
      RUNS,
    );
  });

  test('random streams reach every action and most refusals, so that the properties mean something', () => {
    const seen = new Set<string>();
    for (const of of fc.sample(journals, { numRuns: 1500, seed: 7 })) {
      const { history, diagnostics } = replay(of);
      for (const deed of history.deeds) seen.add(deed.did);
      for (const { code } of diagnostics) seen.add(code);
    }
    const refusals = ['A501', 'A502', 'A503', 'A504', 'A505', 'A506', 'A507', 'A508', 'A509', 'A511', 'A601', 'A603', 'A604', 'A605'];
    expect([...ACTIONS, ...refusals].filter((one) => !seen.has(one))).toEqual([]);
  });
});
