import { expect, test } from 'vitest';
import { noteContexts } from '../../src/markdown/note-context.ts';
import { NO_PICTURES } from '../../src/photos/plan.ts';
import { compileFiles, NOTE, note } from '../journal/base.ts';

/** The files that the note of a journal links to. */
function filesOf(prose: string, more: Readonly<Record<string, string>> = {}): string[] {
  const { record } = compileFiles({ more: { ...more, [NOTE]: note('', prose) } });
  const session = record?.journal.sessions.find(({ file }) => file === NOTE);
  if (record === null || session === undefined) throw new Error('the journal of the test does not compile');
  return [...noteContexts(record, NO_PICTURES)(session).files.keys()];
}

test('a note that is named in prose is linked, whatever it stands between', () => {
  const other = { 'sessions/2031-03-02-hub.md': '---\ndate: 2031-03-02\ntitle: Hub\n---\nOff.\n' };
  for (const prose of ['[then](../2031-03-02-hub.md)', '[a]: ../2031-03-02-hub.md\n\n[then][a]', '<a href="../2031-03-02-hub.md">then</a>'])
    expect(filesOf(prose, other), prose).toEqual(['sessions/2031-03-02-hub.md']);
});

test('a script without blanks is looked through once, and not anew from each of its signs', () => {
  expect(filesOf('\u{8eca}\u{4f53}\u{3092}`'.repeat(32_000))).toEqual([]);
}, 20_000);
