/** A line of a hundred thousand characters with a slip in it is told as soon as one of a hundred. */
import { expect, test } from 'vitest';
import { compileJournal } from '../../src/journal/pipeline.ts';
import { JOURNAL } from './base.ts';

/** For what would take minutes. */
const HANGS_MS = 5000;

test.each([
  ['in a value', `private: a: ${'x'.repeat(150_000)} b: c`],
  ['behind a brace', `parts: [{ part: drum, did: ${'x'.repeat(150_000)}`],
  ['of brackets that are not closed', `private: [${'![ '.repeat(3000)}`],
])('a long line %s', (_, fields) => {
  const note = `---\ndate: 2031-03-12\ntitle: Long\n${fields}\n---\n`;
  const file = (path: string, text: string) => ({ path, bytes: new TextEncoder().encode(text) });
  const before = process.cpuUsage();
  const { diagnostics } = compileJournal(
    { files: [file('journal.yaml', JOURNAL), file('sessions/2031-03-12-long.md', note)], assets: [], problems: [] },
    { today: '2031-12-31' },
  );
  const { user } = process.cpuUsage(before);
  expect(diagnostics.map(({ place }) => place.file)).toContain('sessions/2031-03-12-long.md');
  expect(user / 1000).toBeLessThan(HANGS_MS);
});
