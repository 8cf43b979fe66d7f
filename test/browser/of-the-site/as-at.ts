/** The views of past days as a reader steps through them, read from their files: no script is at work. */
import { readFileSync } from 'node:fs';
import { join, posix } from 'node:path';
import { parseHTML } from 'linkedom';
import { beforeAll, describe, expect, it } from 'vitest';
import type { Bench } from '../bench.ts';

interface View {
  readonly page: string;
  readonly before: string | null;
  readonly after: string | null;
  readonly links: readonly string[];
  /** What each position had come to, by its page. */
  readonly outcomes: ReadonlyMap<string, string>;
  /** Pages of positions that the list of changes names for themselves. */
  readonly changed: readonly string[];
}

export function asAt(bench: Bench): void {
  describe('as at', () => {
    const views: View[] = [];
    beforeAll(() => {
      const newest = bench.site.pages.filter((page) => page.startsWith('register/')).at(-1) ?? null;
      for (let page = newest; page !== null; page = views.at(-1)?.before ?? null) views.push(viewOf(bench, page));
      views.reverse();
    });

    it('steps lead through every view there is, from the newest to the oldest and back', () => {
      expect(views.length).toBeGreaterThan(12);
      expect(views.map(({ page }) => page)).toEqual(bench.site.pages.filter((page) => page.startsWith('register/')));
      expect(views.map(({ after }) => after)).toEqual([...views.slice(1).map(({ page }) => page), null]);
    });

    it('each view leads to the stores, bags and open items of its day', () => {
      for (const { page, links } of views) expect(links).toContain(page.replace('register/', 'as-at/'));
    });

    it('positions that came to something else than in the view before are those that it says changed', () => {
      const pairs = views.slice(1).map((view, n) => [views[n], view] as const);
      const told = pairs.map(([, { page, changed }]) => [page, [...changed].sort()]);
      const seen = pairs.map(([before, { page, outcomes }]) => [
        page,
        [...outcomes].flatMap(([position, words]) => (before?.outcomes.get(position) === words ? [] : [position])).sort(),
      ]);
      expect(told).toEqual(seen);
      expect(told.flatMap(([, list]) => list).length).toBeGreaterThan(50);
    });
  });
}

function viewOf(bench: Bench, page: string): View {
  const { document } = parseHTML(readFileSync(join(bench.site.folder, page), 'utf8'));
  const target = (link: Element | null) => (link === null ? null : posix.join(posix.dirname(page), link.getAttribute('href') ?? ''));
  const all = (selector: string) => [...document.querySelectorAll(selector)];
  const plain = (link: Element | null) => target(link)?.replace(/#.*$/, '') ?? '';
  const changes = all('#changes + ul > li').filter(
    (item) => item.firstElementChild?.localName === 'a' && /: .+, now |but what stands/.test(item.textContent ?? ''),
  );
  return {
    page,
    before: target(document.querySelector('a[rel=prev]')),
    after: target(document.querySelector('a[rel=next]')),
    links: all('main a').map((link) => plain(link)),
    outcomes: new Map(
      all('.register tbody tr:has(td)').map((row) => [plain(row.querySelector('th a')), row.querySelector('.outcome')?.textContent ?? '']),
    ),
    changed: changes.filter((item) => !/but what stands/.test(item.textContent ?? '')).map((item) => plain(item.querySelector('a'))),
  };
}
