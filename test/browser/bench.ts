import type { Browser } from 'playwright-core';
import type { BuiltSite } from './built-site.ts';
import type { Opening } from './readers.ts';
import type { Served } from './static-server.ts';

/** What every group of tests is given; filled before the first of them runs. */
export interface Bench {
  site: BuiltSite;
  browser: Browser;
  page: Opening;
  served: Served;
}
