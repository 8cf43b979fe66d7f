import { readFileSync } from 'node:fs';
import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { darkRoom } from './dark-room.ts';
import { distance, fingerprint } from './fingerprint.ts';
import { orientedJpeg, SCENE, scene, storedFor } from './sample-pictures.ts';

const upright = await fingerprint(sharp(scene(), { raw: { ...SCENE, channels: 3 } }));
/** Of 64 bits. Rendering moves a few; a wrong orientation moves at least twice as many, as the first test holds. */
const NEAR = 5;

describe('a picture comes out upright', () => {
  it('and the fingerprint would tell if it did not', async () => {
    for (const orientation of [2, 3, 4, 5, 6, 7, 8]) {
      const { data, width, height } = storedFor(orientation);
      const asStored = await fingerprint(sharp(data, { raw: { width, height, channels: 3 } }));
      expect(distance(asStored, upright), `orientation ${orientation}, not obeyed`).toBeGreaterThan(2 * NEAR);
    }
  });

  // EXIF 2.3, tag 0x0112: 1 to 8; anything else counts as 1.
  it.each([1, 2, 3, 4, 5, 6, 7, 8, 9])('with EXIF orientation %i', async (orientation) => {
    using room = darkRoom();
    room.add('sessions/a/held.jpg', await orientedJpeg(orientation));
    const { plan } = await room.build();
    const rendition = plan.rendition('sessions/a/held.jpg');
    expect(rendition).toMatchObject(SCENE);
    for (const { file, width, height } of [...(rendition?.sources[0]?.srcset ?? []), rendition?.fallback].filter(
      (one) => one !== undefined,
    )) {
      expect(distance(await fingerprint(room.at(file)), upright), file).toBeLessThanOrEqual(NEAR);
      expect(await sharp(room.at(file)).metadata(), file).toMatchObject({ width, height });
    }
  });

  it('when a HEIC file turns it in its container and says so in EXIF too', async () => {
    using room = darkRoom();
    room.add('sessions/a/phone.heic', readFileSync(new URL('./fixtures/turned-by-its-container.heic', import.meta.url)));
    const { plan, problems } = await room.build();
    expect(problems).toEqual([]);
    const rendition = plan.rendition('sessions/a/phone.heic');
    expect(rendition).toMatchObject(SCENE);
    expect(distance(await fingerprint(room.at(rendition?.full.file ?? '')), upright)).toBeLessThanOrEqual(NEAR);
  });

  it.each(['png', 'webp', 'tiff', 'avif'] as const)('from %s', async (format) => {
    using room = darkRoom();
    const { data, width, height } = storedFor(1);
    room.add(
      `sessions/a/one.${format}`,
      await sharp(data, { raw: { width, height, channels: 3 } })
        .toFormat(format)
        .toBuffer(),
    );
    const { plan, problems } = await room.build();
    expect(problems).toEqual([]);
    const full = plan.rendition(`sessions/a/one.${format}`)?.full;
    expect(distance(await fingerprint(room.at(full?.file ?? '')), upright)).toBeLessThanOrEqual(NEAR);
  });
});
