import { describe, expect, it } from 'vitest';
import { keptIn, once } from '../../src/journal/values/once.ts';

describe('what is worked out once', () => {
  it('is the same for the same object, and made anew for another', () => {
    const list = once((parts: readonly string[]) => [...parts]);
    const [drums, shoes] = [['drum'], ['shoe']];
    expect(list(drums)).toBe(list(drums));
    expect(list(drums)).not.toBe(list(shoes));
    expect(list(shoes)).toEqual(['shoe']);
  });

  it('is kept by the part of what is asked with that it is made from', () => {
    interface Record {
      readonly sessions: readonly string[];
      readonly day: string;
    }
    const count = once(
      ({ sessions }: Record) => ({ sessions: sessions.length }),
      ({ sessions }) => sessions,
    );
    const sessions = ['2031-03-12-brakes'];
    expect(count({ sessions, day: '2031-03-12' })).toBe(count({ sessions, day: '2031-04-01' }));
    expect(count({ sessions: [], day: '2031-03-12' })).toEqual({ sessions: 0 });
  });

  it('may be nothing, and is not asked again', () => {
    let asked = 0;
    const first = once((list: readonly string[]) => {
      asked += 1;
      return list[0] ?? null;
    });
    const none: readonly string[] = [];
    expect([first(none), first(none), asked]).toEqual([null, null, 1]);
  });
});

it('a map keeps what was made under a key', () => {
  const kept = new Map<string, string[]>();
  const bag = keptIn(kept, 'bag 14', () => []);
  expect(keptIn(kept, 'bag 14', () => ['nuts'])).toBe(bag);
  expect(kept.get('bag 14')).toBe(bag);
});
