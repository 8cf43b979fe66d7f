/** What an editor has open, by the ways in which editors say so: LSP 3.17, `initialize`, `workspaceFolders` and `rootUri`. */
import { pathToFileURL } from 'node:url';
import { describe, expect, test } from 'vitest';
import { folderWith } from '../load/folder.ts';
import { connected } from './client.ts';

const SECOND = 'sessions/2031-03-13.md';
const SLIP = 'Looked at [it](part:drumm).';
const journal = (): string =>
  folderWith({
    'journal.yaml': 'title: The van\narrived: 2031-03-01\nsubsystems: { brakes: { name: Brakes } }\n',
    'parts/brakes.yaml': '- { id: drum, name: Drum, origin: original }\n',
    [SECOND]: SLIP,
  });
const some = (code: string) => (codes: readonly string[]) => codes.includes(code);
const uriOf = (folder: string): string => pathToFileURL(folder).href;

describe('an editor', () => {
  test.each([
    ['that knows no workspace folders and names a root', (folder: string) => ({ rootUri: uriOf(folder) })],
    [
      'whose workspace folders count, whatever the root',
      (folder: string) => ({ rootUri: null, workspaceFolders: [{ uri: uriOf(folder), name: 'van' }] }),
    ],
  ])('%s is told faults before a file is opened', async (_, opened) => {
    const folder = journal();
    const client = await connected(folder, {}, opened(folder));
    expect(await client.faults(SECOND, some('A903'))).toHaveLength(1);
    expect(client.shown).toEqual([]);
  });

  test.each([
    ['neither', { rootUri: null, workspaceFolders: null }],
    ['no folder', { rootUri: null, workspaceFolders: [] }],
  ])('that has open %s is told so, and of the journal above a file that it opens', async (_, opened) => {
    const client = await connected(journal(), {}, opened);
    await client.open(SECOND, SLIP);
    expect(await client.faults(SECOND, some('A903'))).toHaveLength(1);
    expect(client.shown).toEqual([expect.stringContaining('No folder with a journal.yaml is open.')]);
  });
});
