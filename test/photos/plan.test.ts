import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { kindByName, type PictureFacts } from '../../src/photos/facts.ts';
import { picturePlan } from '../../src/photos/plan.ts';
import { planPictures } from '../../src/photos/plan-pictures.ts';
import { edgesFor, fitted, LEAST_STEP } from '../../src/photos/recipe.ts';

const OPTIONS = { keep: [], timeZone: 'Europe/London' } as const;

function facts(path: string, width: number, height: number, digest: string | null = path): PictureFacts {
  const kind = kindByName(path) ?? 'jpeg';
  return { path, kind, bytes: 10, digest, width, height, pages: null, takenAt: null, camera: null, seal: null };
}

describe('the plan of a picture', () => {
  it('has four sizes, and a plain JPEG of the third', () => {
    const rendition = planPictures([facts('sessions/a/one.jpg', 4000, 3000)], OPTIONS).rendition('sessions/a/one.jpg');
    expect(rendition?.sources[0]?.srcset.map(({ width, height }) => [width, height])).toEqual([
      [320, 240],
      [640, 480],
      [1280, 960],
      [2048, 1536],
    ]);
    expect(rendition?.fallback).toMatchObject({ width: 1280, height: 960 });
    expect(rendition?.fallback.file).toMatch(/^pictures\/[0-9a-f]{16}-1280\.jpg$/u);
    expect(rendition?.full).toEqual(rendition?.sources[0]?.srcset[3]);
    expect(rendition).toMatchObject({ width: 2048, height: 1536, placeholder: null });
  });

  it('goes by the width of an upright picture where that is small, by its height where it is large', () => {
    const rendition = planPictures([facts('a.jpg', 3000, 4000)], OPTIONS).rendition('a.jpg');
    expect(rendition?.sources[0]?.srcset.map((one) => one.width)).toEqual([320, 640, 960, 1536]);
  });

  it('never enlarges, and leaves out a size that hardly differs from the next', () => {
    expect(edgesFor(300, 200)).toEqual([300]);
    expect(edgesFor(500, 400)).toEqual([320, 500]);
    expect(edgesFor(1300, 900)).toEqual([320, 640, 1300]);
    expect(edgesFor(1700, 900)).toEqual([320, 640, 1280, 1700]);
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 30_000 }), fc.integer({ min: 1, max: 30_000 }), (width, height) => {
        const edges = edgesFor(width, height);
        expect(edges.length).toBeGreaterThan(0);
        for (const [n, edge] of edges.entries()) expect(edge).toBeLessThanOrEqual((edges[n + 1] ?? 2048 * LEAST_STEP) / LEAST_STEP);
        for (const edge of edges) {
          const size = fitted(width, height, edge);
          expect(size.width >= 1 && size.height >= 1 && size.width <= width && size.height <= height).toBe(true);
          expect(Math.max(size.width, size.height)).toBe(edge);
        }
      }),
    );
  });

  it('goes by the bytes: two names share their files, one name with other bytes does not', () => {
    const first = planPictures([facts('a.jpg', 4000, 3000, 'x'), facts('b.jpg', 4000, 3000, 'x')], OPTIONS);
    expect(first.rendition('a.jpg')?.full.file).toBe(first.rendition('b.jpg')?.full.file);
    expect(planPictures([facts('a.jpg', 4000, 3000, 'y')], OPTIONS).rendition('a.jpg')?.full.file).not.toBe(
      first.rendition('a.jpg')?.full.file,
    );
  });

  it('is the same in whatever order the pictures were found, and survives being written as JSON', () => {
    const all = ['c.jpg', 'a.jpg', 'b.pdf'].map((path) => facts(path, 600, 400));
    const plan = planPictures(all, OPTIONS);
    expect(planPictures([...all].reverse(), OPTIONS).data).toEqual(plan.data);
    expect(picturePlan(JSON.parse(JSON.stringify(plan.data))).paper('b.pdf')).toEqual(plan.paper('b.pdf'));
    expect(plan.rendition('nowhere.jpg')).toBeNull();
    expect(plan.paper('nowhere.pdf')).toBeNull();
  });
});
