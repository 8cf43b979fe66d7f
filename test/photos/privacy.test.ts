import { readFileSync } from 'node:fs';
import exifr from 'exifr';
import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { darkRoom } from './dark-room.ts';
import { FACE_TAG, orientedJpeg, SCENE, scene, TELLING } from './sample-pictures.ts';

/** Everything that exifr, a reader that Asfound does not use, knows to look for. */
const EVERYTHING = { tiff: true, exif: true, gps: true, xmp: true, iptc: true, icc: true, makerNote: true, userComment: true };
const SECRETS = ['SERIAL-4417', 'Owner Of The Camera', 'Tagged Person', 'Obscura', '2031:03:12', 'Exif', 'http://ns.adobe.com'];

async function telling(format: 'jpeg' | 'png' | 'webp' | 'tiff' | 'avif'): Promise<Buffer> {
  const image = sharp(scene(), { raw: { ...SCENE, channels: 3 } })
    .withExif(TELLING)
    .withXmp(FACE_TAG);
  return image.toFormat(format).toBuffer();
}

describe('nothing that a camera knows of its owner is published', () => {
  it.each(['jpeg', 'png', 'webp', 'tiff', 'avif'] as const)('from %s', async (format) => {
    using room = darkRoom();
    const source = await telling(format);
    expect((await sharp(source).metadata()).xmp?.toString(), 'the sample tells').toContain('Tagged Person');
    room.add(`sessions/a/telling.${format}`, source);
    await room.build();
    const published = room.names('site');
    expect(published.length).toBeGreaterThanOrEqual(2);
    for (const name of published) {
      const bytes = readFileSync(room.at(name));
      for (const secret of SECRETS) expect(bytes.includes(secret), `${name} holds ${secret}`).toBe(false);
      if (name.endsWith('.jpg')) expect(await exifr.parse(bytes, EVERYTHING), name).toBeUndefined();
      expect(name).not.toContain('telling');
      const { exif, xmp, iptc, icc } = await sharp(bytes).metadata();
      expect([exif, xmp, iptc, icc], name).toEqual([undefined, undefined, undefined, undefined]);
    }
  });

  it('and the independent reader does see it in what came from the camera', async () => {
    const seen = await exifr.parse(await telling('jpeg'), EVERYTHING);
    expect(seen).toMatchObject({ Make: 'Obscura', latitude: 51.5 });
    expect(JSON.stringify(seen)).toContain('SERIAL-4417');
    expect(JSON.stringify(seen)).toContain('Tagged Person');
  });

  it('shows the time and the camera only when the journal says so', async () => {
    using room = darkRoom();
    room.add('sessions/a/one.jpg', await orientedJpeg(1));
    const shown = async (keep: ('time' | 'camera')[]): Promise<unknown[]> => {
      const rendition = (await room.plan(keep)).rendition('sessions/a/one.jpg');
      return [rendition?.takenAt, rendition?.camera];
    };
    expect(await shown([])).toEqual([null, null]);
    expect(await shown(['time'])).toEqual([{ local: '2031-03-12T21:10:00', offset: '+00:00' }, null]);
    expect(await shown(['camera'])).toEqual([null, 'Obscura Nine']);
  });
});
