import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, onTestFinished, test } from 'vitest';
import { writeScripts } from '../../src/site/client-scripts.ts';
import { noticesOf } from '../../src/site/notices.ts';

const LIBRARY = createRequire(import.meta.url).resolve('minisearch');

test('the published search carries the notice of the library in it, and a script of our own alone none', async () => {
  const into = mkdtempSync(join(tmpdir(), 'asfound-scripts-'));
  onTestFinished(() => rmSync(into, { recursive: true, force: true }));
  await writeScripts(into);
  const search = readFileSync(join(into, 'search.js'), 'utf8');
  expect(search).toMatch(/^\/\*! minisearch\n\nCopyright 20\d\d /);
  expect(search).toContain('The above copyright notice and this permission notice shall be included');
  expect(readFileSync(join(into, 'full-size.js'), 'utf8')).not.toContain('/*!');
});

test('a package is noted once, however many of its modules are taken', () => {
  expect(noticesOf([LIBRARY, LIBRARY.replace(/[^/]*$/, 'other.js'), '/src/own.ts']).match(/\/\*!/g)).toHaveLength(1);
  expect(noticesOf(['/src/own.ts'])).toBe('');
});

test('a package without a file of its licence is noted with the one that it declares, and one that declares none is refused', () => {
  const folder = mkdtempSync(join(tmpdir(), 'asfound-package-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  const brought = (name: string, declared: object): string => {
    mkdirSync(join(folder, 'node_modules', name), { recursive: true });
    writeFileSync(join(folder, 'node_modules', name, 'package.json'), JSON.stringify(declared));
    return join(folder, 'node_modules', name, 'index.js');
  };
  const declaring = brought('declaring', { license: 'MIT', author: { name: 'The Hands' } });
  expect(noticesOf([declaring])).toBe('/*! declaring\n\nCopyright The Hands. Licence: MIT\n*/\n');
  expect(() => noticesOf([brought('silent', { author: 'The Hands' })])).toThrow('silent brings no licence');
});
