/** Papers that would keep a reader for ever, or fill the memory. */
import { readFileSync } from 'node:fs';
import { deflateSync } from 'node:zlib';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { cleanPdf, sealOf } from '../../src/photos/clean-pdf.ts';
import { openDecoder } from '../../src/photos/decoder.ts';
import { buildPictures, checkPictures, preparePictures } from '../../src/photos/pictures.ts';
import { leaksOfFile } from '../../src/site/proof/prove.ts';
import { Unproved } from '../../src/site/proof/text-of-pdf.ts';
import { previewOf } from '../../src/write/preview.ts';
import { compileFiles, NOTE, note } from '../journal/base.ts';
import { type DarkRoom, darkRoom } from './dark-room.ts';
import { onePagePdf, packedPdf, pageDrawnBy, pdfOf, streamOf } from './one-page-pdf.ts';

const MB = 1024 * 1024;
const FLATE = '/Filter /FlateDecode ';

/** What a build of a journal that names one paper tells, and the paper as it is published. */
async function publishedOf(room: DarkRoom, bytes: Buffer) {
  room.add('papers/bill.pdf', bytes);
  const { record } = compileFiles({
    more: { [NOTE]: note('papers: [{ paper: bill.pdf, kind: receipt }]') },
    assets: room.names('journal'),
  });
  if (record === null) throw new Error('the journal of the test does not compile');
  const { journal } = record;
  const checked = await checkPictures(journal, room.names('journal'), room);
  const prepared = await preparePictures(journal, room);
  const built = await buildPictures(journal, prepared.plan, room.site, room);
  const paper = built.plan.paper('papers/bill.pdf');
  const said = (diagnostics: typeof checked) => diagnostics.map(({ code, place, message }) => `${code} ${place.line} ${message}`);
  return {
    checked: said(checked),
    told: said([...prepared.diagnostics, ...built.diagnostics]),
    paper,
    bytes: readFileSync(room.at(paper?.file ?? '')),
  };
}

describe('a tree of pages that names itself', () => {
  const circle = pdfOf(['<< /Type /Catalog /Pages 2 0 R >>', '<< /Type /Pages /Kids [2 0 R] /Count 1 >>']);

  it('has no page with a size, and no reader is told of one', async () => {
    const decoder = openDecoder();
    await expect(decoder.measurePdf(circle)).rejects.toThrow('its first page has no size');
    await expect(decoder.drawPdf(circle, 600)).rejects.toThrow('its first page has no size');
    await decoder.close();
  });

  it('is told, and published as it is, without pages and without a picture', async () => {
    using room = darkRoom();
    const { checked, told, paper, bytes } = await publishedOf(room, circle);
    const unread = 'A910 4 papers/bill.pdf cannot be followed well enough to be written again, so it is published as it is.';
    expect([checked, told]).toEqual([[unread], [unread]]);
    expect(paper).toMatchObject({ pages: null, firstPage: null });
    expect(bytes.equals(circle)).toBe(true);
    expect(await previewOf(`${room.root}/papers/bill.pdf`)).toBeNull();
  });
});

describe('a page that cannot be drawn', () => {
  it('is told: its paper is cleaned and published without a picture', async () => {
    using room = darkRoom();
    const thin = pdfOf([...pageDrawnBy(streamOf(Buffer.alloc(0)), '1 1000000'), '<< /Author (Secret Writer) >>'], '/Info 5 0 R ');
    const { checked, told, paper, bytes } = await publishedOf(room, thin);
    expect(checked).toEqual([]);
    expect(told).toEqual(['A917 4 The first page of papers/bill.pdf cannot be drawn, so the paper is published without a picture of it.']);
    expect(paper).toMatchObject({ pages: 1, firstPage: null });
    expect(bytes.includes('Secret Writer')).toBe(false);
  });

  it('for the memory that it takes, drawn by several streams, is told the same', async () => {
    using room = darkRoom();
    // Each mark keeps all that it stands in: few of them take much, and soon.
    const drawing = streamOf(deflateSync(Buffer.alloc(30 * MB, '/A BMC ')), FLATE);
    const [catalogue = '', tree = '', page = ''] = pageDrawnBy(drawing);
    const ofMany = page.replace('/Contents 4 0 R', '/Contents [4 0 R 5 0 R 6 0 R 7 0 R]');
    const { told, paper } = await publishedOf(room, pdfOf([catalogue, tree, ofMany, ...Array.from({ length: 4 }, () => drawing)]));
    expect(told).toEqual(['A917 4 The first page of papers/bill.pdf cannot be drawn, so the paper is published without a picture of it.']);
    expect(paper).toMatchObject({ pages: null, firstPage: null });
  });
});

