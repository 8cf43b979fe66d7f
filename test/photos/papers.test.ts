import { readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { openEntryCache } from '../../src/disk/entry-cache.ts';
import { openDecoder } from '../../src/photos/decoder.ts';
import { cleanedPaper } from '../../src/photos/place-paper.ts';
import { darkRoom } from './dark-room.ts';
import { middleOf } from './fingerprint.ts';
import { onePagePdf } from './one-page-pdf.ts';
import { orientedJpeg } from './sample-pictures.ts';

describe('papers', () => {
  it('are published under a name that tells, with a picture of the first page', async () => {
    using room = darkRoom();
    room.add('papers/Spring smith, 9 Sept.pdf', onePagePdf());
    const { plan, problems } = await room.build();
    expect(problems).toEqual([]);
    const paper = plan.paper('papers/Spring smith, 9 Sept.pdf');
    expect(paper).toMatchObject({ kind: 'pdf', pages: 1, bytes: statSync(room.at(paper?.file ?? '')).size });
    expect(paper?.file).toMatch(/^papers\/spring-smith-9-sept-[0-9a-f]{12}\.pdf$/u);
    expect(statSync(room.at(paper?.file ?? '')).ino).not.toBe(statSync(join(room.root, 'papers/Spring smith, 9 Sept.pdf')).ino);
    expect(paper?.firstPage).toMatchObject({ width: 1280, height: 640 });
    const left = await sharp(room.at(paper?.firstPage?.full.file ?? ''))
      .extract({ left: 100, top: 100, width: 64, height: 64 })
      .png()
      .toBuffer();
    const [red = 0, green = 255, blue = 255] = await middleOf(left);
    expect([red > 230, green < 20, blue < 20], `left half is red: ${[red, green, blue]}`).toEqual([true, true, true]);
  });

  it('may be pictures, which are rendered like any other', async () => {
    using room = darkRoom();
    room.add('papers/receipt.jpg', await orientedJpeg(6));
    const { plan } = await room.build();
    const paper = plan.paper('papers/receipt.jpg');
    expect(paper?.kind).toBe('picture');
    expect(room.names('site')).toContain(paper?.file);
  });

  it('of one name in two places are two files', async () => {
    using room = darkRoom();
    room.add('papers/receipt.pdf', onePagePdf('One'));
    room.add('sessions/a/receipt.pdf', onePagePdf('Two'));
    const { plan } = await room.build();
    expect(plan.paper('papers/receipt.pdf')?.file).not.toBe(plan.paper('sessions/a/receipt.pdf')?.file);
    expect(room.names('site/papers')).toHaveLength(2);
  });

  it('that cannot be opened are published without a picture', async () => {
    using room = darkRoom();
    room.add('papers/odd.pdf', '%PDF-1.4\nnothing that a reader could follow\n%%EOF\n');
    const { plan, problems } = await room.build();
    expect(problems).toEqual([]);
    expect(plan.paper('papers/odd.pdf')).toMatchObject({ pages: null, firstPage: null });
    expect(room.names('site')).toEqual([plan.paper('papers/odd.pdf')?.file]);
  });
});

describe('a file that keeps a worker too long', () => {
  it('is given up, and the next one is still unpacked', async () => {
    const decoder = openDecoder(1);
    const heic = readFileSync(new URL('./fixtures/turned-by-its-container.heic', import.meta.url));
    await expect(decoder.heic(heic)).rejects.toThrow('it took too long');
    await decoder.close();
    const patient = openDecoder();
    await expect(patient.heic(Buffer.from('no picture'))).rejects.toThrow(/not a HEIC/u);
    expect(await patient.heic(heic)).toMatchObject({ width: 320, height: 200 });
    await patient.close();
  });

  it('is told as one that is published as it is where a PDF cannot be looked through in time', async () => {
    const pdf = onePagePdf();
    const hasty = openDecoder(1);
    expect(await hasty.sealOf(pdf)).toBe('unread');
    await hasty.close();
    const patient = openDecoder();
    expect(await patient.sealOf(pdf)).toBeNull();
    await patient.close();
  });

  it('is not published where a PDF was found sound and cannot be cleaned in time', async () => {
    using room = darkRoom();
    room.add('papers/bill.pdf', onePagePdf());
    const { plan } = await room.build();
    const [paper] = plan.data.papers;
    if (paper === undefined) throw new Error('it has no paper');
    const hasty = openDecoder(1);
    const anew = openEntryCache(room.at('another-cache'), 'pictures');
    await expect(cleanedPaper(paper, room.root, anew, hasty)).rejects.toThrow(
      'cannot be cleaned of what it tells of its makers: it took too long',
    );
    await hasty.close();
  });
});
