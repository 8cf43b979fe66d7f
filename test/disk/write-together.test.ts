import { spawnSync } from 'node:child_process';
import { chmodSync, existsSync, mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { Busy, ChangedMeanwhile, type FileChange, finishChange, writeTogether } from '../../src/disk/write-together.ts';
import { folderWith } from '../load/folder.ts';

const BEFORE = { 'a.md': 'a old', 'sub/b.md': 'b old', 'sub/c.yaml': 'c old' };
const AFTER = { 'a.md': 'a new', 'sub/b.md': 'b new', 'sub/d.yaml': 'c new' };
const CHANGES: readonly FileChange[] = [
  { path: 'a.md', to: 'a.md', before: Buffer.from('a old'), after: Buffer.from('a new') },
  { path: 'sub/b.md', to: 'sub/b.md', before: Buffer.from('b old'), after: Buffer.from('b new') },
  { path: 'sub/c.yaml', to: 'sub/d.yaml', before: Buffer.from('c old'), after: Buffer.from('c new') },
];

/** Every file of a folder with what it holds, hidden ones too. */
function stateOf(root: string): Record<string, string> {
  const paths = readdirSync(root, { recursive: true, withFileTypes: true }).filter((entry) => entry.isFile());
  return Object.fromEntries(
    paths.map(({ parentPath, name }) => [join(parentPath, name).slice(root.length + 1), readFileSync(join(parentPath, name), 'utf8')]),
  );
}

test('several files change together, one of them moves, and each keeps its mode', () => {
  const root = folderWith(BEFORE);
  chmodSync(join(root, 'a.md'), 0o600);
  writeTogether(root, CHANGES);
  expect(stateOf(root)).toEqual(AFTER);
  expect(statSync(join(root, 'a.md')).mode & 0o777).toBe(0o600);
});

test('a process killed before any of its calls leaves all as it was or all as it should be, once the next one has looked', () => {
  const script = new URL('../../src/disk/write-together.ts', import.meta.url).href;
  const changes = JSON.stringify(CHANGES.map(({ path, to, before, after }) => [path, to, String(before), String(after)]));
  const code = `import { writeTogether } from ${JSON.stringify(script)};
    writeTogether(process.argv[1], ${changes}.map(([path, to, before, after]) => ({ path, to, before: Buffer.from(before), after: Buffer.from(after) })));`;
  const outcomes = new Set<string>();
  for (let n = 1; ; n += 1) {
    const root = folderWith(BEFORE);
    const preload = new URL('./kill-at.mjs', import.meta.url).href;
    const argv = ['--disable-warning=ExperimentalWarning', '--import', preload, '--input-type=module', '-e', code, root];
    const { signal, status, stderr } = spawnSync(process.execPath, argv, { encoding: 'utf8', env: { ...process.env, KILL_AT: String(n) } });
    if (signal === null) {
      expect([status, stderr, n > 25]).toEqual([0, '', true]);
      break;
    }
    finishChange(root);
    const state = JSON.stringify(stateOf(root));
    expect([JSON.stringify(BEFORE), JSON.stringify(AFTER)], `killed before call ${n}`).toContain(state);
    outcomes.add(state);
  }
  expect(outcomes.size).toBe(2);
});

test('a file that is not as it was keeps what it holds, and so do all', () => {
  const root = folderWith({ ...BEFORE, 'sub/b.md': 'mine' });
  expect(() => writeTogether(root, CHANGES)).toThrow(ChangedMeanwhile);
  expect(stateOf(root)).toEqual({ ...BEFORE, 'sub/b.md': 'mine' });
});

test('a file is not moved onto another', () => {
  const root = folderWith({ ...BEFORE, 'sub/d.yaml': 'mine' });
  expect(() => writeTogether(root, CHANGES)).toThrow(ChangedMeanwhile);
  expect(stateOf(root)).toEqual({ ...BEFORE, 'sub/d.yaml': 'mine' });
});

test('what another process is changing is left to it', () => {
  const root = folderWith(BEFORE);
  mkdirSync(join(root, '.asfound-change'));
  writeFileSync(join(root, '.asfound-change/owner'), String(process.ppid));
  expect(() => writeTogether(root, CHANGES)).toThrow(Busy);
  expect(existsSync(join(root, '.asfound-change/owner'))).toBe(true);
  expect(readFileSync(join(root, 'a.md'), 'utf8')).toBe('a old');
});
