import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readCameraFacts } from '../../src/photos/metadata.ts';
import { clockThere, instantTaken, takenInSession, takenWords } from '../../src/photos/taken.ts';
import { darkRoom } from './dark-room.ts';
import { jpegTaken } from './sample-pictures.ts';

const LONDON = 'Europe/London';
const taken = (local: string, offset: string | null = null) => ({ local, offset });

describe('when a picture was taken', () => {
  it('belongs to its evening until four in the morning', () => {
    const inSession = (local: string, offset: string | null = null): boolean => takenInSession(taken(local, offset), '2031-03-12', LONDON);
    expect(inSession('2031-03-12T00:00:00')).toBe(true);
    expect(inSession('2031-03-12T23:59:59')).toBe(true);
    expect(inSession('2031-03-13T03:59:59')).toBe(true);
    expect(inSession('2031-03-13T04:00:00')).toBe(false);
    expect(inSession('2031-03-11T23:59:59')).toBe(false);
    // 00:30 in Berlin is 23:30 of the day before in London.
    expect(inSession('2031-03-12T00:30:00', '+01:00')).toBe(false);
    expect(inSession('2031-03-13T04:30:00', '+01:00')).toBe(true);
  });

  // In 2031 the clocks of London go forward on 30 March and back on 26 October, at 01:00 UTC (IANA time zone table).
  it('is read by the clocks of the journal, summer time and all', () => {
    expect(clockThere(taken('2031-07-01T12:00:00', '+00:00'), LONDON)).toBe('2031-07-01T13:00:00');
    expect(clockThere(taken('2031-01-01T12:00:00', '-05:30'), LONDON)).toBe('2031-01-01T17:30:00');
    expect(instantTaken(taken('2031-07-01T13:00:05'), LONDON)).toBe(Date.parse('2031-07-01T12:00:05Z') / 1000);
    expect(instantTaken(taken('2031-10-26T01:30:00'), LONDON)).toBe(Date.parse('2031-10-26T00:30:00Z') / 1000);
    expect(instantTaken(taken('2031-03-30T01:30:00'), LONDON)).toBe(Date.parse('2031-03-30T01:30:00Z') / 1000);
  });

  it('orders pictures by the moment, not by the number on the clock; those that do not say come last', async () => {
    using room = darkRoom();
    room.add('sessions/a/d.jpg', await jpegTaken('2031:07:01 21:00:00', '+02:00'));
    room.add('sessions/a/c.jpg', await jpegTaken('2031:07:01 20:30:00', null));
    room.add('sessions/a/b.jpg', await jpegTaken('2031:07:01 20:59:59', '+01:00'));
    room.add('sessions/a/a.jpg', await jpegTaken('0000:00:00 00:00:00', null));
    const plan = await room.plan([]);
    const paths = ['a', 'b', 'c', 'd'].map((name) => `sessions/a/${name}.jpg`);
    expect(plan.inOrderTaken(paths)).toEqual(['d', 'c', 'b', 'a'].map((name) => `sessions/a/${name}.jpg`));
    expect(plan.inOrderTaken(['sessions/a/a.jpg', 'sessions/a/b.jpg'])).toEqual(['sessions/a/b.jpg', 'sessions/a/a.jpg']);
  });

  it('is said by the clock of the journal, with the camera where that is kept, and not at all where nothing is', () => {
    const takenAt = taken('2031-07-01T12:34:56', '+00:00');
    expect(takenWords({ takenAt, camera: null }, LONDON)).toBe('13:34');
    expect(takenWords({ takenAt, camera: 'Obscura Nine' }, LONDON)).toBe('13:34, Obscura Nine');
    expect(takenWords({ takenAt: null, camera: 'Obscura Nine' }, LONDON)).toBe('Obscura Nine');
    expect(takenWords({ takenAt: null, camera: null }, LONDON)).toBe('');
  });

  it('is unknown when the clock was never set, or shows a day that is in no calendar', async () => {
    using room = darkRoom();
    const clocks = ['0000:00:00 00:00:00', '2031:02:30 10:00:00', '2031:13:01 10:00:00', '2031:01:01 24:00:00', 'yesterday'];
    for (const [index, clock] of clocks.entries()) room.add(`sessions/a/${index}.jpg`, await jpegTaken(clock, null));
    const { facts } = await room.inspect('header');
    expect([...facts.values()].map((one) => one.takenAt)).toEqual(clocks.map(() => null));
  });

  it('is not asked of bytes that make no sense, which never fail', () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 400 }), (bytes) => {
        const block = Uint8Array.from([...Buffer.from('II*\0\x08\0\0\0', 'latin1'), ...bytes]);
        expect(readCameraFacts(block).takenAt).toBeNull();
      }),
      { numRuns: 300 },
    );
  });
});
