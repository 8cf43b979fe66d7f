/** Unpacks the browser and builds the demo, all of it, before the first browser test, for all of them; a site that is already built is taken from `ASFOUND_TEST_SITE`. */
import type { TestProject } from 'vitest/node';
import { unpackBrowser } from './browser.ts';
import { buildSite } from './built-site.ts';

declare module 'vitest' {
  export interface ProvidedContext {
    /** The folder that the demo was built into. */
    demo: string;
  }
}

export default async function setup(project: TestProject): Promise<() => void> {
  await unpackBrowser();
  const built = process.env.ASFOUND_TEST_SITE;
  if (built !== undefined) {
    project.provide('demo', built);
    return () => undefined;
  }
  const site = await buildSite(['--copy', 'workshop']);
  project.provide('demo', site.folder);
  return site.remove;
}
