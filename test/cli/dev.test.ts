/** `dev`: one server for all of this, as it runs for an evening through everything that is written and asked. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe } from 'vitest';
import { put } from '../load/folder.ts';
import { FILMED } from './filmed.ts';
import { clips } from './served/clips.ts';
import { closed } from './served/closed.ts';
import { inABrowser } from './served/in-a-browser.ts';
import { savedNotes } from './served/saved-notes.ts';
import type { Served } from './served/served.ts';
import { startServing } from './started.ts';

describe('a journal that is served', () => {
  const at = {} as { -readonly [name in keyof Served]: Served[name] };
  beforeAll(async () => {
    at.cwd = mkdtempSync(join(tmpdir(), 'asfound-served-'));
    for (const [path, content] of Object.entries(FILMED)) put(at.cwd, path, content);
    const serving = await startServing('dev', ['--content', 'van'], at.cwd, process.execPath, (child) => {
      at.child = child;
    });
    Object.assign(at, serving);
  });
  afterAll(() => {
    at.child?.kill('SIGKILL');
    rmSync(at.cwd, { recursive: true, force: true });
  });
  savedNotes(at);
  inABrowser(at);
  clips(at);
  closed(at);
});
