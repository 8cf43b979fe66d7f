/** Pages of many pictures as a telephone meets them. */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Bench } from './bench.ts';
import { startBrowser } from './browser.ts';
import { buildPictureJournal, IN_PROSE, PICTURES, UNDER_PICTURES, UNMENTIONED } from './picture-journal.ts';
import { serveFolder } from './static-server.ts';
import { weigh } from './weigh.ts';

/** What a session page of twelve pictures may cost before it is scrolled: all that comes over the wire, uncompressed. */
const MOST_BYTES = 400_000;

describe('a journal of many pictures', { timeout: 120_000 }, () => {
  const bench = {} as Bench;
  beforeAll(async () => {
    bench.site = await buildPictureJournal();
    bench.browser = await startBrowser();
    bench.served = await serveFolder(bench.site.folder);
  }, 240_000);
  afterAll(async () => {
    await bench.browser?.close();
    await bench.served?.stop();
    bench.site?.remove();
  });

  describe.each([IN_PROSE, UNDER_PICTURES, UNMENTIONED])('the page of %s', (session) => {
    it.each([2, 3])('weighs less than 400 kB before it is scrolled, on a telephone of %d dots to a pixel', async (dots) => {
      const { bytes, kinds, pictures } = await weigh(bench, `sessions/${session}.html`, dots);
      expect(pictures).toBe(PICTURES);
      expect(bytes, JSON.stringify(kinds)).toBeLessThan(MOST_BYTES);
    });
  });
});
