// @ts-check
import { defineConfig } from 'astro/config';

/**
 * The record is compiled by code that runs as it is. Bundling it into the pages would cost every build and
 * move its files away from what they refer to.
 *
 * @returns {import('vite').Plugin}
 */
const recordStaysOutside = () => ({
  name: 'asfound:record-stays-outside',
  apply: 'build',
  enforce: 'pre',
  resolveId: (source) =>
    source === './default-site.ts' ? { id: new URL('src/site/default-site.ts', import.meta.url).href, external: true } : undefined,
});

export default defineConfig({
  output: 'static',
  // Every address names a file: `sessions/2031-03-12.html`, the same in `dev` and on disk.
  build: { format: 'preserve', inlineStylesheets: 'never' },
  trailingSlash: 'never',
  // The pages are written by the rules of JSX: a line break between elements is no space.
  compressHTML: 'jsx',
  devToolbar: { enabled: false },
  vite: { plugins: [recordStaysOutside()] },
});
