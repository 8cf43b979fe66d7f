/** What a book and an archive say while they are made: at a terminal one line, written over and taken away; in a pipe nothing. */
import { describe, expect, test } from 'vitest';
import { folderWith } from '../load/folder.ts';
import { run } from './run.ts';

const VAN = {
  'van/journal.yaml': 'title: The van\narrived: 2031-01-01\ntime-zone: Europe/London\nsubsystems: { brakes: { name: Brakes } }\n',
  'van/parts/brakes.yaml': '- { id: drum, name: Drum, origin: original, private: Kept to myself }\n',
  'van/sessions/2031-01-05-e.md': '---\ndate: 2031-01-05\ntitle: An evening\n---\nNothing is told here.\n',
};

/** The sequences that take the cursor to the start of its line and clear the line (ECMA-48, CR and EL). */
const CLEARED = '\r\u001B[2K';

/** What stood on the line, one after the other. */
async function shown(command: string, out: string, copy: string): Promise<readonly string[]> {
  const ran = await run([command, '--content', 'van', '--copy', copy, '--out', out], { cwd: folderWith(VAN), terminal: true });
  expect(ran.exit).toBe(0);
  expect(ran.err.endsWith(CLEARED), 'the line is clean in the end').toBe(true);
  expect(ran.err).not.toContain('\n');
  return ran.err.split(CLEARED).slice(1, -1);
}

describe.each([
  ['book', 'van.pdf', [/^Setting the book$/, /^Proof/]],
  ['archive', 'van-archive', [/^Setting the book$/, /^Proof: \d+ of \d+$/, /^Archive: \d+ of \d+ files$/]],
])('%s', (command, out, steps) => {
  test('says at a terminal what is being done and how far, and leaves a clean line', async () => {
    const lines = await shown(command, out, 'record');
    for (const step of steps)
      expect(
        lines.some((line) => step.test(line)),
        `${step} in ${lines.join(' | ')}`,
      ).toBe(true);
    for (const line of lines) expect(line.length).toBeLessThan(80);
  });

  test('says nothing of it where the error stream is no terminal', async () => {
    const ran = await run([command, '--content', 'van', '--copy', 'record', '--out', out], { cwd: folderWith(VAN) });
    expect(ran).toMatchObject({ exit: 0, err: '' });
  });
});
