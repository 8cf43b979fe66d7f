import { cpSync, existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { unzipSync } from 'fflate';
import { expect, test } from 'vitest';
import { verifyBag } from '../../src/exports/bag/verify-bag.ts';
import { folderWith } from '../load/folder.ts';
import { JOURNAL } from './journal.ts';
import { run } from './run.ts';

const FILES = { ...JOURNAL, 'van/papers/ü % note.txt': 'kept\r\n', 'van/.hidden': 'not the journal’s' };

const below = (folder: string) =>
  readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name).slice(folder.length + 1))
    .sort();

test('an archive is a whole bag that holds the notes byte for byte, the pages, the book, the tables and the record as data', async () => {
  const cwd = folderWith(FILES);
  expect(await run(['archive', '--content', 'van', '--out', 'kept'], { cwd })).toMatchObject({
    exit: 0,
    out: expect.stringMatching(/^kept: \d+ files/),
  });
  expect((await verifyBag(join(cwd, 'kept'))).problems).toEqual([]);
  expect((await run(['verify', 'kept'], { cwd })).exit).toBe(0);
  const data = join(cwd, 'kept/data');
  for (const file of [
    'README.txt',
    'book.pdf',
    'record.json',
    'record.schema.json',
    'tables/register.csv',
    'tables/record.jsonld',
    'site/index.html',
  ]) {
    expect(existsSync(join(data, file)), file).toBe(true);
  }
  const restored = below(join(data, 'journal'));
  expect(restored).toEqual(below(join(cwd, 'van')).filter((path) => !path.startsWith('.')));
  for (const path of restored)
    expect(readFileSync(join(data, 'journal', path)).equals(readFileSync(join(cwd, 'van', path))), path).toBe(true);
  const info = readFileSync(join(cwd, 'kept/bag-info.txt'), 'utf8');
  expect(info).toMatch(/^Bagging-Date: 2031-03-02$/m);

  // JSON Schema 2020-12, by a validator that did not write it.
  const [document, schema] = ['record.json', 'record.schema.json'].map((name) => JSON.parse(readFileSync(join(data, name), 'utf8')));
  const validate = new Ajv2020({ strict: true, allowUnionTypes: true }).compile(schema);
  expect(validate(document), JSON.stringify(validate.errors?.slice(0, 3))).toBe(true);
  expect(validate({ ...document, more: 1 })).toBe(false);
  expect(schema.properties.stays.description).toContain('Where each part has been');

  // As one file, and a second time: the same bytes.
  for (const name of ['a/one.zip', 'b/one.zip']) expect((await run(['archive', '--content', 'van', '--out', name], { cwd })).exit).toBe(0);
  expect((await run(['verify', 'a/one.zip'], { cwd })).err).toBe(
    'asfound: a/one.zip is one file. Unpack it first, and verify the folder that comes out of it.\n',
  );
  const bytes = readFileSync(join(cwd, 'a/one.zip'));
  expect(readFileSync(join(cwd, 'b/one.zip')).equals(bytes)).toBe(true);
  expect(
    Object.keys(unzipSync(bytes))
      .map((path) => path.replace(/^one\//, ''))
      .sort(),
  ).toEqual(below(join(cwd, 'kept')));
});

test('an archive of a copy that leaves something out holds no notes, and one is never written over another', async () => {
  const cwd = folderWith({
    ...FILES,
    'van/sessions/2031-03-03-more.md': '---\ndate: 2031-03-03\ntitle: More\nprivate: Told to nobody else.\n---\nWords.\n',
  });
  expect((await run(['archive', '--content', 'van', '--copy', 'record', '--out', 'kept'], { cwd })).exit).toBe(0);
  expect(existsSync(join(cwd, 'kept/data/journal'))).toBe(false);
  expect(readFileSync(join(cwd, 'kept/data/README.txt'), 'utf8')).toContain('The notes themselves are not in this copy');
  for (const file of below(join(cwd, 'kept')))
    expect(readFileSync(join(cwd, 'kept', file), 'latin1'), file).not.toContain('Told to nobody');
  expect(await run(['archive', '--content', 'van', '--out', 'kept'], { cwd })).toMatchObject({
    exit: 3,
    err: expect.stringContaining('is there already'),
  });
  expect(readdirSync(cwd).filter((name) => name.includes('unfinished'))).toEqual([]);
});

test('an archive for the next keeper holds the notes without what was private to former keepers, and not a letter else is changed', async () => {
  const journal = new URL('../cases/the-vehicle-changes-hands/journal', import.meta.url).pathname;
  const cwd = folderWith({});
  cpSync(journal, join(cwd, 'van'), { recursive: true });
  const sold = join(cwd, 'van/sessions/2031-03-01-sold.md');
  writeFileSync(sold, readFileSync(sold, 'utf8').replace('reached:', '# Nobody asked.\nreached:').replaceAll('\n', '\r\n'));
  const ran = await run(['archive', '--content', 'van', '--copy', 'keeper', '--out', 'kept'], { cwd, now: new Date(2031, 11, 31) });
  expect(ran).toMatchObject({ exit: 0, err: '' });
  const [before, after] = [join(cwd, 'van'), join(cwd, 'kept/data/journal')];
  expect(below(after)).toEqual(below(before));
  const taken = /^private: (?:He beat|I would)[^\n]*\n|, private: "I never[^"]*"/gm;
  for (const file of below(before)) {
    const [was, is] = [before, after].map((folder) => readFileSync(join(folder, file), 'utf8'));
    expect(is, file).toBe(was?.replace(taken, ''));
  }
  const said = below(join(cwd, 'kept')).map((file) => readFileSync(join(cwd, 'kept', file), 'latin1'));
  expect(said.filter((text) => /He beat me|I never liked|taken less/.test(text))).toEqual([]);
  expect(said.some((text) => text.includes('The shed roof leaks'))).toBe(true);
  expect(readFileSync(join(cwd, 'kept/data/README.txt'), 'utf8')).toContain('the fields "private"');
  expect((await verifyBag(join(cwd, 'kept'))).problems).toEqual([]);
});
