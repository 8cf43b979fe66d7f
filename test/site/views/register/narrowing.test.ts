import { describe, expect, it } from 'vitest';
import { registerAt } from '../../../../src/journal/registers/register.ts';
import type { RecordSheet, Sheet } from '../../../../src/site/views/page/sheet.ts';
import { facetsOf, narrowingOf } from '../../../../src/site/views/register/narrowing.ts';
import { decide, did, evening, part, soundRecord } from '../../../builders/journal.ts';

const OF = soundRecord({
  parts: [
    part('drum'),
    part('shoes', { count: 4 }),
    part('pipe'),
    part('pipe-new', { for: 'pipe', origin: 'new' }),
    part('panel', { subsystem: 'frame' }),
    part('strap', { subsystem: 'frame', origin: null }),
  ],
  evenings: [
    evening('2030-10-01', { parts: [did('drum', 'removed')] }),
    evening('2030-10-05', {
      parts: [did('pipe', 'removed'), did('pipe-new', 'fitted')],
      decisions: [decide('pipe', 'replace', { with: 'pipe-new' })],
    }),
    evening('2030-10-09', { decisions: [decide('panel', 'keep')] }),
  ],
});
const ROWS = registerAt(OF, null);
const SHEET = {
  record: OF,
  subsystemName: (id: string) => id.toUpperCase(),
  ask: (({ answer }, ...words) => answer(SHEET, ...words)) as Sheet['ask'],
} as unknown as RecordSheet;
const facets = (id: string) => {
  const row = ROWS.find(({ position }) => position === id);
  if (!row) throw new Error(`no row of ${id}`);
  return facetsOf(row);
};

describe('what the rows of the register are told by', () => {
  it('is what became of the position, and the origin of what stands there', () => {
    expect(facets('panel')).toEqual({ outcome: 'kept as found', origin: 'original', settled: '' });
    expect(facets('pipe')).toMatchObject({ outcome: 'replaced', origin: 'new' });
    expect(facets('strap')).toMatchObject({ origin: 'origin not known' });
    expect(facets('drum')).toMatchObject({ origin: 'nothing' });
  });

  it('and whether anybody doubts it: untouched and kept as found only, with all of it there and of a known origin', () => {
    expect(['panel', 'shoes', 'strap', 'pipe', 'drum'].map((id) => facets(id).settled)).toEqual(['', '', null, null, null]);
  });
});

it('every choice says how many rows it leaves; each row is in one outcome and one subsystem', () => {
  const { outcomes, origins, subsystems, settled } = narrowingOf(SHEET, ROWS);
  const sum = (list: readonly { readonly count: number }[]) => list.reduce((all, { count }) => all + count, 0);
  expect([sum(outcomes), sum(subsystems)]).toEqual([ROWS.length, ROWS.length]);
  expect(subsystems.map(({ words, count }) => `${words} ${count}`)).toContain('FRAME 2');
  expect(origins.map(({ words, count }) => `${words} ${count}`)).toEqual(['original 2', 'new 1', 'origin not known 1', 'nothing 1']);
  expect(settled).toBe(2);
});
