import { existsSync, readFileSync, statSync } from 'node:fs';
import { join, posix } from 'node:path';
import { describe, expect, it } from 'vitest';
import { keptIn } from '../../../src/journal/values/once.ts';
import type { Bench } from '../bench.ts';
import { type Markup, readMarkup } from '../markup.ts';

const AWAY = /^(https?:|mailto:)/;

export function links(bench: Bench): void {
  describe('links', () => {
    const known = new Map<string, Markup>();
    const markupOf = (page: string): Markup => keptIn(known, page, () => readMarkup(readFileSync(join(bench.site.folder, page), 'utf8')));
    // A file is looked for once, however many links lead to it.
    const files = new Map<string, string>();
    const amissAt = (file: string): string => keptIn(files, file, () => amissIn(join(bench.site.folder, file)));

    it('every link names a file that is there, and an anchor that is in it', () => {
      const broken: string[] = [];
      for (const page of bench.site.pages) {
        for (const link of markupOf(page).links.filter((one) => !AWAY.test(one))) {
          const problem = problemOf(page, link, amissAt, markupOf);
          if (problem !== null) broken.push(`${page}: ${link}: ${problem}`);
        }
      }
      expect(broken).toEqual([]);
    });

    it('no page holds an inline script, a style element or a style attribute', () => {
      const held = bench.site.pages.flatMap((page) => markupOf(page).forbidden.map((text) => `${page}: ${text}`));
      expect(held).toEqual([]);
    });

    it('nothing that a page loads comes from elsewhere', () => {
      const loaded = bench.site.pages.flatMap((page) => {
        const html = readFileSync(join(bench.site.folder, page), 'utf8');
        return [...html.matchAll(/\s(?:src|srcset)="(?:https?:)?\/\/[^"]*"|<link[^>]*href="(?:https?:)?\/\/[^"]*"/g)].map(
          ([text]) => `${page}:${text}`,
        );
      });
      expect(loaded).toEqual([]);
    });

    it('no two elements of a page share an id', () => {
      const shared = bench.site.pages.flatMap((page) => {
        const html = readFileSync(join(bench.site.folder, page), 'utf8');
        const ids = [...html.matchAll(/\sid="([^"]*)"/g)].map((found) => found[1] ?? '');
        const met = new Set<string>();
        return ids.filter((id) => met.size === met.add(id).size).map((id) => `${page}: ${id}`);
      });
      expect(shared).toEqual([]);
    });
  });
}

function problemOf(page: string, link: string, amissAt: (file: string) => string, markupOf: (page: string) => Markup): string | null {
  if (link.startsWith('/')) return 'it is not relative';
  const [path = '', fragment] = link.split('#', 2);
  const file = path === '' ? page : posix.join(posix.dirname(page), decodeURIComponent(path));
  if (file.startsWith('..')) return 'it leads out of the site';
  const amiss = amissAt(file);
  if (amiss !== '') return amiss;
  if (fragment === undefined || fragment.startsWith('t=') || !file.endsWith('.html')) return null;
  return markupOf(file).ids.has(decodeURIComponent(fragment)) ? null : 'there is no such anchor';
}

/** Empty where it is a file. */
function amissIn(path: string): string {
  if (!existsSync(path)) return 'there is no such file';
  return statSync(path).isFile() ? '' : 'it names a folder';
}
