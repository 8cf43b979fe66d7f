import { readFileSync } from 'node:fs';
import sharp, { type Sharp } from 'sharp';
import { describe, expect, it } from 'vitest';
import { darkRoom } from './dark-room.ts';
import { middleOf } from './fingerprint.ts';
import type { Rgb } from './sample-pictures.ts';

const plain = (background: string, size = 64): Sharp => sharp({ create: { width: size, height: size, channels: 3, background } });

function near(colour: readonly number[], expected: Rgb, by = 8): boolean {
  return expected.every((value, index) => Math.abs((colour[index] ?? -1) - value) <= by);
}

// sRGB red is (0.9175, 0.2003, 0.1386) in Display P3 (CSS Color 4, sample conversions; from memory).
const RED: Rgb = [255, 0, 0];
const RED_IN_P3: Rgb = [234, 51, 35];

/** Display P3 red, told by a box `colr` of type `nclx`: primaries 12, transfer 13, matrix 6, full range (ITU-T H.273). */
function inNumbers(ending: 'heic' | 'avif'): Buffer {
  const bytes = readFileSync(new URL(`./fixtures/wide-gamut-red.${ending}`, import.meta.url));
  const box = bytes.indexOf('colr', 0, 'latin1') + 4;
  bytes.write('nclx', box, 'latin1');
  bytes.set([0, 12, 0, 13, 0, 6, 0x80], box + 4);
  return bytes;
}

describe('colours are those of the picture, in sRGB', () => {
  it('when a JPEG is in Display P3', async () => {
    using room = darkRoom();
    const wide = await plain('#ff0000').withIccProfile('p3').jpeg({ quality: 98, chromaSubsampling: '4:4:4' }).toBuffer();
    expect(near(await middleOf(wide), RED_IN_P3), 'the sample is in P3').toBe(true);
    room.add('sessions/a/wide.jpg', wide);
    const { plan } = await room.build();
    const rendition = plan.rendition('sessions/a/wide.jpg');
    for (const file of [rendition?.full.file, rendition?.fallback.file]) {
      const middle = await middleOf(room.at(file ?? ''));
      expect(near(middle, RED), `${file}: ${middle}`).toBe(true);
    }
    expect(rendition?.placeholder).toMatch(/^#f[c-f]0[0-6]0[0-6]$/u);
  });

  it('when a HEIC is in Display P3', async () => {
    using room = darkRoom();
    room.add('sessions/a/wide.heic', readFileSync(new URL('./fixtures/wide-gamut-red.heic', import.meta.url)));
    const { plan } = await room.build();
    const middle = await middleOf(room.at(plan.rendition('sessions/a/wide.heic')?.full.file ?? ''));
    expect(near(middle, RED), String(middle)).toBe(true);
  });

  it.each(['heic', 'avif'] as const)('when a %s says by numbers alone that it is in Display P3', async (ending) => {
    using room = darkRoom();
    const bytes = inNumbers(ending);
    expect((await sharp(bytes).metadata()).icc, 'it has no profile').toBeUndefined();
    room.add(`sessions/a/wide.${ending}`, bytes);
    const { plan } = await room.build();
    const middle = await middleOf(room.at(plan.rendition(`sessions/a/wide.${ending}`)?.full.file ?? ''));
    expect(near(middle, RED), String(middle)).toBe(true);
  });

  it('are those of the picture that a HEIC file says to show, of several', async () => {
    using room = darkRoom();
    const bytes = readFileSync(new URL('./fixtures/blue-and-green.heic', import.meta.url));
    // The box `pitm` names the item to show (ISO/IEC 14496-12, 8.11.4): 1 is blue, 2 is green.
    const item = bytes.indexOf('pitm', 0, 'latin1') + 8;
    for (const [number, colour] of [
      [1, [0, 0, 255]],
      [2, [0, 255, 0]],
    ] as const) {
      bytes.writeUInt16BE(number, item);
      room.add('sessions/a/two.heic', bytes);
      const { plan } = await room.build();
      const middle = await middleOf(room.at(plan.rendition('sessions/a/two.heic')?.full.file ?? ''));
      expect(near(middle, colour), `${number}: ${middle}`).toBe(true);
    }
  });

  it('when a TIFF has inks, sixteen bits or one channel', async () => {
    using room = darkRoom();
    room.add('sessions/a/inks.tif', await plain('#ff0000').toColourspace('cmyk').tiff().toBuffer());
    room.add('sessions/a/deep.png', await plain('#406080').toColourspace('rgb16').png().toBuffer());
    room.add('sessions/a/grey.jpg', await plain('#808080').greyscale().jpeg().toBuffer());
    const { plan, problems } = await room.build();
    expect(problems).toEqual([]);
    const middle = (name: string): Promise<number[]> => middleOf(room.at(plan.rendition(`sessions/a/${name}`)?.full.file ?? ''));
    const [red = 0, green = 255, blue = 255] = await middle('inks.tif');
    expect(red > 200 && green < 60 && blue < 60).toBe(true);
    expect(near(await middle('deep.png'), [0x40, 0x60, 0x80])).toBe(true);
    expect(near((await middle('grey.jpg')).slice(0, 1), [0x80, 0x80, 0x80].slice(0, 1) as unknown as Rgb)).toBe(true);
    expect(plan.rendition('sessions/a/grey.jpg')?.placeholder).toMatch(/^#(7f7f7f|808080|818181)$/u);
  });

  it('and what is transparent is laid on white', async () => {
    using room = darkRoom();
    const clear = sharp({ create: { width: 50, height: 50, channels: 4, background: { r: 0, g: 0, b: 0, alpha: 0 } } });
    room.add('sessions/a/clear.png', await clear.png().toBuffer());
    const { plan } = await room.build();
    expect(near(await middleOf(room.at(plan.rendition('sessions/a/clear.png')?.fallback.file ?? '')), [255, 255, 255], 1)).toBe(true);
  });
});