describe('a paper that unpacks to hundreds of megabytes', () => {
  it('is told before it is opened, and published as it is', async () => {
    using room = darkRoom();
    const bomb = packedPdf(300);
    expect(bomb.length).toBeLessThan(MB);
    const { checked, told, paper, bytes } = await publishedOf(room, bomb);
    const unpacks = 'A910 4 papers/bill.pdf unpacks to more than any paper holds, so it is published as it is.';
    expect([checked, told]).toEqual([[unpacks], [unpacks]]);
    expect(paper).toMatchObject({ pages: null, firstPage: null });
    expect(bytes.equals(bomb)).toBe(true);
    expect(await previewOf(`${room.root}/papers/bill.pdf`)).toBeNull();
    await expect(leaksOfFile(paper?.file ?? '', bytes, [{ text: 'Secret', what: 'private' }])).rejects.toThrow(Unproved);
  });

  const zeros = (megabytes: number, more = '') => Buffer.concat([Buffer.from(`6 0 [${more}`), Buffer.alloc(megabytes * MB, '0 ')]);
  const small = streamOf(deflateSync(zeros(30)), FLATE);
  const OBJECTS = '/Type /ObjStm /N 1 /First 4 ';
  it.each([
    ['packed twice', streamOf(deflateSync(deflateSync(zeros(100))), '/Filter [/FlateDecode /FlateDecode] ')],
    ['damaged behind its end', streamOf(deflateSync(zeros(100)).subarray(0, -40), FLATE)],
    ['in many small ones', Buffer.concat(Array.from({ length: 20 }, () => small))],
    ['as objects, each of which takes far more than its length', streamOf(deflateSync(zeros(16)), OBJECTS + FLATE)],
    ['as objects that are not packed', Buffer.from(`[${'0 '.repeat(5 * MB)}]`)],
    ['as a picture of too many pixels', streamOf(deflateSync(Buffer.alloc(9)), `/Subtype /Image /Width 99999 /Height 99999 ${FLATE}`)],
  ])('is found out: %s', async (_, object) => {
    const bytes = pdfOf([...pageDrawnBy(streamOf(Buffer.alloc(0))), object]);
    expect(await sealOf(bytes)).toBe('unpacks');
    expect(Buffer.from(await cleanPdf(bytes)).equals(bytes)).toBe(true);
  });

  it('is another thing than a scan of many pages, or one that holds a file', async () => {
    const scan = streamOf(deflateSync(Buffer.alloc(60 * MB)), `/Subtype /Image /Width 8000 /Height 7800 ${FLATE}`);
    const attached = streamOf(deflateSync(Buffer.alloc(60 * MB)), `/Type /EmbeddedFile ${FLATE}`);
    const drawing = streamOf(deflateSync(Buffer.alloc(20 * MB, 'q Q ')), FLATE);
    expect(await sealOf(pdfOf([...pageDrawnBy(drawing), ...Array.from({ length: 12 }, () => scan), attached]))).toBeNull();
  });
});

describe('a page that gets past all that', () => {
  afterEach(() => void vi.useRealTimers());

  it('takes no more than a gigabyte while it is opened', async () => {
    const decoder = openDecoder();
    const before = process.memoryUsage().rss;
    let most = 0;
    const watch = setInterval(() => {
      most = Math.max(most, process.memoryUsage().rss - before);
    }, 20);
    await expect(decoder.drawPdf(packedPdf(150, 'q '), 600)).rejects.toThrow();
    clearInterval(watch);
    expect(most).toBeLessThan(1.4 * 1024 ** 3);
    expect(await decoder.measurePdf(onePagePdf())).toMatchObject({ count: 1 });
    await decoder.close();
  });

  it('is given up after twenty seconds', async () => {
    vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] });
    const decoder = openDecoder();
    const drawn = decoder.drawPdf(packedPdf(8), 1280).catch((error: unknown) => String(error));
    // The worker is waited for; after that no time passes but what is let pass.
    await vi.waitFor(() => expect(vi.getTimerCount()).toBe(1));
    await vi.advanceTimersByTimeAsync(20_000);
    expect(await drawn).toBe('Error: it took too long');
    await decoder.close();
  });
});
