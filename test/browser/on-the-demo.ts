/** The built demo as a reader meets it: its files, in a real browser, from a server and from a disk. */
import { afterAll, beforeAll, describe } from 'vitest';
import type { Bench } from './bench.ts';
import { startBrowser } from './browser.ts';
import { builtDemo } from './built-site.ts';
import { openingIn } from './readers.ts';
import { serveFolder } from './static-server.ts';

/** Gives groups of tests the demo, a browser and a server of their own. */
export function onTheDemo(...groups: readonly ((bench: Bench) => void)[]): void {
  describe('the demo site', () => {
    const bench = {} as Bench;
    beforeAll(async () => {
      bench.site = builtDemo();
      bench.browser = await startBrowser();
      bench.page = openingIn(bench.browser);
      bench.served = await serveFolder(bench.site.folder, '/some/where/');
    });
    afterAll(async () => {
      await bench.browser?.close();
      await bench.served?.stop();
    });
    for (const group of groups) group(bench);
  });
}
