import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { compileJournal } from '../../src/journal/pipeline.ts';
import { type Roll, SLIPS, type Slip } from '../arbitraries/slips.ts';
import { type Workshop, workshopFiles, workshops } from '../arbitraries/workshop.ts';

const encoder = new TextEncoder();

function diagnosticsOf(of: Workshop) {
  const files = Object.entries(workshopFiles(of)).map(([path, text]) => ({ path, bytes: encoder.encode(text) }));
  return compileJournal({ files, assets: [], problems: [] }, { today: '2035-12-31' }).diagnostics;
}

const RUNS = 120;
const JOURNALS = fc.sample(workshops(30), { numRuns: RUNS, seed: 41 });

/** The same numbers in every run, other ones for each journal. */
function rollFrom(seed: number): Roll {
  let state = seed;
  return (n) => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return Math.floor((state / 2 ** 32) * n);
  };
}

test('what is generated is sound', () => {
  for (const of of JOURNALS) expect(diagnosticsOf(of).map(({ code, message }) => `${code} ${message}`)).toEqual([]);
});

function outcomes(slip: Slip) {
  return JOURNALS.flatMap((of, n) => {
    const slipped = slip(of, rollFrom(n * 7919 + 13));
    return slipped === null ? [] : [{ slipped, told: diagnosticsOf(slipped) }];
  });
}

describe('one slip, one message', () => {
  test.each(Object.entries(SLIPS))('%s', (_, slip) => {
    const all = outcomes(slip);
    const twice = all.filter(({ told }) => told.length > 1);
    expect(all.length).toBeGreaterThan(RUNS * 0.9);
    expect(twice.length).toBeLessThanOrEqual(RUNS / 20);
  });
});
