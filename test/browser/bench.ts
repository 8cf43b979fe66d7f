import type { Browser } from 'playwright-core';
import type { DemoSite } from './demo-site.ts';
import type { Served } from './static-server.ts';

/** What every group of tests is given; filled before the first of them runs. */
export interface Bench {
  site: DemoSite;
  browser: Browser;
  served: Served;
}
