/** Sites for the browser tests, built by the command that users have. */
import { execFile } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { inject } from 'vitest';

export interface BuiltSite {
  readonly folder: string;
  /** Every page, as a path from the root of the site. */
  readonly pages: readonly string[];
  remove(): void;
}

const COMMAND = new URL('../../src/cli/asfound.mjs', import.meta.url).pathname;

/** The demo, built before the tests. */
export function builtDemo(): BuiltSite {
  const folder = inject('demo');
  return { folder, pages: pagesOf(folder), remove: () => undefined };
}

/** Builds a journal that holds nothing but what every journal must. */
export async function buildBare(): Promise<BuiltSite> {
  const journal = mkdtempSync(join(tmpdir(), 'asfound-bare-'));
  const lines = ['title: Bare', 'arrived: 2026-01-01', 'currency: GBP', 'time-zone: Europe/London', 'locale: en-GB', ''];
  writeFileSync(join(journal, 'journal.yaml'), lines.join('\n'));
  const site = await buildSite(['--content', journal]);
  rmSync(journal, { recursive: true, force: true });
  return site;
}

/** Builds by the command, with its options, into a folder of its own. */
export async function buildSite(options: readonly string[]): Promise<BuiltSite> {
  const room = mkdtempSync(join(tmpdir(), 'asfound-site-'));
  const folder = join(room, 'site');
  await promisify(execFile)(process.execPath, [COMMAND, 'build', '--out', folder, ...options]);
  return { folder, pages: pagesOf(folder), remove: () => rmSync(room, { recursive: true, force: true }) };
}

function pagesOf(folder: string): string[] {
  const files = readdirSync(folder, { recursive: true, encoding: 'utf8' });
  return files.filter((file) => file.endsWith('.html')).sort();
}

/** One page of each kind, found in the site, so that a renamed note or part breaks no test. */
export function oneOfEachKind(pages: readonly string[]): string[] {
  const kinds = Map.groupBy(pages, kindOf);
  return [...kinds.values()].flatMap((list) => list[Math.floor(list.length / 2)] ?? []);
}

/** Pages of the root and of the ledger are kinds of their own; of those in another folder, and of books of entries, one stands for all. */
function kindOf(page: string): string {
  const folder = page.slice(0, page.lastIndexOf('/') + 1);
  if (folder === '' || folder === 'ledger/') return page;
  return folder === 'ledger/entries/' ? page.replace(/-.*$/, '') : folder;
}

/** The first page below a folder whose HTML has this in it. */
export function pageWith({ site }: { readonly site: BuiltSite }, mark: string, folder: string): string {
  const found = site.pages.find((page) => page.startsWith(folder) && readFileSync(join(site.folder, page), 'utf8').includes(mark));
  if (found === undefined) throw new Error(`no page below ${folder} has ${mark}`);
  return found;
}
