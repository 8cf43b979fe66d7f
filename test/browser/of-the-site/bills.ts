/** Bills without a paper are listed, each with its seller, date and amount, and leads to its lines in the note. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parse } from 'csv-parse/sync';
import { describe, expect, it } from 'vitest';
import type { Bench } from '../bench.ts';
import { numberIn, pageAt, targetOf, wordsOf } from '../shown-figures.ts';

export function bills(bench: Bench): void {
  describe('bills', () => {
    it('those without a paper are all on one list, with what the downloaded table says of them', () => {
      const rows: Record<string, string>[] = parse(readFileSync(join(bench.site.folder, 'data/bills.csv')), { bom: true, columns: true });
      const first = rows.filter(({ line }) => line === '1');
      const said = (paper: boolean) =>
        first
          .filter((row) => (row.paper !== '') === paper)
          .map((row) => [row.from === '' ? 'not said' : row.from, Number(row['bill-gross'])]);
      const shown = (anchor: string) =>
        tableUnder(bench, anchor).map((row) => [wordsOf(row.children[1]), numberIn(wordsOf(row.querySelectorAll('td.num')[1]))]);
      expect(said(false).length).toBeGreaterThan(3);
      expect(shown('without-paper').toReversed()).toEqual(said(false));
      expect(shown('bills').toReversed()).toEqual(said(true));
    });

    it('what a bill has in another currency stands beside the amount it was turned into', () => {
      const rows: Record<string, string>[] = parse(readFileSync(join(bench.site.folder, 'data/entries.csv')), { bom: true, columns: true });
      const abroad = rows.filter((row) => row['foreign-currency'] !== '');
      expect(abroad.length).toBeGreaterThan(1);
      for (const row of abroad) {
        const account = pageAt(bench.site.folder, `sessions/${row.session}.html`).getElementById('account')?.nextElementSibling;
        const said = [...(account?.querySelectorAll('tbody tr') ?? [])].map(wordsOf).filter((words) => words.includes(row.what ?? ''));
        const beside = new RegExp(
          `${row['foreign-amount']} on the bill; one ${row['foreign-currency']} at ${row['exchange-rate']} [A-Z]{3}[\\s\\S]*${row.gross}`,
        );
        expect([row.entry, said.some((words) => beside.test(words))]).toEqual([row.entry, true]);
      }
    });

    it('each thing bought leads to its line in the account of its session', () => {
      const links = tableUnder(bench, 'without-paper').flatMap((row) => [...(row.children[2]?.querySelectorAll('a') ?? [])]);
      expect(links.length).toBeGreaterThan(3);
      for (const link of links) {
        const { page, anchor } = targetOf('papers.html', link.getAttribute('href') ?? '');
        const line = wordsOf(pageAt(bench.site.folder, page).getElementById(anchor)?.firstElementChild);
        // What stands on the bill in another currency follows it.
        expect([page, anchor, line.slice(0, wordsOf(link).length)]).toEqual([page, anchor, wordsOf(link)]);
      }
    });
  });
}

function tableUnder(bench: Bench, anchor: string): Element[] {
  const heading = pageAt(bench.site.folder, 'papers.html').getElementById(anchor);
  return [...(heading?.nextElementSibling?.querySelectorAll('tbody tr') ?? [])];
}
