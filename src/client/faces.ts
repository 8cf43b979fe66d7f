/**
 * A page keeps the faces that its first words are set in, so that nothing moves while it is read. On the web those that every
 * page needs are asked for before the style sheet has been read, to be there by then; from a disk they are there a moment later,
 * whatever it is, and are taken then. Runs before the page is shown: it has no other way to tell the one from the other.
 */
const NEEDED = ['source-serif-4-latin-wght-normal', 'barlow-semi-condensed-latin-400-normal'];

function askFor(rel: string, href: string): void {
  const link = document.createElement('link');
  link.rel = rel;
  link.href = href;
  if (rel === 'preload') Object.assign(link, { as: 'font', type: 'font/woff2', crossOrigin: 'anonymous' });
  document.head.append(link);
}

const here = document.currentScript;
if (here instanceof HTMLScriptElement) {
  const at = (file: string): string => new URL(`../${file}`, here.src).href;
  if (location.protocol === 'file:') askFor('stylesheet', at('css/faces-from-disk.css'));
  else for (const face of NEEDED) askFor('preload', at(`fonts/${face}.woff2`));
}
