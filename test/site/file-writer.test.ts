import { mkdtempSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { DAY_MARK } from '../../src/site/day-mark.ts';
import { type FileForm, fileWriter } from '../../src/site/file-writer.ts';

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

test('a page that is too long is the same files when it was kept, with the day of then', async () => {
  const rows = Array.from({ length: 9000 }, (_, n) => `<li id="row-${n}">What stands in row ${n}, which is a long one</li>`).join('');
  const page = `<html><head><title>Rows</title></head><body><main><h1>Rows</h1><ul>${rows}</ul></main><footer>${DAY_MARK}</footer></body></html>`;
  const written = async (what: Uint8Array, form: FileForm, day: string) => {
    const into = folder();
    const files = fileWriter(into, day);
    const kept: Uint8Array[] = [];
    await files.write('rows.html', what, form, (bytes) => kept.push(bytes));
    await files.end();
    const names = readdirSync(into).sort();
    return { kept: kept[0] ?? new Uint8Array(), texts: names.map((name) => [name, readFileSync(join(into, name), 'utf8')]) };
  };
  const first = await written(bytes(page), 'to-keep', '1 May 2031');
  const anew = await written(bytes(page), 'plain', '23 September 2031');
  expect((await written(first.kept, 'kept', '23 September 2031')).texts).toEqual(anew.texts);
  expect(anew.texts.map(([name]) => name)).toEqual(['rows.2.html', 'rows.3.html', 'rows.4.html', 'rows.html']);
  for (const [, text] of anew.texts) expect(text).toContain('<footer>23 September 2031</footer>');
});
