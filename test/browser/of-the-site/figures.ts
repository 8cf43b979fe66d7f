/** Every figure of the ledger leads to entries, and what is printed where it lands is that figure. */
import { describe, expect, it } from 'vitest';
import type { Bench } from '../bench.ts';
import { printedAt } from '../printed-totals.ts';
import { figuresOn, numberIn, pageAt, type ShownFigure, targetOf, wordsOf } from '../shown-figures.ts';

/** The figures that lead nowhere, or where what is printed is another figure. */
export function wrongFigures(folder: string, shown: readonly ShownFigure[]): string[] {
  return shown.flatMap(({ page, where, text, measure, to }) => {
    if (to === null) return numberIn(text) === 0 ? [] : [`${page}, ${where}: ${text} leads nowhere`];
    const landed = measure === null ? undefined : printedAt(folder, to)[measure];
    return landed === numberIn(text) ? [] : [`${page}, ${where}: ${measure} ${text} at ${to.page}#${to.anchor}, where there is ${landed}`];
  });
}

/** The tables of the ledger whose figures are sums of entries; what is ahead, the client's account and lists are tried by themselves. */
export const SUMS_OF_ENTRIES = 'table:not(.weeks):not(.ahead):not(.client):not(.listed):not(.by-tax):not(.quoted)';

export function figures(bench: Bench): void {
  const shownOn = (pages: readonly string[], tables = 'table'): ShownFigure[] =>
    pages.flatMap((page) => figuresOn(bench.site.folder, page, tables));
  const wrongOf = (shown: readonly ShownFigure[]): string[] => wrongFigures(bench.site.folder, shown);
  const within = (start: string): string[] => bench.site.pages.filter((page) => page.startsWith(start));

  describe('figures', () => {
    it('hours and money of the ledger, its budgets and what is behind its drawings, land on entries that add up to them', () => {
      const shown = shownOn(['ledger.html', ...within('ledger/year/')], SUMS_OF_ENTRIES);
      expect(new Set(shown.map(({ measure }) => measure))).toEqual(
        new Set(['hours', 'paid', 'cost', 'without-labour', 'budgeted', 'left-money', 'opening']),
      );
      expect(shown.length).toBeGreaterThan(200);
      expect(wrongOf(shown)).toEqual([]);
    });

    it('lists of the ledger add up to the lines under them', () => {
      const lists = [...pageAt(bench.site.folder, 'ledger.html').querySelectorAll('table.listed, table.client')].filter((table) =>
        table.querySelector('tfoot'),
      );
      expect(lists.length).toBeGreaterThan(1);
      for (const table of lists) {
        const last = (row: Element): number => Math.round(numberIn(wordsOf(row.lastElementChild)) * 100);
        const sum = (rows: string): number => [...table.querySelectorAll(rows)].reduce((all, row) => all + last(row), 0);
        expect(Math.abs(sum('tbody tr'))).toBe(sum('tfoot tr'));
      }
    });

    it('what was paid and sold at each rate of tax opens the entries that it sums', () => {
      const rows = [...pageAt(bench.site.folder, 'ledger.html').querySelectorAll('table.by-tax tbody tr')];
      const opened = rows.flatMap((row) => {
        const link = row.lastElementChild?.querySelector('a');
        if (!link) return [];
        const book = pageAt(bench.site.folder, targetOf('ledger.html', link.getAttribute('href') ?? '').page);
        const paid = [...book.querySelectorAll('.facts dt')].find((name) => wordsOf(name) === 'Paid out')?.nextElementSibling;
        return [[numberIn(wordsOf(link)), numberIn(wordsOf(paid))]];
      });
      expect(opened.length).toBeGreaterThan(2);
      for (const [shown, sum] of opened) expect(shown).toBe(sum);
    });

    it('the ledger of every past day lands on what had been booked by then', () => {
      const shown = shownOn(within('ledger/as-at/'));
      expect(shown.length).toBeGreaterThan(500);
      expect(wrongOf(shown)).toEqual([]);
    });

    it('positions and consumables land on their entries and movements', () => {
      const shown = [...shownOn(['ledger/by-position.html']), ...shownOn(['consumables.html'], 'table.stock')];
      expect(shown.length).toBeGreaterThan(60);
      expect(wrongOf(shown)).toEqual([]);
    });

    it('the entries of each account add up to what stands under them, and from the first on to what is said by the way', () => {
      let accounts = 0;
      for (const page of within('ledger/entries')) {
        const all = { minutes: 0, paid: 0, cost: 0 };
        for (const table of pageAt(bench.site.folder, page).querySelectorAll('table.entries')) {
          const own = { minutes: 0, paid: 0, cost: 0 };
          for (const row of table.querySelectorAll('tbody tr')) {
            const figuresIn = columnsIn(row);
            if (row.classList.contains('running-total')) expect([page, row.id, figuresIn]).toEqual([page, row.id, all]);
            else for (const sums of [own, all]) addTo(sums, figuresIn);
          }
          expect([page, columnsIn(table.querySelector('tfoot tr'))]).toEqual([page, own]);
          accounts += 1;
        }
        expect([page, printedAt(bench.site.folder, { page, anchor: '' })]).toMatchObject([
          page,
          { cost: all.cost / 100, paid: all.paid / 100 },
        ]);
      }
      expect(accounts).toBeGreaterThan(50);
    });

    it('the hours of a week are those of the sessions named beside it', () => {
      const rows = [...pageAt(bench.site.folder, 'ledger.html').querySelectorAll('table.weeks tbody tr')];
      expect(rows.length).toBeGreaterThan(10);
      for (const row of rows) {
        const links = [...row.querySelectorAll('td:last-child a')];
        const landed = links.map((link) => printedAt(bench.site.folder, targetOf('ledger.html', link.getAttribute('href') ?? '')).hours);
        expect(landed).toEqual(links.map((link) => numberIn(wordsOf(link))));
        const minutes = links.reduce((sum, link) => sum + numberIn(wordsOf(link)), 0);
        expect(minutes).toBe(numberIn(wordsOf(row.querySelector('td.num'))));
      }
    });

    it('what followed a decision is the sum of the entries under it, and all of them are what the position took', () => {
      let decisions = 0;
      for (const page of within('parts/')) {
        const document = pageAt(bench.site.folder, page);
        for (const link of document.querySelectorAll('.decisions a[href^="#cost-"]')) {
          const { hours = 0, cost } = printedAt(bench.site.folder, targetOf(page, link.getAttribute('href') ?? ''));
          const figuresSaid = wordsOf(link).split(', ').map(numberIn);
          expect([page, ...(hours === 0 ? [cost] : [hours, cost])]).toEqual([page, ...figuresSaid]);
          decisions += 1;
        }
        const groups = [...document.querySelectorAll('table.entries tbody')].map(costsIn);
        for (const { said, entries } of groups) if (said !== null) expect([page, total(entries)]).toEqual([page, said]);
        const foot = document.querySelector('table.entries tfoot td:last-child');
        if (foot) expect([page, total(groups.flatMap(({ entries }) => entries))]).toEqual([page, pence(wordsOf(foot))]);
      }
      expect(decisions).toBeGreaterThan(10);
    });
  });
}

