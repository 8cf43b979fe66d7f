import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it, vi } from 'vitest';
import { renderOnDemand } from '../../src/photos/render-on-demand.ts';
import { renderPicture } from '../../src/photos/render-picture.ts';
import { darkRoom } from './dark-room.ts';
import { onePagePdf } from './one-page-pdf.ts';
import { jpegTaken } from './sample-pictures.ts';

// The real one, counted.
vi.mock('../../src/photos/render-picture.ts', async (original) => {
  const real = await original<typeof import('../../src/photos/render-picture.ts')>();
  return { ...real, renderPicture: vi.fn(real.renderPicture) };
});

describe('a picture that a page under way asks for', () => {
  it('is rendered then, once for all who ask at the same time, and the build finds it done', async () => {
    using room = darkRoom();
    room.add('sessions/a/one.jpg', await jpegTaken('2031:03:12 21:10:00', null, 600));
    const plan = await room.plan();
    const rendition = plan.rendition('sessions/a/one.jpg');
    const names = [rendition?.fallback.file ?? '', ...(rendition?.sources[0]?.srcset ?? []).map((one) => one.file)];
    const demand = renderOnDemand(room.root, room.cache);
    const files = await Promise.all(names.map((name) => demand.fileFor(plan, name)));
    for (const file of files) expect(readFileSync(file ?? '').length).toBeGreaterThan(100);
    expect(renderPicture).toHaveBeenCalledTimes(1);
    expect(new Set(files.map((file) => join(file ?? '', '..'))).size).toBe(1);
    await demand.close();
    expect(await room.build()).toMatchObject({ rendered: 0, reused: 1 });
  });

  it('is no other file of the disk, whatever is asked for', async () => {
    using room = darkRoom();
    room.add('papers/bill.pdf', onePagePdf());
    room.add('papers/other.pdf', onePagePdf('Other'));
    const plan = await room.plan();
    const demand = renderOnDemand(room.root, room.cache);
    const bill = readFileSync((await demand.fileFor(plan, plan.paper('papers/bill.pdf')?.file ?? '')) ?? '');
    expect(bill.includes('%PDF-') && !bill.includes('Nobody')).toBe(true);
    for (const file of ['papers/bill.pdf', 'pictures/../papers/bill.pdf', '../journal/papers/bill.pdf', '']) {
      expect(await demand.fileFor(plan, file)).toBeNull();
    }
    await demand.close();
  });

  it('that cannot be unpacked is refused with the reason, and asked for again when it was put right', async () => {
    using room = darkRoom();
    room.add('sessions/a/one.jpg', await jpegTaken('2031:03:12 21:10:00', null));
    const plan = await room.plan();
    const file = plan.rendition('sessions/a/one.jpg')?.full.file ?? '';
    const demand = renderOnDemand(room.root, room.cache);
    room.add('sessions/a/one.jpg', await jpegTaken('2031:03:12 21:11:00', null));
    await expect(demand.fileFor(plan, file)).rejects.toThrow('changed while the site was being made');
    room.add('sessions/a/one.jpg', await jpegTaken('2031:03:12 21:10:00', null));
    expect(await demand.fileFor(plan, file)).not.toBeNull();
    await demand.close();
  });
});
