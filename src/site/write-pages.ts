/** The pages of a build: Astro renders each that is new, this decides their order and writes them. */
import type { AstroIntegration, PathWithRoute } from 'astro';
import type { Address } from './addresses.ts';
import { fileWriter } from './file-writer.ts';
import type { KeptPages } from './kept/kept-pages.ts';
import type { PageMaker } from './page-code.ts';

/** Often enough to be seen moving. */
const TOLD_EVERY = 50;

/**
 * Takes the pages out of Astro's own loop, which waits for each to be written before it makes the next.
 *
 * @param write writes all pages that there are
 * @param onCode told when the code of the pages stands in the folder that Astro is run in, unless Astro would add to the pages besides
 */
export function insteadOfAstro(write: (maker: PageMaker) => Promise<void>, onCode: () => void): AstroIntegration {
  let styles = (): boolean => true;
  return {
    name: 'asfound-pages',
    hooks: {
      'astro:build:setup': ({ pages }) => {
        styles = () => [...pages.values()].some((page) => page.styles.length > 0);
      },
      'astro:build:start': ({ setPrerenderer }) =>
        setPrerenderer((astro) => ({
          ...astro,
          name: 'asfound',
          getStaticPaths: async () => {
            if (!styles()) onCode();
            await write(astro);
            // None are left for Astro.
            return [];
          },
        })),
    },
  };
}

export interface PagesToWrite {
  /** The folder of the site. */
  readonly into: string;
  /** Pages that the copy does without. */
  readonly without: ReadonlySet<Address>;
  /** The record's day as it stands in pages. */
  readonly day: string;
  /** Pages of the last build. */
  readonly kept: KeptPages;
  /** Told how many pages are done, of how many. */
  onPage(done: number, total: number): void;
}

/**
 * Writes every page: as it is kept where it would be the same, else newly made.
 *
 * @throws what went wrong with a page, or the file system's error
 */
export async function writePages(maker: PageMaker, { into, without, day, kept, onPage }: PagesToWrite): Promise<void> {
  const paths = (await maker.getStaticPaths()).filter((path) => !without.has(fileOf(path).slice(1)));
  const files = fileWriter(into, day);
  try {
    for (const [n, path] of paths.entries()) {
      if (n % TOLD_EVERY === 0) onPage(n, paths.length);
      const name = plainAddress(fileOf(path));
      const page = name.slice(1);
      const before = await kept.take(page);
      if (before !== null) {
        await files.write(name, before, 'kept');
        continue;
      }
      const bytes = await bytesOf(maker, path, name);
      const keep = kept.made(page);
      await files.write(name, bytes, keep === null ? 'plain' : 'to-keep', keep ?? undefined);
    }
  } finally {
    await files.end();
  }
  kept.save();
}

/** The address of a page as `build.format: 'preserve'` has it; an endpoint's names its file itself. */
function fileOf({ pathname, route }: PathWithRoute): string {
  if (route.type === 'endpoint') return pathname;
  return pathname === '/' || pathname === '' ? '/index.html' : `${pathname}.html`;
}

/**
 * Pages are named by words of ours, dates and ids, none of which needs encoding: what does came from elsewhere.
 *
 * @throws Error for it
 */
function plainAddress(name: string): string {
  if (!/^\/[a-z0-9./-]+$/.test(name)) throw new Error(`${JSON.stringify(name)} is no address of a page`);
  return name;
}

async function bytesOf(maker: PageMaker, { pathname, route }: PathWithRoute, name: string): Promise<Uint8Array> {
  const url = new URL(pathname === '' || name === '/index.html' ? '/' : name, 'http://localhost');
  const rendered = await maker.render(new Request(url), { routeData: route });
  const response = rendered instanceof Response ? rendered : rendered.response;
  if (!response.ok && route.route !== '/404') throw new Error(`${name}: the page answers with ${response.status}`);
  return response.bytes();
}
