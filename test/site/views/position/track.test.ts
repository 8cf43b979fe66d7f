import Fraction from 'fraction.js';
import { describe, expect, it } from 'vitest';
import type { Origin, Part, Position } from '../../../../src/journal/model.ts';
import type { Stay } from '../../../../src/journal/record.ts';
import { trackOf } from '../../../../src/site/views/position/track.ts';

const RANGE = ['2030-01-01', '2030-04-11'] as const; // a hundred days
const part = (id: string, origin: Origin): Part => ({ id, origin }) as Part;
const PARTS = new Map([part('drum', 'original'), part('spare', 'donor')].map((one) => [one.id, one]));
const position = (count: number): Position => ({
  id: 'drum',
  name: 'Drum',
  subsystem: 'brakes',
  count,
  weight: new Fraction(1),
  components: [],
  inside: null,
  parts: ['drum', 'spare'],
});
const stay = (id: string, count: number, from: string, to: string | null): Stay => ({
  part: id,
  count,
  which: null,
  where: { at: 'fitted', position: 'drum' },
  from: { date: from, session: null },
  to: to === null ? null : { date: to, session: null },
});
const draw = (count: number, stays: Stay[]) => trackOf(position(count), PARTS, stays, RANGE);

describe('the track of a position', () => {
  it('shows who stood there from when to when, and when nothing did', () => {
    const track = draw(1, [stay('drum', 1, '2030-01-01', '2030-01-11'), stay('spare', 1, '2030-02-20', null)]);
    expect(track.stretches.map(({ part: id, x, width, to }) => [id, x, width, to])).toEqual([
      ['drum', 0, 0.1, '2030-01-11'],
      ['spare', 0.5, 0.5, null],
    ]);
    expect(track.gaps.map(({ count, x, width, height }) => [count, x, width, height])).toEqual([[1, 0.1, 0.4, 1]]);
  });

  it('stacks a lot by how many stand there, the original lowest, an empty place over them', () => {
    const track = draw(5, [
      stay('drum', 3, '2030-01-01', null),
      stay('drum', 2, '2030-01-01', '2030-02-20'),
      stay('spare', 1, '2030-02-20', null),
    ]);
    const shown = track.stretches.map(({ part: id, count, y, height }) => [id, count, y.toFixed(2), height.toFixed(2)]);
    expect(shown).toEqual([
      ['drum', 5, '0.00', '1.00'],
      ['drum', 3, '0.40', '0.60'],
      ['spare', 1, '0.20', '0.20'],
    ]);
    expect(track.gaps).toMatchObject([{ count: 1, from: '2030-02-20', to: null, height: 0.2 }]);
  });

  it('shows how many places of a lot were empty, and when', () => {
    const { gaps } = draw(5, [
      stay('drum', 3, '2030-01-01', null),
      stay('drum', 1, '2030-01-01', '2030-01-31'),
      stay('drum', 1, '2030-01-01', '2030-01-11'),
      stay('spare', 1, '2030-02-20', null),
    ]);
    expect(gaps.map(({ count, from, to, height }) => [count, from, to, height.toFixed(1)])).toEqual([
      [1, '2030-01-11', '2030-01-31', '0.2'],
      [2, '2030-01-31', '2030-02-20', '0.4'],
      [1, '2030-02-20', null, '0.2'],
    ]);
  });

  it('joins an empty spell over a moment at which it stayed as it was', () => {
    const { gaps } = draw(2, [stay('drum', 1, '2030-01-01', '2030-02-01'), stay('spare', 1, '2030-02-01', null)]);
    expect(gaps.map(({ count, from, to }) => [count, from, to])).toEqual([[1, '2030-01-01', null]]);
  });

  it('joins a stretch over a moment at which something else changed', () => {
    const track = draw(2, [stay('drum', 1, '2030-01-01', null), stay('spare', 1, '2030-01-31', '2030-02-20')]);
    expect(track.stretches.filter(({ part: id }) => id === 'drum')).toHaveLength(1);
  });

  it('labels no more months than fit, and every one inside the line', () => {
    const long = trackOf(position(1), PARTS, [], ['1990-05-05', '2030-05-05']);
    for (const { ticks } of [draw(1, []), long]) {
      expect(ticks.length).toBeGreaterThan(2);
      expect(ticks.length).toBeLessThanOrEqual(10);
      expect(ticks.every(({ x }) => x >= 0 && x <= 1)).toBe(true);
    }
  });
});
