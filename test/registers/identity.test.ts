import { describe, expect, test } from 'vitest';
import type { Component } from '../../src/journal/model.ts';
import { identityAt } from '../../src/journal/registers/identity.ts';
import { IDENTITY_TABLES } from '../../src/journal/registers/identity-tables/tables.ts';
import { UK_EIGHT_POINTS } from '../../src/journal/registers/identity-tables/uk-eight-points.ts';
import { did, type Evening, evening, part, soundRecord } from '../builders/journal.ts';

const carrying = (id: string, component: Component, fields = {}) => part(id, { component, ...fields });
const PARTS = [
  carrying('frame', 'frame'),
  carrying('frame-new', 'frame', { for: 'frame', origin: 'new-old-stock' }),
  carrying('frame-copy', 'frame', { for: 'frame', origin: 'reproduction' }),
  carrying('springs-front', 'suspension', { count: 2 }),
  carrying('springs-rear', 'suspension', { count: 2 }),
  carrying('spring-donor', 'suspension', { for: 'springs-rear', origin: 'donor' }),
  carrying('axles', 'axles', { count: 2 }),
  carrying('gearbox', 'transmission'),
  carrying('steering-box', 'steering'),
  carrying('engine', 'engine'),
];
const answer = (parts = PARTS, ...evenings: Evening[]) => identityAt(soundRecord({ parts, evenings }), UK_EIGHT_POINTS, null);
const pointsBy = (identity: ReturnType<typeof answer>) =>
  Object.fromEntries(identity.answers.map(({ line, points }) => [line.component, points]));
const swap = (old: string, by: string, count = 1) =>
  evening('2030-10-01', { parts: [did(old, 'removed', { count }), did(by, 'fitted', { count })] });

describe('the points table', () => {
  // Source: nidirect.gov.uk, as read: 5 for the frame, 2 each for suspension, axles, transmission and steering, 1 for the engine; 8 needed, 5 of them from the frame.
  test('has the published points', () => {
    const table = Object.fromEntries(UK_EIGHT_POINTS.lines.map(({ component, points }) => [component, points]));
    expect(table).toEqual({ frame: 5, suspension: 2, axles: 2, transmission: 2, steering: 2, engine: 1 });
    expect([UK_EIGHT_POINTS.needed, UK_EIGHT_POINTS.neededFrom]).toEqual([8, { component: 'frame', points: 5 }]);
  });

  test('says where it is from, how it stands, and who decides', () => {
    for (const table of IDENTITY_TABLES) {
      expect(table.source).toMatch(/\w/);
      expect(table.standing).toMatch(/read/);
      expect(table.caution).toMatch(/licensing authority alone/);
    }
  });
});

describe('the answer', () => {
  test('all original: fourteen points, and the sums are reached', () => {
    expect(answer()).toMatchObject({ points: 14, pointsFrom: 5, reached: true });
  });

  test('a new and unmodified frame from the maker still brings its five; a copy brings none, and then nothing is enough', () => {
    expect(pointsBy(answer(PARTS, swap('frame', 'frame-new')))).toMatchObject({ frame: 5 });
    expect(answer(PARTS, swap('frame', 'frame-copy'))).toMatchObject({ points: 9, pointsFrom: 0, reached: false });
  });

  test('one spring of four that is not original loses the suspension, and the ground says which', () => {
    const identity = answer(PARTS, swap('springs-rear', 'spring-donor'));
    const suspension = identity.answers.find(({ line }) => line.component === 'suspension');
    expect(suspension).toMatchObject({ answer: 'no', points: 0 });
    expect(suspension?.grounds.map(({ position, counts, words }) => [position, counts, words])).toEqual([
      ['springs-front', true, 'original'],
      ['springs-rear', false, 'donor'],
    ]);
  });

  test('what is off the vehicle brings nothing while it is off', () => {
    const off = evening('2030-10-01', { parts: [did('engine', 'removed')] });
    expect(answer(PARTS, off).answers.find(({ line }) => line.component === 'engine')).toMatchObject({
      answer: 'no',
      grounds: [{ words: 'not on the vehicle' }],
    });
  });

  test('a component that no part carries is unknown, not yes', () => {
    const without = PARTS.filter(({ component }) => component !== 'steering');
    expect(answer(without).answers.find(({ line }) => line.component === 'steering')).toMatchObject({ answer: 'unknown', points: 0 });
  });

  test('work that cut the frame is named as a question', () => {
    const welded = evening('2030-10-01', { parts: [did('frame', 'repaired')] });
    const [frame] = answer(PARTS, welded).answers;
    expect(frame?.grounds[0]?.changed).toEqual([{ session: '2030-10-01-work', date: '2030-10-01', did: 'repaired' }]);
  });
});
