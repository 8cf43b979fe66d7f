// A plain Astro site that leaves pictures to Astro. It is copied beside the pictures, which lie in src/pictures.
export default { devToolbar: { enabled: false }, cacheDir: './cache', outDir: './site' };
