// A plain Astro site over the same notes: the measure the bench holds Asfound against.
//
// It renders each note with the same Markdown steps and nothing else. What would cost it time that
// Asfound does not spend (highlighting, typographic quotes, a folder for each page) is off.
import { unified } from '@astrojs/markdown-remark';
import { defineConfig } from 'astro/config';
import rehypeSanitize from 'rehype-sanitize';
import { SAFE_HTML } from '../../../src/markdown/safe-html.ts';
import { presenting } from './presenting.ts';

const { BENCH_OUT, BENCH_CACHE } = process.env;
if (!BENCH_OUT || !BENCH_CACHE) throw new Error('BENCH_OUT and BENCH_CACHE name the folders to write to.');

export default defineConfig({
  root: import.meta.dirname,
  outDir: BENCH_OUT,
  cacheDir: BENCH_CACHE,
  build: { format: 'file' },
  devToolbar: { enabled: false },
  markdown: {
    syntaxHighlight: false,
    // The processor itself begins with remark-parse and remark-gfm and ends with rehype-raw and rehype-stringify.
    processor: unified({ gfm: true, smartypants: false, rehypePlugins: [[rehypeSanitize, SAFE_HTML], ...presenting] }),
  },
  vite: { cacheDir: `${BENCH_CACHE}/vite` },
});
