import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Session } from '../../../../src/journal/model.ts';
import { picturePlan } from '../../../../src/photos/plan.ts';
import { planPictures } from '../../../../src/photos/plan-pictures.ts';
import type { SiteRecord } from '../../../../src/site/record.ts';
import type { PictureOfSession } from '../../../../src/site/views/page/long-lists.ts';
import { leavesOf, pictureCollections } from '../../../../src/site/views/pictures/picture-collections.ts';
import { compileFiles } from '../../../journal/base.ts';

/** Pictures of these days, oldest first, named by their running number. */
function taken(days: readonly string[]): PictureOfSession[] {
  return days.toSorted().map((date, n) => ({
    session: { date } as Session,
    picture: {
      file: String(n),
      shows: [],
      named: [],
      points: [],
      view: null,
      caption: null,
      alt: null,
      inProse: false,
      unmentioned: true,
      place: null,
    },
  }));
}

const day = (year: number, month: number, date: number): string =>
  `${year}-${String(month).padStart(2, '0')}-${String(date).padStart(2, '0')}`;

describe('a long collection of pictures', () => {
  it('holds each picture once, newest first, and no more on a page than a page may hold', () => {
    const days = fc.array(
      fc.tuple(fc.integer({ min: 2030, max: 2032 }), fc.integer({ min: 1, max: 12 }), fc.integer({ min: 1, max: 28 })),
      { maxLength: 80 },
    );
    fc.assert(
      fc.property(days, fc.integer({ min: 1, max: 20 }), (dates, most) => {
        const pictures = taken(dates.map(([y, m, d]) => day(y, m, d)));
        const leaves = leavesOf(pictures, most);
        expect(leaves.flatMap((leaf) => leaf.pictures)).toEqual(pictures.toReversed());
        for (const leaf of leaves) expect(leaf.pictures.length).toBeLessThanOrEqual(most);
        expect(new Set(leaves.map(({ name }) => name)).size).toBe(leaves.length);
      }),
    );
  });

  it('has a page a year, a page a month where a year is too long, and several where a month is', () => {
    const days = [day(2030, 5, 1), ...Array(3).fill(day(2031, 2, 1)), ...Array(5).fill(day(2031, 3, 1))];
    expect(leavesOf(taken(days), 10).map(({ name }) => name)).toEqual(['']);
    expect(leavesOf(taken(days), 8).map(({ name }) => name)).toEqual(['2031', '2030']);
    expect(leavesOf(taken(days), 5).map(({ name }) => name)).toEqual(['2031-03', '2031-02', '2030']);
    expect(leavesOf(taken(days), 2).map(({ name }) => name)).toEqual([
      '2031-03-3',
      '2031-03-2',
      '2031-03-1',
      '2031-02-2',
      '2031-02-1',
      '2030',
    ]);
  });

  it('keeps what a full page of a month holds when more are taken that month', () => {
    const first = (count: number): string[] => {
      const leaf = leavesOf([...taken([day(2030, 1, 1)]), ...taken(Array(count).fill(day(2031, 3, 1)))], 2).find(
        ({ name }) => name === '2031-03-1',
      );
      return leaf?.pictures.map(({ picture }) => picture.file) ?? [];
    };
    expect(first(3)).toEqual(['1', '0']);
    expect(first(6)).toEqual(first(3));
  });
});

describe('the collections of a journal', () => {
  it('are one of all, one for each subsystem that is shown, and one of pictures that show no part', () => {
    const folder = 'sessions/2031-03-12-brakes';
    const files = ['a.jpg', 'b.jpg', 'c.jpg'].map((name) => `${folder}/${name}`);
    const fields = 'pictures:\n  - { file: a.jpg, shows: [drum], caption: x }\n  - { file: b.jpg, shows: [drum], caption: y }';
    const note = `---\ndate: 2031-03-12\ntitle: Brakes\n${fields}\n---\n`;
    const { record } = compileFiles({ more: { [`${folder}/index.md`]: note }, assets: files });
    const facts = files.map(
      (path) =>
        ({
          path,
          kind: 'jpeg',
          bytes: 1,
          digest: path,
          width: 9,
          height: 9,
          pages: null,
          takenAt: null,
          camera: null,
          seal: null,
        }) as const,
    );
    const pictures = picturePlan(planPictures(facts, { keep: [], timeZone: 'UTC' }).data);
    const collections = pictureCollections({ record: { ...record, pictures } as SiteRecord });
    expect(collections.map(({ subsystem, count, address }) => [subsystem, count, address])).toEqual([
      [null, 3, 'pictures.html'],
      ['brakes', 2, 'pictures-of/brakes.html'],
      ['general', 1, 'pictures-of/general.html'],
    ]);
  });
});
