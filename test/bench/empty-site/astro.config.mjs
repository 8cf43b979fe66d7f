// As many pages as a record has with nothing on them: what Astro itself costs.
import { defineConfig } from 'astro/config';

const { BENCH_OUT, BENCH_CACHE } = process.env;
if (!BENCH_OUT || !BENCH_CACHE) throw new Error('BENCH_OUT and BENCH_CACHE name the folders to write to.');

export default defineConfig({
  root: import.meta.dirname,
  outDir: BENCH_OUT,
  cacheDir: BENCH_CACHE,
  build: { format: 'file' },
  devToolbar: { enabled: false },
  vite: { cacheDir: `${BENCH_CACHE}/vite` },
});
