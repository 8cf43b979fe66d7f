/** A journal without a currency: hours alone make a good ledger, and nothing that is published speaks of money. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parseHTML } from 'linkedom';
import { expect, test } from 'vitest';
import { folderWith } from '../load/folder.ts';
import { JOURNAL } from './journal.ts';
import { run } from './run.ts';

const WITHOUT: Readonly<Record<string, string>> = {
  ...JOURNAL,
  'van/journal.yaml': (JOURNAL['van/journal.yaml'] ?? '')
    .replace('currency: GBP\n', '')
    .replace(', rate: 0', '')
    .replace('name: Brakes', 'name: Brakes, budget: { hours: 4 }'),
  'van/consumables.yaml': 'cleaner: { name: Brake cleaner, unit: L, opening: { amount: 1 L } }\n',
  'van/sessions/2031-03-04-hours.md': `---
date: 2031-03-04
title: Hours
hours:
  - { by: me, on: drum, time: 1h30m }
decisions:
  - { part: drum, verdict: keep, because: Sound. }
bought:
  - { consumable: cleaner, amount: 2 L, from: a seller }
used:
  - { consumable: cleaner, amount: 500 ml, on: drum }
---

Scrubbed.
`,
};

/** What a page or table says, without its markup. */
function wordsOf(file: string): string {
  const text = readFileSync(file, 'utf8');
  if (!file.endsWith('.html')) return text;
  // Cells stand apart, as they do on the page.
  const { document } = parseHTML(text.replaceAll('</t', ' </t'));
  for (const each of document.querySelectorAll('script, style')) each.remove();
  return document.documentElement.textContent ?? '';
}

test('no page, column or nought speaks of money', async () => {
  const cwd = folderWith(WITHOUT);
  const { exit, err } = await run(['build', '--content', 'van', '--out', 'site'], { cwd });
  expect([exit, err]).toEqual([0, expect.not.stringContaining('A8')]);
  const files = readdirSync(join(cwd, 'site'), { recursive: true, encoding: 'utf8' }).filter((path) => /\.(?:html|csv)$/.test(path));
  expect(files.length).toBeGreaterThan(15);
  const said = files.flatMap((path) => {
    const words = wordsOf(join(cwd, 'site', path));
    return [
      ...words.matchAll(/.{0,30}(?:[£€$]|\b\d+\.\d\d\b|\bmoney\b|\bcosts?\b|\bbills?\b|\bpaid\b|\bprice|\bnull\b|\bXXX\b).{0,20}/gi),
    ].map(([each]) => `${path}: ${each}`);
  });
  expect(said).toEqual([]);
  const ledger = wordsOf(join(cwd, 'site', 'ledger.html'));
  for (const figure of ['1:30', '2 h 30 min left']) expect(ledger).toContain(figure);
  expect(wordsOf(join(cwd, 'site', 'data/hours.csv'))).toContain('1.5');
});
