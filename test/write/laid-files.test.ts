/** Pictures as phones make them: shown upright and small, kept as they came. */
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import sharp from 'sharp';
import { afterAll, expect, test } from 'vitest';
import { laidBy, layIn } from '../../src/write/laid-files.ts';
import { previewOf } from '../../src/write/preview.ts';
import { onePagePdf } from '../photos/one-page-pdf.ts';
import { orientedJpeg, SCENE } from '../photos/sample-pictures.ts';

const folder = mkdtempSync(join(tmpdir(), 'asfound-laid-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const HEIC = readFileSync(new URL('../photos/fixtures/turned-by-its-container.heic', import.meta.url));

const lay = (what: 'picture' | 'paper', name: string, bytes: Uint8Array) =>
  layIn(folder, { what, name, bytes: bytes.length, body: new Blob([new Uint8Array(bytes)]).stream(), taken: () => false });

// EXIF 2.32, tag 0x0112: 1 to 8, of which 5 to 8 lie on their side.
test.each([1, 2, 3, 4, 5, 6, 7, 8])(
  'a JPEG that was taken with the phone turned (orientation %d) is shown upright and kept as it came',
  async (orientation) => {
    const bytes = await orientedJpeg(orientation);
    const { name, file } = await lay('picture', `IMG_${orientation}.JPG`, bytes);
    expect(name).toBe(`img-${orientation}.jpg`);
    expect(readFileSync(file).equals(bytes)).toBe(true);
    const { width, height, orientation: left, exif } = await sharp((await previewOf(file)) ?? Buffer.alloc(0)).metadata();
    expect([width, height, left, exif]).toEqual([SCENE.width, SCENE.height, undefined, undefined]);
  },
);

test('a HEIC is taken as it is, whatever its name says, and shown as a JPEG', async () => {
  const { name, file } = await lay('picture', 'IMG_9.JPG', HEIC);
  expect(name).toBe('img-9.heic');
  expect(readFileSync(file).equals(HEIC)).toBe(true);
  expect((await sharp((await previewOf(file)) ?? Buffer.alloc(0)).metadata()).format).toBe('jpeg');
});

test('a paper may be a PDF', async () => {
  const { name, file } = await lay('paper', 'Bill 7.pdf', await onePagePdf());
  expect(name).toBe('bill-7.pdf');
  expect(await previewOf(file)).not.toBeNull();
});

test('what has more or fewer bytes than was said is not kept', async () => {
  const bytes = await orientedJpeg(1);
  const before = laidBy(folder).length;
  const said = (length: number) =>
    layIn(folder, { what: 'picture', name: 'x.jpg', bytes: length, body: new Blob([new Uint8Array(bytes)]).stream(), taken: () => false });
  await expect(said(bytes.length + 1)).rejects.toThrow('did not come as a whole');
  await expect(said(bytes.length - 1)).rejects.toThrow('larger than was said');
  expect(laidBy(folder).length).toBe(before);
});

test('a file that is no picture is not shown', async () => {
  const file = join(folder, 'no.jpg');
  writeFileSync(file, 'no picture');
  expect(await previewOf(file)).toBeNull();
});
