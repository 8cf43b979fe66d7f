import { describe, expect, it } from 'vitest';
import type { LifeEvent } from '../../../../src/site/views/position/life-events.ts';
import { type Drawing, lifeLanes } from '../../../../src/site/views/position/life-lanes.ts';

const event = (day: number, more: Partial<LifeEvent> = {}): LifeEvent => ({
  lane: 'moved',
  date: `${day}`,
  sign: 'off',
  words: ['off'],
  href: `#day-${day}`,
  ...more,
});
const drawing: Drawing = { name: 'page', closest: 0.1, width: 500 };
/** A day is a hundredth of the line. */
const lanesOf = (...events: LifeEvent[]) =>
  lifeLanes(
    events,
    (date) => Number(date) / 100,
    (date) => `day ${date}`,
    drawing,
  );
const marksOf = (...events: LifeEvent[]) => lanesOf(...events)[0]?.marks ?? [];

describe('the marks along a life', () => {
  it('stand where they fell, each opening its own, in the lane of their kind', () => {
    const work = event(50, { lane: 'worked', sign: 'work', words: ['cleaned', 'tested'] });
    const lanes = lanesOf(work, event(20));
    expect(lanes.map(({ name, marks }) => [name, marks.map(({ x, href, label }) => [x, href, label])])).toEqual([
      ['Moved', [[0.2, '#day-20', 'Moved, day 20: off']]],
      ['Worked on', [[0.5, '#day-50', 'Worked on, day 50: cleaned, tested']]],
    ]);
  });

  it('are one mark where they would stand on each other, which says how many and opens the first', () => {
    const marks = marksOf(event(20), event(25, { words: ['bag 6'], sign: 'moved' }), event(29), event(31));
    expect(marks.map(({ x, href, beneath, label }) => [x, href, beneath, label])).toEqual([
      [0.2, '#day-20', '×3', 'Moved 3 times, day 20 to day 29: off, bag 6'],
      [0.31, '#day-31', 'off', 'Moved, day 31: off'],
    ]);
    expect(marks[0]?.sign).toBe('several');
  });

  it('never stand nearer to each other than the drawing allows', () => {
    const days = Array.from({ length: 100 }, (_, day) => event(day));
    const xs = marksOf(...days).map(({ x }) => x);
    expect(xs.length).toBeGreaterThan(5);
    expect(xs.slice(1).every((x, n) => x - (xs[n] ?? 0) >= drawing.closest)).toBe(true);
  });

  it('say beneath what happened only where the words have room to either side', () => {
    const words = ['inspected', 'cleaned'];
    expect(marksOf(event(50, { words })).map(({ beneath }) => beneath)).toEqual(['inspected, cleaned']);
    expect(marksOf(event(50, { words }), event(65)).map(({ beneath }) => beneath)).toEqual(['', 'off']);
  });

  it('turn their words inwards at either end of the line', () => {
    expect(marksOf(event(0), event(50), event(100)).map(({ anchor }) => anchor)).toEqual(['start', 'middle', 'end']);
  });

  it('number decisions as the history does, those that stand together by the first and the last of them', () => {
    const decided = (day: number, sign: 'decision' | 'superseded') => event(day, { lane: 'decided', sign, words: ['repair'] });
    const marks = marksOf(decided(10, 'superseded'), decided(40, 'superseded'), decided(41, 'decision'));
    expect(marks.map(({ beneath, sign, label }) => [beneath, sign, label])).toEqual([
      ['1', 'superseded', 'Decision 1, day 10: repair'],
      ['2–3', 'decision', 'Decisions 2–3, day 40 to day 41: repair'],
    ]);
  });
});
