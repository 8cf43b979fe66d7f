import { expect, test } from 'vitest';
import type { BookSetting } from '../../src/book/setting.ts';
import { unrecordedWords } from '../../src/book/sheets/inspector.ts';
import { manyNames } from '../../src/book/sheets/many-names.ts';

const setting = {
  sheet: { subsystemName: (id: string) => (id === 'brakes' ? 'Brakes' : 'Frame') },
  record: {
    journal: {
      subsystems: new Map([
        ['frame', {}],
        ['brakes', {}],
      ]),
    },
  },
} as unknown as BookSetting;
const things = (count: number) =>
  Array.from({ length: count }, (_, n) => ({ name: `Thing ${n + 1}`, subsystem: n % 2 === 0 ? 'brakes' : 'frame' }));

test('a few names are a sentence, many a table by subsystem in the order declared', () => {
  expect(manyNames(setting, 'Undecided', '.', things(2))).toContain('"Thing 1 and Thing 2."');
  const many = manyNames(setting, 'Undecided', '.', things(13));
  expect(many).toContain('record-table');
  expect(many.indexOf('Frame')).toBeLessThan(many.indexOf('Brakes'));
  expect(many).toContain('Thing 11 and Thing 13.');
});

test('an inspector reads the names of a few parts without marks or a picture, and how many where there are many', () => {
  expect(unrecordedWords(['Hose', 'Lever'])).toBe(' Went back with neither marks taken that time nor a picture: Hose and Lever.');
  expect(unrecordedWords(things(13).map(({ name }) => name))).toBe(
    ' 13 parts or lots went back with neither marks taken that time nor a picture.',
  );
});
