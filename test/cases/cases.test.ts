/**
 * Every folder beside this file is a case: `journal/` holds a journal, `expected/` what it must give. Only the
 * files that stand in `expected/` are compared. Every expected file was worked out from the notes by hand.
 */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { DATA_FILES } from '../../src/exports/data-files.ts';
import { compileJournal } from '../../src/journal/pipeline.ts';
import { loadJournal } from '../../src/load/load.ts';

const HERE = fileURLToPath(new URL('.', import.meta.url));
const CASES = readdirSync(HERE, { withFileTypes: true }).filter((entry) => entry.isDirectory());

test.each(CASES.map((entry) => [entry.name.replaceAll('-', ' '), entry.name]))('%s', async (_, name) => {
  const { record, diagnostics } = compileJournal(loadJournal(join(HERE, name, 'journal')), { today: '2031-12-31' });
  const found = diagnostics.map(({ code, place }) => `${place.file}:${place.line} ${code}\n`).join('');
  const given: Record<string, string> = { 'diagnostics.txt': found };
  for (const { path, make } of DATA_FILES) {
    if (record && path.endsWith('.csv')) given[path.slice('data/'.length)] = String(await make(record)).replaceAll('\r\n', '\n');
  }
  const files = readdirSync(join(HERE, name, 'expected'));
  expect(files.length).toBeGreaterThan(0);
  for (const file of files) expect(given[file], file).toBe(readFileSync(join(HERE, name, 'expected', file), 'utf8'));
  if (!existsSync(join(HERE, name, 'expected', 'diagnostics.txt'))) expect(found).toBe('');
});
