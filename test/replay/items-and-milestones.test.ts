import { describe, expect, test } from 'vitest';
import { replay } from '../../src/journal/replay/replay.ts';
import { codes, type Evening, evening, journal, part } from '../builders/journal.ts';

const parts = [part('drum')];
const faults = (...evenings: Evening[]): string[] => codes({ parts, evenings });
const items = (...evenings: Evening[]) => replay(journal({ parts, evenings })).history.items;

const strip = evening('2030-10-20', { reached: [{ milestone: 'stripped' }] });
const capped = evening('2030-10-01', { opens: [{ id: 'pipe-capped', kind: 'temporary', before: 'first-start' }] });
const start = (more: object = {}) => evening('2030-12-01', { reached: [{ milestone: 'first-start', ...more }] });

describe('an open item', () => {
  test('is opened, put off and closed, and each is kept', () => {
    const history = items(
      evening('2030-10-01', { opens: [{ id: 'bleed', before: 'stripped' }] }),
      evening('2030-10-05', { defers: [{ id: 'bleed', to: 'road-test' }] }),
      evening('2030-10-09', { closes: ['bleed'] }),
    ).get('bleed');
    expect(history).toMatchObject({ deferred: [{ from: 'stripped', to: 'road-test' }], closed: { date: '2030-10-09' } });
  });

  test('is opened once, closed once, and not before it is opened', () => {
    const open = evening('2030-10-02', { opens: [{ id: 'bleed' }] });
    expect(faults(open, evening('2030-10-03', { opens: [{ id: 'bleed' }] }))).toEqual(['A607']);
    expect(faults(evening('2030-10-01', { closes: ['bleed'] }), open)).toEqual(['A608']);
    expect(faults(open, evening('2030-10-03', { closes: ['bleed'] }), evening('2030-10-04', { closes: ['bleed'] }))).toEqual(['A609']);
    expect(faults(open, evening('2030-10-03', { closes: ['bled'] }))).toEqual(['A610']);
    expect(
      faults(open, evening('2030-10-03', { closes: ['bleed'] }), evening('2030-10-04', { defers: [{ id: 'bleed', to: 'stripped' }] })),
    ).toEqual(['A609']);
  });

  test('may be opened and closed on one evening', () => {
    expect(faults(evening('2030-10-02', { opens: [{ id: 'bleed' }], closes: ['bleed'] }))).toEqual([]);
  });

  test('that is a temporary measure says when it must be undone', () => {
    expect(faults(evening('2030-10-02', { opens: [{ id: 'prop', kind: 'temporary' }] }))).toEqual(['A615']);
  });
});

describe('a gate', () => {
  test('is held by what is due before it', () => {
    expect(faults(capped, strip, start())).toEqual(['A611']);
  });

  test('opens when the thing is closed or put off in the same note', () => {
    const closing = evening('2030-12-01', { closes: ['pipe-capped'], reached: [{ milestone: 'first-start' }] });
    const putOff = evening('2030-12-01', { defers: [{ id: 'pipe-capped', to: 'road-test' }], reached: [{ milestone: 'first-start' }] });
    expect([faults(capped, strip, closing), faults(capped, strip, putOff)]).toEqual([[], []]);
  });

  test('is passed by owning up, with a reason', () => {
    expect(faults(capped, strip, start({ withOpen: ['pipe-capped'], because: 'only idled' }))).toEqual([]);
    expect(faults(capped, strip, start({ withOpen: ['pipe-capped'] }))).toEqual(['A613']);
  });

  test('that is held is told once, and the milestone counts as reached', () => {
    const road = evening('2031-02-01', { reached: [{ milestone: 'road-test' }] });
    expect(faults(capped, strip, start(), road)).toEqual(['A611']);
    expect(replay(journal({ parts, evenings: [capped, strip, start()] })).history.reached.has('first-start')).toBe(true);
  });

  test('asks again for what was owned up to at an earlier milestone: that held for the earlier one alone', () => {
    const owned = start({ withOpen: ['pipe-capped'], because: 'only idled' });
    const road = (fields = {}) => evening('2031-02-01', { reached: [{ milestone: 'road-test', ...fields }] });
    expect(faults(capped, strip, owned, road())).toEqual(['A611']);
    expect(faults(capped, strip, owned, road({ withOpen: ['pipe-capped'], because: 'round the yard' }))).toEqual([]);
  });

  test('that is past holds nothing more: nothing can be opened before it or put off to it', () => {
    const late = evening('2031-01-01', { opens: [{ id: 'late', before: 'first-start' }] });
    const back = evening('2031-01-01', { defers: [{ id: 'pipe-capped', to: 'stripped' }], closes: ['pipe-capped'] });
    const road = evening('2031-02-01', { reached: [{ milestone: 'road-test' }] });
    expect([faults(strip, start(), late, road), faults(capped, strip, back)]).toEqual([['A617'], ['A617']]);
  });

  test('and what the note of the milestone itself opens before it holds it', () => {
    const opens = [{ id: 'late', before: 'first-start' }];
    expect(faults(strip, evening('2030-12-01', { opens, reached: [{ milestone: 'first-start' }] }))).toEqual(['A611']);
  });

  test('asks again for what was put off until it, even if an earlier one was passed with it open', () => {
    const owned = start({ withOpen: ['pipe-capped'], because: 'only idled' });
    const putOff = evening('2031-01-01', { defers: [{ id: 'pipe-capped', to: 'road-test' }] });
    const road = evening('2031-02-01', { reached: [{ milestone: 'road-test' }] });
    expect(faults(capped, strip, owned, putOff, road)).toEqual(['A611']);
  });

  test('warns of an admission of what does not hold it, and of a milestone overtaken', () => {
    expect(
      faults(capped, evening('2030-10-02', { closes: ['pipe-capped'] }), strip, start({ withOpen: ['pipe-capped'], because: 'x' })),
    ).toEqual(['A614']);
    expect(faults(start())).toEqual(['A616']);
  });

  test('is reached once', () => {
    expect(faults(strip, evening('2030-11-01', { reached: [{ milestone: 'stripped' }] }))).toEqual(['A612']);
  });
});
