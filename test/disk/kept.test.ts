import { copyFileSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { readKept, writeKept } from '../../src/disk/kept.ts';
import { folderWith } from '../load/folder.ts';

test('what was kept is read as it was written, and not as something else', () => {
  const file = join(folderWith({}), 'a/b.json');
  writeKept(file, 'notes 1', { a: [1, 'é'] });
  expect(readKept(file, 'notes 1')).toEqual({ a: [1, 'é'] });
  expect(readKept(file, 'notes 2')).toBeUndefined();
  copyFileSync(file, `${file}2`);
  expect(readKept(`${file}2`, 'pictures')).toBeUndefined();
  expect(readKept(join(file, 'nowhere'), 'notes 1')).toBeUndefined();
});

test('any byte changed, added or taken away is noticed', () => {
  const file = join(folderWith({}), 'kept.json');
  writeKept(file, 'notes 1', { words: 'of the restorer', list: [1, 2, 3] });
  const whole = readFileSync(file);
  fc.assert(
    fc.property(fc.nat(whole.length - 1), fc.integer({ min: 1, max: 255 }), fc.constantFrom('flip', 'cut', 'add'), (at, by, how) => {
      const bytes = Buffer.from(whole);
      bytes[at] = (bytes[at] ?? 0) ^ by;
      const spoilt = { flip: bytes, cut: whole.subarray(0, at), add: Buffer.concat([whole, Buffer.from([by])]) }[how];
      writeFileSync(file, spoilt);
      expect(readKept(file, 'notes 1')).toBeUndefined();
    }),
  );
});
