import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import sharp from 'sharp';
import { expect, test } from 'vitest';
import { layForPrint, printFile } from '../../src/book/print-pictures.ts';
import { typeset } from '../../src/exports/typeset.ts';
import type { PicturePlan, Rendition } from '../../src/photos/plan.ts';
import { folderWith } from '../load/folder.ts';

const picture = await sharp({ create: { width: 1280, height: 960, channels: 3, background: '#884422' } })
  .jpeg()
  .toBuffer();

/** So many pictures of the same bytes, laid for print. */
async function laid(count: number, most?: number): Promise<{ readonly folder: string; readonly renditions: readonly Rendition[] }> {
  const files = Array.from({ length: count }, (_, n) => `${n}.jpg`);
  const folder = folderWith(Object.fromEntries(files.map((file) => [file, picture])));
  const renditions = files.map((file) => ({ fallback: { file, width: 1280, height: 960 } }) as Rendition);
  await layForPrint({ data: { renditions, papers: [], inOrder: [] } } as unknown as PicturePlan, folder, most);
  return { folder, renditions };
}

test('a picture goes into the PDF as it was rendered, byte for byte', async () => {
  const { folder, renditions } = await laid(1);
  const source = `#image("/${printFile(renditions[0] as Rendition)}", width: 100%, alt: "Brown.")`;
  const { pdf } = typeset(`#set document(title: "a")\n${source}`, { workspace: folder, standard: 'a-3a' });
  expect(Buffer.from(pdf).includes(picture)).toBe(true);
});

test('of very many each is smaller, and what was rendered, which may be the cache’s own, stays as it was', async () => {
  const { folder, renditions } = await laid(2, 1);
  const [first] = renditions as [Rendition];
  expect(readFileSync(join(folder, first.fallback.file)).equals(picture)).toBe(true);
  expect(existsSync(join(folder, `${first.fallback.file}.print.jpg`))).toBe(true);
  expect((await sharp(readFileSync(join(folder, `${first.fallback.file}.print.jpg`))).metadata()).width).toBe(905);
  expect(readFileSync(join(folder, printFile(first)), 'utf8')).toContain('href="0.jpg.print.jpg"');
});
