/** Astro, asked to make or serve the pages and nothing else: it sends nothing about the use of the program, and writes nothing into it. */
import { pathToFileURL } from 'node:url';
import type { AstroInlineConfig } from 'astro';
import { PROGRAM } from './tool-digest.ts';
import type { Workshop } from './workshop.ts';

/** Astro reports each run to its makers unless this is set. */
process.env.ASTRO_TELEMETRY_DISABLED = '1';
/** It asks for newer versions of itself unless this is set. */
process.env.ASTRO_DISABLE_UPDATE_CHECK = 'true';

/**
 * What every run has in common. Astro would load the configuration under a name that is new at each start, and Node keep what it
 * compiled of it for each.
 */
async function configOf({ folder }: Workshop, more: AstroInlineConfig): Promise<AstroInlineConfig> {
  const { default: own }: { default: AstroInlineConfig } = await import(pathToFileURL(`${PROGRAM}astro.config.mjs`).href);
  const vite = { ...own.vite, cacheDir: `${folder}/vite` };
  return { ...own, root: PROGRAM, configFile: false, logLevel: 'error', cacheDir: `${folder}/astro`, vite, ...more };
}

/** Makes pages. The process must stand in the workshop: there Astro puts their code. */
export async function buildWithAstro(workshop: Workshop, more: AstroInlineConfig): Promise<void> {
  const { build } = await import('astro');
  // Types are for whoever changes the program; they would be written into its folder, which may take no writing.
  await build(await configOf(workshop, more), { sync: false } as Parameters<typeof build>[1]);
}

/** Serves pages until it is stopped. */
export async function serveWithAstro(
  workshop: Workshop,
  more: AstroInlineConfig,
): Promise<Awaited<ReturnType<typeof import('astro').dev>>> {
  const { dev } = await import('astro');
  // Here Astro insists on writing types, so its root is where it may.
  const { folder } = workshop;
  const places = {
    root: folder,
    srcDir: `${PROGRAM}src`,
    publicDir: `${PROGRAM}public`,
  };
  return await dev(await configOf(workshop, { ...places, ...more }));
}
