/** What the pages of money say where there is less to tell: a copy without hours, a day before anything was booked. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { run } from '../cli/run.ts';
import { folderWith } from '../load/folder.ts';

const FILES: Readonly<Record<string, string>> = {
  'tram/journal.yaml': `title: The tram
arrived: 2025-01-06
currency: TND
time-zone: Africa/Tunis
locale: en-GB
people: { ab: { name: Ada Bell, rate: 33.333 } }
subsystems: { body: { name: Body, budget: { hours: 20, money: 500.000 } } }
workshop: { name: The shed, tax-number: T 1, tax: 19% }
client: { name: The tram society }
copies: { no-hours: { leave-out: [hours] } }
`,
  'tram/consumables.yaml': 'paint: { name: Paint, unit: L, opening: { amount: 2 L, value: 10.001 } }\n',
  'tram/parts/body.yaml': '- { id: panel, name: Side panel, origin: original }\n',
  'tram/sessions/2025-01-10-panel.md': `---
date: 2025-01-10
title: Panel off
hours: [{ by: ab, on: panel, time: 1h }]
bought: [{ what: Metal, for: panel, cost: 119.000, tax: 19% }]
---
`,
};

async function built(...asked: string[]): Promise<(path: string) => string> {
  return builtOf(FILES, ...asked);
}

async function builtOf(files: Readonly<Record<string, string>>, ...asked: string[]): Promise<(path: string) => string> {
  const cwd = folderWith(files);
  expect(await run(['build', '--content', 'tram', '--out', 'site', ...asked], { cwd })).toMatchObject({ exit: 0 });
  return (path) => readFileSync(join(cwd, 'site', path), 'utf8').replace(/\s+/g, ' ');
}

describe('a copy without hours', () => {
  test('says of every sum that labour is not in it, has no column for hours, and leads to no account with the client', async () => {
    const page = await built('--copy', 'no-hours');
    const ledger = page('ledger.html');
    for (const words of [
      'labour is in none of its sums',
      'This copy leaves hours out, and labour is on neither side.',
      '>Money by subsystem',
      '>This copy leaves hours out.',
    ])
      expect(ledger.replace(/> /g, '>'), words).toContain(words);
    for (const words of ['Labour at its rate', 'Hours count whoever', 'are written down', 'Charged to the client', 'client.html'])
      expect(ledger, words).not.toContain(words);
    expect(page('letters/2025-01.html')).toContain('Cost of the month, labour left out');
  });

  test('of which the whole has all that', async () => {
    const ledger = (await built('--copy', 'workshop'))('ledger.html');
    for (const words of ['Labour at its rate', 'Hours count whoever', 'Charged to the client', 'client.html'])
      expect(ledger, words).toContain(words);
  });
});

test('as at a day before anything was booked, each account says so', async () => {
  const page = await built('--to', '2025-01-08');
  expect(page('ledger.html')).toMatch(/By kind<\/h2> ?<p class="nothing">Nothing of this has been booked/);
  expect(page('ledger.html')).toContain('On statements: none was sent yet');
  expect(page('client.html')).toContain('None had been sent by 8 January 2025.');
});

test('where nobody wrote hours down, what it has cost does not have labour in it', async () => {
  const note = 'tram/sessions/2025-01-10-panel.md';
  const page = await builtOf({ ...FILES, [note]: (FILES[note] ?? '').replace(/^hours.*\n/m, '') });
  expect(page('index.html')).toContain('so far, no hours written down');
  expect(page('client.html')).toMatch(/Nothing is owed yet\. TND\s[\d.,]+ was charged that is not yet on a statement\./);
  expect((await built())('index.html')).toContain('so far, labour included');
});

test('of a part that only money speaks of no page says that no session names it, nor of what no entry names that nothing touched it', async () => {
  const page = await built();
  const panel = page('parts/panel.html');
  expect(panel).toContain('No session tells of anything done to it, noted of it or decided.');
  expect(panel).not.toContain('No session names it');
  expect(page('cautions.html')).toContain('No entry of this record names it so far.');
});
