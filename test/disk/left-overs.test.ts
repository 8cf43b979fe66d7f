import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, onTestFinished, test } from 'vitest';
import { makeRoom } from '../../src/disk/room.ts';
import { IsThere, writeNewFile, writeOver } from '../../src/disk/write-new.ts';
import { removeLeftOvers } from '../../src/disk/write-whole.ts';
import { openDesk } from '../../src/write/desk.ts';
import { openDrafts } from '../../src/write/drafts.ts';

/** A process that ran and is gone. */
const GONE = spawnSync(process.execPath, ['-e', '']).pid;
const NAME = 'a0a0a0a0a0a0';

function folder(): string {
  const made = mkdtempSync(join(tmpdir(), 'asfound-left-'));
  onTestFinished(() => rmSync(made, { recursive: true, force: true }));
  return made;
}

test('what a process that is gone had begun goes; what a living one has begun, and what only has such a beginning, stays', () => {
  const here = folder();
  const own = ['unfinished-seat.jpg', 'unfinished-12-bolts.md', '.unfinished-', `unfinished-${process.pid}-${NAME}`];
  const left = [`unfinished-${GONE}-${NAME}`, `.unfinished-${GONE}-${NAME}`];
  for (const name of [...own, ...left]) writeFileSync(join(here, name), '');
  removeLeftOvers(here);
  expect(readdirSync(here).sort()).toEqual([...own].sort());
});

test('a note that is written over leaves nothing of an earlier try beside it', () => {
  const here = folder();
  writeFileSync(join(here, 'index.md'), 'before');
  writeFileSync(join(here, `.unfinished-${GONE}-${NAME}`), 'half');
  writeOver(join(here, 'index.md'), 'after');
  expect(readdirSync(here)).toEqual(['index.md']);
});

test('a draft that is kept takes along what a killed server left of one', () => {
  const cache = folder();
  const drafts = openDrafts(cache, 'a journal');
  mkdirSync(drafts.folder, { recursive: true });
  writeFileSync(join(drafts.folder, `unfinished-${GONE}-${NAME}`), 'half');
  const draft = { key: 'fedcba9876543210', revision: 0, writer: 'w', corrects: null, fields: {}, prose: '' };
  expect(drafts.keep(draft as never).kept).toBe(true);
  expect(readdirSync(drafts.folder).filter((name) => name.startsWith('unfinished-'))).toEqual([]);
});

test('the room of a killed run goes with the next of that name; a living one’s and those of other names stay', () => {
  const among = folder();
  const rooms = [
    `asfound-archive-${GONE}-abcdef`,
    `asfound-book-${GONE}-abcdef`,
    `asfound-archive-${process.ppid}-abcdef`,
    'asfound-archive-x',
  ];
  for (const name of rooms) mkdirSync(join(among, name));
  writeFileSync(join(among, rooms[0] as string, 'page.html'), 'half');
  const room = makeRoom('archive', among);
  expect(existsSync(room)).toBe(true);
  expect(
    readdirSync(among)
      .filter((name) => !room.endsWith(name))
      .sort(),
  ).toEqual(rooms.slice(1).sort());
});

test('what was begun among the notes goes when the journal is opened for writing', () => {
  const journal = folder();
  const begun = ['sessions', 'sessions/2031-03-12-tonight', 'papers'].map((place) => join(journal, place, `.unfinished-${GONE}-${NAME}`));
  mkdirSync(join(journal, 'sessions/2031-03-12-tonight'), { recursive: true });
  mkdirSync(join(journal, 'papers'));
  for (const file of begun) writeFileSync(file, 'half');
  openDesk({ folder: journal, cache: join(journal, 'cache'), today: () => '2031-03-12', evening: () => '2031-03-12' });
  expect(begun.filter((file) => existsSync(file))).toEqual([]);
});

test('a file that is refused since it is there already still takes along what was left beside it', () => {
  const here = folder();
  writeFileSync(join(here, 'sent.pdf'), 'sent');
  writeFileSync(join(here, `.unfinished-${GONE}-${NAME}`), 'half');
  expect(() => writeNewFile(join(here, 'sent.pdf'), 'again')).toThrow(IsThere);
  expect(readdirSync(here)).toEqual(['sent.pdf']);
});
