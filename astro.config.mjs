// @ts-check
import { pathToFileURL } from 'node:url';
import { defineConfig } from 'astro/config';

/**
 * What is written in TypeScript runs as it is, one instance of it for the pages and for the commands: what was worked out of
 * a record is there for both. Only the pages, layouts and components are compiled.
 *
 * @returns {import('vite').Plugin}
 */
const typescriptStaysOutside = () => ({
  name: 'asfound:typescript-stays-outside',
  apply: 'build',
  enforce: 'pre',
  resolveId: (source, importer) => {
    if (importer === undefined || !/^\.{1,2}\/.*\.ts$/.test(source)) return undefined;
    const id = new URL(source, pathToFileURL(importer.replace(/\?.*$/, ''))).href;
    return id.startsWith(SOURCES) ? { id, external: true } : undefined;
  },
});

/** Of the program itself, but for the pages, which Astro compiles though they be written in TypeScript. */
const SOURCES = new URL('src/', import.meta.url).href;

export default defineConfig({
  output: 'static',
  // Every address names a file: `sessions/2031-03-12.html`, the same in `dev` and on disk.
  build: { format: 'preserve', inlineStylesheets: 'never' },
  trailingSlash: 'never',
  // The pages are written by the rules of JSX: a line break between elements is no space.
  compressHTML: 'jsx',
  devToolbar: { enabled: false },
  vite: { plugins: [typescriptStaysOutside()] },
});
