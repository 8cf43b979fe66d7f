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
 * @param store scripts that were bundled before; without it they are bundled now
 * @throws what the bundler or the file system throws
 */
export async function writeScripts(into: string, store: EditionStore | null = null): Promise<void> {
  const kept = store?.read('scripts') ?? null;
  const scripts = kept ?? (await bundled());
  if (kept === null) store?.write('scripts', scripts);
  makeFolder(into);
  for (const [name, code] of Object.entries(scripts)) writeFileSync(join(into, name), code);
}

async function bundled(): Promise<Texts> {
  const folder = join(PROGRAM, 'src/client');
  const sources = readdirSync(folder).filter((name) => /^[a-z-]+\.ts$/.test(name));
  const { rolldown } = await import('rolldown');
  const scripts: Record<string, string> = {};
  for (const source of sources) {
    const bundle = await rolldown({ input: join(folder, source), logLevel: 'silent' });
    const { output } = await bundle.generate({ format: 'iife', minify: true, postBanner: ({ moduleIds }) => noticesOf(moduleIds) });
    await bundle.close();
    scripts[`${basename(source, '.ts')}.js`] = output[0].code;
  }
  return scripts;
}
