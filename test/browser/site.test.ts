/** The built demo as a reader meets it: its files, in a real browser, from a server and from a disk. */
import { afterAll, beforeAll, describe } from 'vitest';
import type { Bench } from './bench.ts';
import { startBrowser } from './browser.ts';
import { buildDemo } from './built-site.ts';
import { accessibility } from './of-the-site/accessibility.ts';
import { asAt } from './of-the-site/as-at.ts';
import { bills } from './of-the-site/bills.ts';
import { figures } from './of-the-site/figures.ts';
import { fromDisk } from './of-the-site/from-disk.ts';
import { keyboard } from './of-the-site/keyboard.ts';
import { links } from './of-the-site/links.ts';
import { lives } from './of-the-site/lives.ts';
import { onAPhone } from './of-the-site/on-a-phone.ts';
import { onPaper } from './of-the-site/on-paper.ts';
import { onTheWeb } from './of-the-site/on-the-web.ts';
import { pictures } from './of-the-site/pictures.ts';
import { search } from './of-the-site/search.ts';
import { validity } from './of-the-site/validity.ts';
import { withoutScript } from './of-the-site/without-script.ts';
import { serveFolder } from './static-server.ts';

describe('the demo site', { timeout: 120_000 }, () => {
  const bench = {} as Bench;
  beforeAll(async () => {
    bench.site = await buildDemo();
    bench.browser = await startBrowser();
    bench.served = await serveFolder(bench.site.folder, '/some/where/');
  }, 240_000);
  afterAll(async () => {
    await bench.browser?.close();
    await bench.served?.stop();
    bench.site?.remove();
  });

  for (const group of [
    links,
    figures,
    bills,
    validity,
    onTheWeb,
    fromDisk,
    withoutScript,
    keyboard,
    search,
    pictures,
    onAPhone,
    onPaper,
    accessibility,
    asAt,
    lives,
  ])
    group(bench);
});
