/** What went back otherwise than it came off is told wherever the register speaks of it, with the words of the note. */
import { expect, test } from 'vitest';
import { backOtherwise, register } from '../../../../src/book/register-chapters.ts';
import type { BookSetting } from '../../../../src/book/setting.ts';
import { buyerSheet } from '../../../../src/book/sheets/buyer.ts';
import { inspectorSheet } from '../../../../src/book/sheets/inspector.ts';
import { originalityAt } from '../../../../src/journal/registers/originality.ts';
import { registerAt } from '../../../../src/journal/registers/register.ts';
import { NO_PICTURES } from '../../../../src/photos/plan.ts';
import type { SiteRecord } from '../../../../src/site/record.ts';
import { sheetOf } from '../../../../src/site/views/page/sheet.ts';
import { registerTable } from '../../../../src/site/views/register/register-table.ts';
import { stateLines } from '../../../../src/site/views/register/state-words.ts';
import { decide, did, evening, part, soundRecord } from '../../../builders/journal.ts';

const OF = soundRecord({
  parts: [part('wing', { name: 'Wing' }), part('lamp', { name: 'Lamp' })],
  evenings: [
    evening('2030-10-01', {
      parts: [
        did('wing', ['removed', 'fitted'], { asWas: false, note: 'Bolts from above.' }),
        did('lamp', ['removed', 'fitted'], { asWas: true }),
      ],
      decisions: [decide('wing', 'keep'), decide('lamp', 'keep')],
    }),
  ],
});
const record = { ...OF, pictures: NO_PICTURES, warnings: [], noteHtml: async () => '' } as unknown as SiteRecord;
const sheet = sheetOf(record, 'register.html');
const setting = { sheet, record, named: new Set() } as unknown as BookSetting;
const HOW = 'Went back otherwise than it came off: Bolts from above.';

test('in its row, on the page and in a line of its state', () => {
  const { markup } = registerTable(sheet, registerAt(OF, null), originalityAt(OF, null), 'The register', 'here');
  expect(/<thead>.*<\/thead>/s.exec(markup)?.[0].replaceAll(/<[^>]*>/g, ' ')).toMatch(/Where the original is, if off\s+Remarks\s*$/);
  const rows = markup.split('<tr').map((row) => row.replaceAll(/^[^>]*>|<[^>]*>/g, ' '));
  const [wing, lamp] = ['Wing', 'Lamp'].map((name) => rows.find((row) => row.includes(name)));
  expect(wing).toMatch(new RegExp(`Kept, went back otherwise .*${HOW}`));
  expect(lamp).toMatch(/Kept as found /);
  expect(lamp).not.toContain('otherwise');
  expect(stateLines(sheet).get('wing')?.[1]).toMatch(/^Kept, went back otherwise\. /);
});

test('in the book, and on the sheets for a buyer and an inspector', () => {
  expect(register(setting)).toContain(HOW);
  const told = backOtherwise(setting);
  expect(told).toContain(HOW);
  expect(told).toContain('1 October 2030');
  expect(told).not.toContain('Lamp');
  for (const { parts } of [buyerSheet(setting), inspectorSheet(setting)]) expect(parts.join('\n')).toContain(HOW);
});
