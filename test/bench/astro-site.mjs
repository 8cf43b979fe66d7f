/**
 * What the measured Astro sites have in common: where they build to, and what would cost them time that
 * Asfound does not spend (a folder for each page, the toolbar) is off.
 *
 * @param {string} root the folder of the site
 * @returns {import('astro').AstroUserConfig}
 */
export function measuredSite(root) {
  const { BENCH_OUT, BENCH_CACHE } = process.env;
  if (!BENCH_OUT || !BENCH_CACHE) throw new Error('BENCH_OUT and BENCH_CACHE name the folders to write to.');
  return {
    root,
    outDir: BENCH_OUT,
    cacheDir: BENCH_CACHE,
    build: { format: 'file' },
    devToolbar: { enabled: false },
    vite: { cacheDir: `${BENCH_CACHE}/vite` },
  };
}
