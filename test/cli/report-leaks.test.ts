import { expect, test } from 'vitest';
import { reportLeaks } from '../../src/cli/report-leaks.ts';
import { soundRecord } from '../builders/journal.ts';

test('what would have been given away is told with what to do about it: each text once, as journal.yaml takes it', () => {
  const leak = (file: string, text: string, perhaps = false) => ({ file, withheld: { text, what: 'people' }, there: '…', perhaps });
  const said: string[] = [];
  const effects = { err: (text: string) => said.push(text) } as never;
  const leaks = [
    leak('a.html', 'the wheelwright'),
    leak('b.html', 'the wheelwright'),
    leak('a.html', 'Ash: Son'),
    leak('a.html', 'Will', true),
  ];
  expect(reportLeaks(leaks, soundRecord({ parts: [] }), effects)).toBe(true);
  expect(said.join('')).toContain(
    'Mend what the notes say, leave the paper out, or let these stand: `may-say: ["the wheelwright", "Ash: Son"]`, beside `leave-out` of this copy in journal.yaml.',
  );
});