function minutesIn(time: string): number {
  const [, hours = '0', minutes = '0'] = /^(?:(\d+) h)? ?(?:(\d+) min)?$/.exec(time) ?? [];
  return Number(hours) * 60 + Number(minutes);
}

interface Columns {
  minutes: number;
  paid: number;
  cost: number;
}

/** The last three cells of a row: time, what was paid, what the job cost, in pence. */
function columnsIn(row: Element | null): Columns {
  const [minutes, paid, cost] = [...(row?.querySelectorAll('td.num') ?? [])].slice(-3).map(wordsOf);
  return { minutes: minutesIn(minutes ?? ''), paid: pence(paid ?? ''), cost: pence(cost ?? '') };
}

function addTo(sums: Columns, { minutes, paid, cost }: Columns): void {
  sums.minutes += minutes;
  sums.paid += paid;
  sums.cost += cost;
}

const pence = (text: string): number => Math.round(numberIn(text) * 100);
const total = (amounts: readonly number[]): number => amounts.reduce((sum, each) => sum + each, 0);

/** The cost that heads a group of entries, and that of each of them. */
function costsIn(group: Element): { said: number | null; entries: number[] } {
  const [head, ...rest] = [...group.querySelectorAll('tr')];
  const headed = head?.querySelector('th') !== null;
  const costs = (rows: readonly (Element | undefined)[]) => rows.map((row) => pence(wordsOf(row?.querySelector('td:last-child'))));
  return headed ? { said: costs([head])[0] ?? null, entries: costs(rest) } : { said: null, entries: costs([head, ...rest]) };
}
