// A plain Astro site over the same notes: the measure the bench holds Asfound against.
//
// It renders each note with the same Markdown steps and nothing else. What would cost it time that
// Asfound does not spend (highlighting, typographic quotes, a folder for each page) is off.
import { unified } from '@astrojs/markdown-remark';
import { defineConfig } from 'astro/config';
import rehypeSanitize from 'rehype-sanitize';
import { remarkPlainLinks } from './plain-links.ts';

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
    // The processor itself ends with rehype-raw and rehype-stringify.
    processor: unified({ gfm: true, smartypants: false, remarkPlugins: [remarkPlainLinks], rehypePlugins: [rehypeSanitize] }),
  },
  vite: { cacheDir: `${BENCH_CACHE}/vite` },
});
