import { mkdir, readdir, rm, symlink } from 'node:fs/promises';
import { join } from 'node:path';
import type { Command } from './measure-process.ts';

const PROJECT = join(import.meta.dirname, '../..');
const ASFOUND = join(PROJECT, 'src/cli/asfound.mjs');
const ASTRO = join(PROJECT, 'node_modules/astro/bin/astro.mjs');
const PLAIN_SITE = join(import.meta.dirname, 'plain-site');
const EMPTY_SITE = join(import.meta.dirname, 'empty-site');

/** A site generator that is measured: how to start it, and how to make it forget. */
export interface Contender {
  readonly name: string;
  readonly build: Command;
  /** Where it builds to. */
  readonly site: string;
  /** Empties its caches and takes its site away. */
  forget(): Promise<void>;
}

/**
 * Makes the folder of a contender that forgot everything. The packages are linked into it, because
 * Astro loads what it prerenders from there.
 */
export async function freshFolder(contender: Contender): Promise<void> {
  await contender.forget();
  const folder = join(contender.site, '..');
  await mkdir(folder, { recursive: true });
  await symlink(join(PROJECT, 'node_modules'), join(folder, 'node_modules'), 'junction');
}

/**
 * Makes sure that a site was built and holds a page for every note.
 *
 * @returns how many pages it holds
 * @throws when there are fewer
 */
export async function expectPages(contender: Contender, notes: number): Promise<number> {
  const files = await readdir(contender.site, { recursive: true });
  const pages = files.filter((file) => file.endsWith('.html')).length;
  if (pages < notes) throw new Error(`${contender.name} built ${pages} pages from ${notes} notes.`);
  return pages;
}

/**
 * Asfound over a journal.
 *
 * @param journal the journal's folder
 * @param work a folder of its own for site and caches
 */
export function asfound(journal: string, work: string): Contender & { readonly check: Command } {
  // A day after all notes, tonight's too.
  const env = { ASFOUND_CACHE: join(work, 'cache'), ASTRO_TELEMETRY_DISABLED: '1', SOURCE_DATE_EPOCH: String(Date.UTC(2027, 0, 1) / 1000) };
  return {
    name: 'Asfound',
    check: { argv: [ASFOUND, 'check', '--content', journal], env },
    site: join(work, 'site'),
    build: { argv: [ASFOUND, 'build', '--content', journal, '--out', join(work, 'site')], env },
    forget: () => rm(work, { recursive: true, force: true }),
  };
}

/** How `asfound dev` is started for a journal. */
export function asfoundDev(journal: string, work: string, port: number): Command {
  const env = { ASFOUND_CACHE: join(work, 'cache'), ASTRO_TELEMETRY_DISABLED: '1' };
  return { argv: [ASFOUND, 'dev', '--content', journal, '--port', String(port)], env };
}

/** The plain Astro site over the notes of the same journal. */
export function plainSite(journal: string, work: string): Contender {
  return astroSite('plain', PLAIN_SITE, work, { BENCH_NOTES: join(journal, 'sessions') });
}

/** An Astro site of so many pages with nothing on them. */
export function emptySite(pages: number, work: string): Contender {
  return astroSite('empty', EMPTY_SITE, work, { BENCH_PAGES: String(pages) });
}

function astroSite(name: string, root: string, work: string, settings: Readonly<Record<string, string>>): Contender {
  const env = { ...settings, BENCH_OUT: join(work, 'site'), BENCH_CACHE: join(work, 'cache'), ASTRO_TELEMETRY_DISABLED: '1' };
  return {
    name,
    site: join(work, 'site'),
    build: { argv: [ASTRO, 'build', '--silent', '--root', root], env },
    forget: async () => {
      await rm(work, { recursive: true, force: true });
      await rm(join(root, '.astro'), { recursive: true, force: true });
    },
  };
}
