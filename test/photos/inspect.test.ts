import { readFileSync, truncateSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { crc32 } from 'node:zlib';
import sharp, { type Sharp } from 'sharp';
import { describe, expect, it } from 'vitest';
import { inspectPictures } from '../../src/photos/inspect.ts';
import { unusablePictures } from '../../src/photos/picture-diagnostics.ts';
import { darkRoom } from './dark-room.ts';
import { onePagePdf } from './one-page-pdf.ts';
import { orientedJpeg, SCENE, scene } from './sample-pictures.ts';

const image = (): Sharp => sharp(scene(), { raw: { ...SCENE, channels: 3 } });
const SAMPLES: Readonly<Record<string, () => Promise<Buffer>>> = {
  jpg: () => orientedJpeg(1),
  png: () => image().png().toBuffer(),
  webp: () => image().webp().toBuffer(),
  avif: () => image().avif({ effort: 0 }).toBuffer(),
  tif: () => image().tiff({ compression: 'none' }).toBuffer(),
  heic: async () => readFileSync(new URL('./fixtures/turned-by-its-container.heic', import.meta.url)),
  pdf: async () => onePagePdf(),
};

/** Another size in the header of a PNG, with its check sum (PNG, 11.2.2). */
function withSize(png: Buffer, width: number, height: number): Buffer {
  const changed = Buffer.from(png);
  changed.writeUInt32BE(width, 16);
  changed.writeUInt32BE(height, 20);
  changed.writeUInt32BE(crc32(changed.subarray(12, 29)), 29);
  return changed;
}

/** A grey TIFF of 16 by 32 pixels whose directory lies before its pixels (TIFF 6.0, section 2): two strips or two tiles. */
function directoryFirst(order: 'II' | 'MM', tiled: boolean): Buffer {
  const [width, rows] = [16, 16];
  const entries = tiled
    ? [
        [256, 4, 1, width],
        [257, 4, 1, 32],
        [258, 3, 1, 8],
        [259, 3, 1, 1],
        [262, 3, 1, 1],
        [277, 3, 1, 1],
        [322, 3, 1, width],
        [323, 3, 1, rows],
        [324, 4, 2, 0],
        [325, 4, 2, 0],
      ]
    : [
        [256, 4, 1, width],
        [257, 4, 1, 32],
        [258, 3, 1, 8],
        [259, 3, 1, 1],
        [262, 3, 1, 1],
        [273, 4, 2, 0],
        [277, 3, 1, 1],
        [278, 3, 1, rows],
        [279, 4, 2, 0],
      ];
  const lists = 8 + 2 + entries.length * 12 + 4;
  const pixels = lists + 16;
  const file = Buffer.alloc(pixels + 2 * width * rows, 0x80);
  const put = (at: number, value: number, bytes: 2 | 4): void => {
    if (order === 'II') file.writeUIntLE(value, at, bytes);
    else file.writeUIntBE(value, at, bytes);
  };
  file.write(order, 0, 'latin1');
  put(2, 42, 2);
  put(4, 8, 4);
  put(8, entries.length, 2);
  for (const [n, [tag = 0, type = 0, count = 0, value = 0]] of entries.entries()) {
    const at = 10 + n * 12;
    put(at, tag, 2);
    put(at + 2, type, 2);
    put(at + 4, count, 4);
    put(at + 8, 0, 4);
    const list = tag === 273 || tag === 324 ? lists : lists + 8;
    put(at + 8, count === 2 ? list : value, type === 3 ? 2 : 4);
  }
  put(lists - 4, 0, 4);
  for (const n of [0, 1]) {
    put(lists + n * 4, pixels + n * width * rows, 4);
    put(lists + 8 + n * 4, width * rows, 4);
  }
  return file;
}

it('a picture of more than two gigabytes is told, and not taken into memory', async () => {
  using room = darkRoom();
  room.add('sessions/a/huge.jpg', await orientedJpeg(1));
  truncateSync(join(room.root, 'sessions/a/huge.jpg'), 2 ** 31 + 1000);
  const { problems } = await inspectPictures(['sessions/a/huge.jpg'], { ...room, depth: 'full' });
  expect(problems).toMatchObject([{ path: 'sessions/a/huge.jpg', message: 'has 2.0 GB; the limit is 2' }]);
});

describe('a picture that cannot be used is named, and the others are still looked at', () => {
  it('whatever is wrong with it', async () => {
    using room = darkRoom();
    room.add('sessions/a/empty.jpg', '');
    room.add('sessions/a/text.jpg', 'not a picture at all');
    room.add('sessions/a/really-png.jpg', await image().png().toBuffer());
    room.add('sessions/a/really-heic.jpg', readFileSync(new URL('./fixtures/wide-gamut-red.heic', import.meta.url)));
    room.add('sessions/a/avif.heic', await image().avif({ effort: 0 }).toBuffer());
    room.add('sessions/a/film.heic', Buffer.from('\0\0\0\x18ftypisom\0\0\0\0isommp42', 'latin1'));
    room.add('papers/picture.pdf', await image().jpeg().toBuffer());
    room.add('sessions/a/sound.jpg', await orientedJpeg(1));
    const { facts, problems } = await room.inspect('header');
    expect([...facts.keys()]).toEqual(['sessions/a/sound.jpg']);
    expect(problems.map((one) => `${one.path} ${one.message}`)).toEqual([
      'papers/picture.pdf is named as PDF and is really JPEG',
      'sessions/a/avif.heic is named as HEIC and is really AVIF',
      'sessions/a/empty.jpg is empty',
      'sessions/a/film.heic is named as HEIC and is really film',
      'sessions/a/really-heic.jpg is named as JPEG and is really HEIC',
      'sessions/a/really-png.jpg is named as JPEG and is really PNG',
      'sessions/a/text.jpg is named as JPEG and is not a picture that can be read',
    ]);
    expect(unusablePictures(problems, null).map((one) => [one.code, one.place.file])).toContainEqual(['A907', 'sessions/a/empty.jpg']);
    expect(unusablePictures(problems, null)[0]).toMatchObject({ code: 'A909', severity: 'error', place: { file: 'papers/picture.pdf' } });
  });

  it.each(Object.keys(SAMPLES))('when a %s is cut short', async (ending) => {
    using room = darkRoom();
    const whole = (await SAMPLES[ending]?.()) ?? Buffer.alloc(0);
    room.add(`sessions/a/whole.${ending}`, whole);
    for (const share of [0.3, 0.6, 0.9]) room.add(`sessions/a/cut-${share}.${ending}`, whole.subarray(0, whole.length * share));
    const { facts, problems } = await room.inspect('header');
    expect([...facts.keys()]).toEqual([`sessions/a/whole.${ending}`]);
    expect(problems.map((one) => [one.path, one.message])).toEqual(
      [0.3, 0.6, 0.9].map((share) => [`sessions/a/cut-${share}.${ending}`, 'is cut short: its end is missing']),
    );
  });

  it.each(['II', 'MM'] as const)('when a TIFF (%s) that begins with its directory is cut short, in strips and in tiles', async (order) => {
    using room = darkRoom();
    for (const tiled of [false, true]) {
      const whole = directoryFirst(order, tiled);
      room.add(`sessions/a/whole-${tiled}.tif`, whole);
      for (const missing of [1, 30]) room.add(`sessions/a/cut-${tiled}-${missing}.tif`, whole.subarray(0, whole.length - missing));
    }
    const { facts, problems } = await room.inspect('header');
    expect([...facts.keys()]).toEqual(['sessions/a/whole-false.tif', 'sessions/a/whole-true.tif']);
    expect(problems.map((one) => one.message)).toEqual(Array(4).fill('is cut short: its end is missing'));
    const { problems: unpacked } = await room.build();
    expect(unpacked, 'the whole ones are sound').toEqual([]);
  });

  it('when a box of a HEIC after its first pixels runs over the end', async () => {
    using room = darkRoom();
    const whole = (await SAMPLES.heic?.()) ?? Buffer.alloc(0);
    const more = (length: number): Buffer => Buffer.concat([whole, Buffer.from([0, 0, 0, length]), Buffer.from('mdat12345678')]);
    room.add('sessions/a/sound.heic', more(16));
    room.add('sessions/a/cut.heic', more(17));
    const { facts, problems } = await room.inspect('header');
    expect([...facts.keys()]).toEqual(['sessions/a/sound.heic']);
    expect(problems.map(({ path, message }) => [path, message])).toEqual([['sessions/a/cut.heic', 'is cut short: its end is missing']]);
  });

  it('but what a phone appends after the picture does no harm', async () => {
    using room = darkRoom();
    const after = Buffer.from('\0\0\0\x18ftypmp42 a short film, then SEFT and more bytes than the head of a box takes', 'latin1');
    for (const ending of ['jpg', 'png', 'webp', 'heic']) {
      room.add(`sessions/a/one.${ending}`, Buffer.concat([(await SAMPLES[ending]?.()) ?? Buffer.alloc(0), after]));
    }
    const { problems, facts } = await room.inspect('header');
    expect(problems).toEqual([]);
    expect(facts.size).toBe(4);
  });

  it('when it unpacks to more pixels than the limit, without unpacking it', async () => {
    using room = darkRoom();
    const exactly = await image().png().toBuffer();
    room.add('sessions/a/huge.png', withSize(exactly, 20_000, 10_001));
    room.add('sessions/a/large.png', withSize(exactly, 20_000, 10_000));
    const started = performance.now();
    const { problems } = await room.inspect('header');
    expect(problems).toMatchObject([{ path: 'sessions/a/huge.png', message: 'has 200 megapixels; the limit is 200' }]);
    expect(performance.now() - started).toBeLessThan(1000);
  });

  it('when only unpacking finds the damage, and the rest is rendered', async () => {
    using room = darkRoom();
    const noisy = await sharp({
      create: { width: 400, height: 300, channels: 3, background: '#000', noise: { type: 'gaussian', mean: 120, sigma: 60 } },
    })
      .png()
      .toBuffer();
    noisy.fill(0x5a, noisy.length >> 1, (noisy.length >> 1) + 4000);
    room.add('sessions/a/damaged.png', noisy);
    room.add('sessions/a/sound.jpg', await orientedJpeg(1));
    const { plan, problems, rendered } = await room.build();
    expect(problems).toMatchObject([{ path: 'sessions/a/damaged.png' }]);
    expect(problems[0]?.message).toMatch(/^cannot be unpacked: \S/u);
    expect(rendered).toBe(1);
    expect(plan.rendition('sessions/a/damaged.png')).toBeNull();
    expect(plan.rendition('sessions/a/sound.jpg')?.placeholder).toMatch(/^#/u);
    expect(room.names('cache').some((name) => name.includes('unfinished'))).toBe(false);
  });

  it('when it is gone by now, or is a folder', async () => {
    using room = darkRoom();
    room.add('sessions/a/sound.jpg', await orientedJpeg(1));
    room.add('sessions/a/folder.jpg/note.txt', '');
    const paths = ['sessions/a/gone.jpg', 'sessions/a/folder.jpg', 'sessions/a/sound.jpg'];
    const { problems, facts } = await inspectPictures(paths, { root: room.root, cache: room.cache, depth: 'full' });
    expect(problems.map((one) => one.message)).toEqual(['cannot be read (ENOENT)', 'cannot be read (EISDIR)']);
    expect(facts.size).toBe(1);
  });

  it('and nothing is said of files that are no pictures by their names', async () => {
    using room = darkRoom();
    room.add('sessions/a/reel.mp4', 'film');
    room.add('sessions/a/figures.ods', 'table');
    expect(await room.inspect()).toMatchObject({ problems: [], opened: 0 });
  });
});

describe('a file that has not changed is not opened again', () => {
  it('until its bytes, or what must be known of it, change', async () => {
    using room = darkRoom();
    room.add('sessions/a/one.jpg', await orientedJpeg(1));
    room.add('sessions/a/empty.jpg', '');
    await new Promise((resolve) => setTimeout(resolve, 80));
    expect((await room.inspect('header')).opened).toBe(2);
    expect((await room.inspect('header')).opened).toBe(0);
    expect((await room.inspect('full')).opened).toBe(1);
    const before = await room.inspect('full');
    expect(before.opened).toBe(0);
    expect(before.problems).toHaveLength(1);
    room.add('sessions/a/one.jpg', await orientedJpeg(6));
    const after = await room.inspect('full');
    expect(after.opened).toBe(1);
    expect(after.facts.get('sessions/a/one.jpg')?.digest).not.toBe(before.facts.get('sessions/a/one.jpg')?.digest);
  });

  it('unless it was written only just before, when its times may not tell the next change', async () => {
    using room = darkRoom();
    room.add('sessions/a/one.jpg', await orientedJpeg(1));
    expect((await room.inspect('header')).opened).toBe(1);
    await new Promise((resolve) => setTimeout(resolve, 80));
    expect((await room.inspect('header')).opened).toBe(1);
    expect((await room.inspect('header')).opened).toBe(0);
  });

  it('and an index that is damaged is no index', async () => {
    using room = darkRoom();
    room.add('sessions/a/one.jpg', await orientedJpeg(1));
    await new Promise((resolve) => setTimeout(resolve, 80));
    await room.inspect('header');
    const index = room.names('cache').find((name) => name.includes('index-')) ?? '';
    writeFileSync(join(room.cache, index), '{"edition":');
    expect((await room.inspect('header')).opened).toBe(1);
  });
});
