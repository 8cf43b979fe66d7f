/** The scripts that pages load: classic ones of fixed names, since modules do not load from a disk. */
import { readdirSync, writeFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { makeFolder } from '../disk/folders.ts';
import type { EditionStore, Texts } from './edition-store.ts';
import { noticesOf } from './notices.ts';
import { PROGRAM } from './tool-digest.ts';

/**
 * Writes every script.
 *
 * @param into the folder for them
 * @param store see `programScripts`
 * @throws what the bundler or the file system throws
 */
export async function writeScripts(into: string, store: EditionStore | null = null): Promise<void> {
  const scripts = await programScripts(store);
  makeFolder(into);
  for (const [name, code] of Object.entries(scripts)) writeFileSync(join(into, name), code);
}

/**
 * Every script by its name: the program's own, the same whatever journal a site is made from.
 *
 * @param store scripts that were bundled before; without it they are bundled now
 */
export async function programScripts(store: EditionStore | null = null): Promise<Texts> {
  const kept = store?.read('scripts') ?? null;
  const scripts = kept ?? (await bundled());
  if (kept === null) store?.write('scripts', scripts);
  return scripts;
}

async function bundled(): Promise<Texts> {
  const folder = join(PROGRAM, 'src/client');
  const sources = readdirSync(folder).filter((name) => /^[a-z-]+\.ts$/.test(name));
  const { rolldown } = await import('rolldown');
  const scripts: Record<string, string> = {};
  for (const source of sources) {
    const bundle = await rolldown({
      input: join(folder, source),
      logLevel: 'silent',
      // A script shares views with the pages. What those do in making a site is no part of it: nothing in the browser uses that.
      external: [/^node:/, /default-site\.ts$/],
      treeshake: { moduleSideEffects: 'no-external' },
    });
    const { output } = await bundle.generate({ format: 'iife', minify: true, postBanner: ({ moduleIds }) => noticesOf(moduleIds) });
    await bundle.close();
    scripts[`${basename(source, '.ts')}.js`] = output[0].code;
  }
  return scripts;
}
