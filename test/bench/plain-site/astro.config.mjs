// A plain Astro site over the same notes: the measure the bench holds Asfound against.
//
// It renders each note with the same Markdown steps and nothing else. Highlighting and typographic
// quotes, which Asfound does not make, are off.
import { unified } from '@astrojs/markdown-remark';
import { defineConfig } from 'astro/config';
import rehypeSanitize from 'rehype-sanitize';
import { SAFE_HTML } from '../../../src/markdown/safe-html.ts';
import { measuredSite } from '../astro-site.mjs';
import { presenting } from './presenting.ts';

export default defineConfig({
  ...measuredSite(import.meta.dirname),
  markdown: {
    syntaxHighlight: false,
    // The processor itself begins with remark-parse and remark-gfm and ends with rehype-raw and rehype-stringify.
    processor: unified({ gfm: true, smartypants: false, rehypePlugins: [[rehypeSanitize, SAFE_HTML], ...presenting] }),
  },
});
