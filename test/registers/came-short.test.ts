import { expect, test } from 'vitest';
import type { JournalRecord } from '../../src/journal/record.ts';
import { cameShortAt } from '../../src/journal/registers/came-short.ts';
import { compileFiles } from '../journal/base.ts';

const PARTS = `- { id: nuts, name: Dome nuts, origin: original, count: 12, found: loose, at: shelf A1 }
- { id: leaves, name: Leaves, origin: original, count: 4, numbered: "I to IIII, by size", found: loose, at: shelf A1 }
`;
const evening = (date: string, ...parts: readonly string[]) =>
  `---\ndate: ${date}\ntitle: Evening\nparts:\n${parts.map((part) => `  - { ${part} }\n`).join('')}---\n`;

function recordOf(evenings: Readonly<Record<string, readonly string[]>>): JournalRecord {
  const notes = Object.entries(evenings).map(([date, parts]) => [`sessions/${date}-evening.md`, evening(date, ...parts)]);
  const { record, diagnostics } = compileFiles({ parts: PARTS, more: Object.fromEntries(notes) });
  expect(diagnostics).toEqual([]);
  return record as JournalRecord;
}

const SENT = {
  '2031-03-01': ['part: nuts, did: sent-out, to: a plater'],
  '2031-03-10': ['part: nuts, did: returned, count: 11, to: shelf A1'],
};
const told = (record: JournalRecord, at: string | null = null) =>
  cameShortAt(record, at).map(({ part, firm, sentCount, back, owed, which }) => [part, firm, sentCount, back, owed, which]);

test('of twelve sent out eleven come back: one is owed from that day on, and before it none was', () => {
  const record = recordOf(SENT);
  expect(told(record)).toEqual([['nuts', 'a plater', 12, 11, 1, null]]);
  expect(told(record, '2031-03-09')).toEqual([]);
});

test.each([
  ['comes back', 'part: nuts, did: returned, to: shelf A1'],
  ['is declared gone', 'part: nuts, did: gone, how: lost, count: 1, from: a plater'],
])('it is told until the rest %s', (_, entry) => {
  const record = recordOf({ ...SENT, '2031-04-01': [entry] });
  expect(told(record, '2031-03-31')).toHaveLength(1);
  expect(told(record)).toEqual([]);
});

test('what is declared gone at the firm was not sent back', () => {
  const record = recordOf({
    '2031-03-01': ['part: nuts, did: sent-out, to: a plater'],
    '2031-03-10': ['part: nuts, did: returned, count: 9, to: shelf A1', 'part: nuts, did: gone, how: lost, count: 2, from: a plater'],
  });
  expect(told(record)).toEqual([['nuts', 'a plater', 12, 9, 1, null]]);
});

test('what was sent later is not short, though it is with the same firm', () => {
  const record = recordOf({
    '2031-03-01': ['part: nuts, did: sent-out, count: 6, to: a plater'],
    '2031-03-10': ['part: nuts, did: returned, count: 6, to: shelf A1'],
    '2031-03-20': ['part: nuts, did: sent-out, count: 6, to: a plater'],
  });
  expect(told(record)).toEqual([]);
});

test('of a numbered lot it is told which are owed', () => {
  const record = recordOf({
    '2031-03-01': ['part: leaves, did: sent-out, to: a smith'],
    '2031-03-10': ['part: leaves, did: returned, which: [1, 3, 4], to: shelf A1'],
  });
  expect(told(record)).toEqual([['leaves', 'a smith', 4, 3, 1, [2]]]);
});
