import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { fileWriter } from '../../src/site/file-writer.ts';

const folder = (): string => mkdtempSync(join(tmpdir(), 'asfound-writer-'));
const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);

test('every file is written, in folders of its own, when the writer has ended', async () => {
  const into = folder();
  const files = fileWriter(into, '');
  const names = Array.from({ length: 900 }, (_, n) => `page-${n % 7}/file-${n}.html`);
  for (const name of names) await files.write(name, bytes(`${name} `.repeat(200)));
  await files.end();
  for (const name of names) expect(readFileSync(join(into, name), 'utf8')).toBe(`${name} `.repeat(200));
});

test('a file that is there already is left as it is, and the writer says so', async () => {
  const into = folder();
  writeFileSync(join(into, 'mine.html'), 'mine');
  const files = fileWriter(into, '');
  await files.write('mine.html', bytes('theirs'));
  await expect(files.end()).rejects.toMatchObject({ code: 'EEXIST' });
  expect(readFileSync(join(into, 'mine.html'), 'utf8')).toBe('mine');
});

test.each(['../out.html', 'a/../../out.html', '.', '', 'a\\..\\out.html', 'a\0.html'])(
  'no file is written outside the folder: %j',
  async (path) => {
    const files = fileWriter(folder(), '');
    await expect(files.write(path, bytes('out'))).rejects.toThrow('outside');
    await files.end();
  },
);
