/**
 * The code of the pages, as Astro compiles it. It holds nothing of a journal, and compiling takes longer than making
 * some hundreds of pages, so it is kept and the next build makes its pages by it.
 */
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { AstroPrerenderer } from 'astro';
import { makeFolder } from '../disk/folders.ts';
import type { Texts } from './edition-store.ts';
import { laidOnce } from './laid-code.ts';

/** What makes pages: Astro's own within a build, or kept code. */
export type PageMaker = Pick<AstroPrerenderer, 'getStaticPaths' | 'render'>;

/** The folder, below the one it is run in, that Astro puts the code into while it makes pages. */
const CODE = '.prerender';
const ENTRY = /^prerender-entry[^/]*\.mjs$/;

/**
 * Reads the code that a running build made.
 *
 * @param workshop the folder that Astro is run in
 * @returns null when it is not there as this program knows it: then it is compiled each time
 */
export function compiledCode(workshop: string): Texts | null {
  // The packages are linked into the folder and are not looked through.
  const folder =
    codeIn(workshop) ??
    readdirSync(workshop)
      .filter((name) => name !== 'node_modules')
      .flatMap((name) => codeIn(join(workshop, name)) ?? [])[0];
  if (folder === undefined) return null;
  const files = readdirSync(folder, { recursive: true, withFileTypes: true }).filter((entry) => entry.isFile());
  const paths = files.map(({ parentPath, name }) =>
    join(parentPath, name)
      .slice(folder.length + 1)
      .replaceAll('\\', '/'),
  );
  const isCode = paths.every((path) => path.endsWith('.mjs')) && paths.some((path) => ENTRY.test(path));
  return isCode ? Object.fromEntries(paths.sort().map((path) => [path, readFileSync(join(folder, path), 'utf8')])) : null;
}

function codeIn(folder: string): string | undefined {
  const entries = readdirSync(folder, { withFileTypes: true });
  return entries.some((entry) => entry.isDirectory() && entry.name === CODE) ? join(folder, CODE) : undefined;
}

/**
 * Sets kept code up.
 *
 * @param home where its files lie from one build to the next, @see laidOnce
 * @param workshop an empty folder from which the packages of the program are found, for a process that has made pages before:
 *   nothing of an earlier journal is remembered by code in a folder that no build had
 * @throws what the code throws when it is loaded
 */
export async function pageMakerOf(code: Texts, home: string, workshop: string): Promise<PageMaker> {
  const folder = laidOnce(code, home) ?? laidIn(join(workshop, CODE), code);
  const entry = Object.keys(code).find((path) => ENTRY.test(path));
  if (entry === undefined) throw new Error('the code of the pages has no entry');
  const { app } = (await import(pathToFileURL(join(folder, entry)).href)) as { app: PageApp };
  // No page has style sheets or scripts that Astro would have to add: they are linked by name.
  app.setInternals({ pagesByKeys: new Map() });
  app.setOptions({ settings: { scripts: [] }, logger: { options: { destination: TELLS_ERRORS } } });
  const { StaticPaths } = await import('astro/runtime/prerender/static-paths.js');
  return {
    getStaticPaths: () => new StaticPaths(app as never).getAll(),
    render: (request, { routeData }) => app.render(request, { routeData }),
  };
}

function laidIn(folder: string, code: Texts): string {
  for (const [path, text] of Object.entries(code)) {
    makeFolder(dirname(join(folder, path)));
    writeFileSync(join(folder, path), text);
  }
  return folder;
}

/** Of what Astro compiles for a build, as much as is used here. */
interface PageApp {
  setInternals(internals: { readonly pagesByKeys: ReadonlyMap<string, unknown> }): void;
  setOptions(options: {
    readonly settings: { readonly scripts: readonly unknown[] };
    readonly logger: { readonly options: { readonly destination: typeof TELLS_ERRORS } };
  }): void;
  render(request: Request, options: { readonly routeData: unknown }): Promise<Response>;
}

const TELLS_ERRORS = {
  write: ({ level, message }: { readonly level: string; readonly message: string }): void => {
    if (level === 'error') process.stderr.write(`${message}\n`);
  },
};
