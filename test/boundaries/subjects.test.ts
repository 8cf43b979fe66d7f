import { readdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';

const COMPONENTS = fileURLToPath(new URL('../../src/components', import.meta.url));
const VIEWS = fileURLToPath(new URL('../../src/site/views', import.meta.url));

/** More than a reader takes in at one look. */
const MOST_FILES = 15;

describe.each([
  ['components', COMPONENTS],
  ['views', VIEWS],
])('%s lie in folders by subject', (_, folder) => {
  const entries = readdirSync(folder, { withFileTypes: true });

  test('no file lies beside the folders', () => {
    expect(entries.filter((entry) => !entry.isDirectory()).map(({ name }) => name)).toEqual([]);
  });

  test.each(entries.map(({ name }) => name))(`%s holds ${MOST_FILES} files at most`, (subject) => {
    expect(readdirSync(`${folder}/${subject}`).length).toBeLessThanOrEqual(MOST_FILES);
  });
});
