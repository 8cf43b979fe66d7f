import { expect, test } from 'vitest';
import { reportLeaks } from '../../src/cli/report-leaks.ts';
import { soundRecord } from '../builders/journal.ts';

const leak = (file: string, text: string, perhaps = false) => ({ file, withheld: { text, what: 'people' }, there: '…', perhaps });

function told(...leaks: readonly ReturnType<typeof leak>[]): string {
  const said: string[] = [];
  expect(reportLeaks(leaks, soundRecord({ parts: [] }), { err: (text: string) => said.push(text) } as never)).toBe(true);
  return said.join('');
}

test('what would have been given away is told with what to do about it: each text once, as journal.yaml takes it', () => {
  const said = told(
    leak('a.html', 'the wheelwright'),
    leak('b.html', 'the wheelwright'),
    leak('a.html', 'Ash: Son'),
    leak('a.html', 'Will', true),
  );
  expect(said).toContain(
    'Mend what the notes say or let these stand: `may-say: ["the wheelwright", "Ash: Son"]`, beside `leave-out` of this copy in journal.yaml.',
  );
  expect(said).not.toContain('there may be more');
});

test('a paper may be left out where one gives something away', () => {
  expect(told(leak('papers/bill-8460c3.pdf', 'the wheelwright'))).toContain(
    'Mend what the notes say, leave the paper out, or let these stand:',
  );
});

test('a search that ended early says that there may be more', () => {
  const some = Array.from({ length: 20 }, (_, n) => leak(`${n}.html`, 'the wheelwright'));
  expect(told(...some)).toContain('The search ends after 20 places: there may be more.');
  expect(told(...some.slice(1))).not.toContain('there may be more');
});
