import { existsSync, mkdirSync, readdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { InTheWay, isWhole, MARKER, manifestOf, mayReplace, type Rename, recover, stage } from '../../src/site/swap.ts';
import { folderWith, put } from '../load/folder.ts';

class Killed extends Error {}

/** A rename that stands for a process killed at its nth step: nothing is done any more. */
function killedAt(step: number): Rename {
  let done = 0;
  return (from, to) => {
    done += 1;
    if (done >= step) throw new Killed();
    renameSync(from, to);
  };
}

function publish(out: string, made: string, files: Readonly<Record<string, string>>, rename?: Rename): void {
  const staging = stage(out, rename);
  for (const [path, text] of Object.entries(files)) put(staging.folder, path, text);
  staging.swap(made);
}

const textOf = (out: string, path: string): string => readFileSync(join(out, path), 'utf8');

describe('a new site', () => {
  test('takes the place of the last one as a whole, and what is no longer in it is gone', () => {
    const out = join(folderWith({}), 'dist');
    publish(out, 'one', { 'index.html': 'one', 'parts/drum.html': 'drum' });
    publish(out, 'two', { 'index.html': 'two' });
    expect(readdirSync(out).sort()).toEqual([MARKER, 'index.html'].sort());
    expect(textOf(out, 'index.html')).toBe('two');
    expect(manifestOf(out)).toEqual({ made: 'two', files: { 'index.html': 3 } });
    expect(readdirSync(join(out, '..'))).toEqual(['dist']);
  });

  test('keeps what the user put beside it', () => {
    const out = join(folderWith({}), 'dist');
    publish(out, 'one', { 'index.html': 'one', 'parts/drum.html': 'drum' });
    put(out, 'CNAME', 'example.org');
    put(out, 'parts/mine/notes.txt', 'mine');
    publish(out, 'two', { 'index.html': 'two' });
    expect(textOf(out, 'CNAME')).toBe('example.org');
    expect(textOf(out, 'parts/mine/notes.txt')).toBe('mine');
    expect(existsSync(join(out, 'parts/drum.html'))).toBe(false);
  });

  test('does not take the place of a file of the user\u2019s', () => {
    const out = join(folderWith({}), 'dist');
    publish(out, 'one', { 'index.html': 'one' });
    put(out, 'about.html', 'mine');
    expect(() => publish(out, 'two', { 'index.html': 'two', 'about.html': 'ours' })).toThrow(InTheWay);
    expect(textOf(out, 'about.html')).toBe('mine');
    expect(textOf(out, 'index.html')).toBe('one');
  });

  test('that is given up leaves nothing behind', () => {
    const out = join(folderWith({}), 'dist');
    publish(out, 'one', { 'index.html': 'one' });
    const staging = stage(out);
    writeFileSync(join(staging.folder, 'index.html'), 'two');
    staging.discard();
    expect(readdirSync(join(out, '..'))).toEqual(['dist']);
    expect(textOf(out, 'index.html')).toBe('one');
  });
});

describe('a kill', () => {
  test.each([1, 2, 3, 4, 5, 6])('at step %i loses neither a whole site nor a file of the user\u2019s', (step) => {
    const out = join(folderWith({}), 'dist');
    publish(out, 'one', { 'index.html': 'one' });
    put(out, 'CNAME', 'example.org');
    put(out, 'deep/er/robots.txt', 'mine');
    // A process that is killed does not put the old site back itself, so its rename stays dead.
    try {
      publish(out, 'two', { 'index.html': 'two' }, killedAt(step));
    } catch (error) {
      expect(error).toBeInstanceOf(Killed);
    }
    recover(out);
    expect(['one', 'two']).toContain(manifestOf(out)?.made);
    expect(textOf(out, 'index.html')).toBe(manifestOf(out)?.made);
    expect(textOf(out, 'CNAME')).toBe('example.org');
    expect(textOf(out, 'deep/er/robots.txt')).toBe('mine');
    publish(out, 'three', { 'index.html': 'three' });
    expect(textOf(out, 'index.html')).toBe('three');
    expect(textOf(out, 'CNAME')).toBe('example.org');
    expect(readdirSync(join(out, '..'))).toEqual(['dist']);
  });

  test('while recovering is recovered from as well', () => {
    const out = join(folderWith({}), 'dist');
    publish(out, 'one', { 'index.html': 'one' });
    put(out, 'a.txt', 'a');
    put(out, 'b.txt', 'b');
    expect(() => publish(out, 'two', { 'index.html': 'two' }, killedAt(3))).toThrow(Killed);
    expect(() => recover(out, killedAt(2))).toThrow(Killed);
    recover(out);
    expect([textOf(out, 'index.html'), textOf(out, 'a.txt'), textOf(out, 'b.txt')]).toEqual(['two', 'a', 'b']);
  });

  test('leaves a half-made site that the next build removes, unless its process still runs', () => {
    const out = join(folderWith({}), 'dist');
    const parent = join(out, '..');
    mkdirSync(join(parent, '.asfound-new-dist-999999999'), { recursive: true });
    mkdirSync(join(parent, `.asfound-new-dist-${process.ppid}`), { recursive: true });
    mkdirSync(join(parent, `.asfound-new-dist-${process.ppid}-media`), { recursive: true });
    mkdirSync(join(parent, '.asfound-new-other-999999999'), { recursive: true });
    recover(out);
    expect(readdirSync(parent).sort()).toEqual(
      ['.asfound-new-other-999999999', `.asfound-new-dist-${process.ppid}`, `.asfound-new-dist-${process.ppid}-media`].sort(),
    );
  });
});

describe('a site may be put', () => {
  test('where nothing is, or nothing is in it, or a site of ours is', () => {
    const folder = folderWith({ 'theirs/letter.txt': 'x', 'file.txt': 'x', 'broken/.asfound-site': '{' });
    mkdirSync(join(folder, 'empty'));
    publish(join(folder, 'ours'), 'one', { 'index.html': '' });
    const answers = ['nowhere', 'empty', 'ours', 'theirs', 'file.txt', 'broken'].map((name) => mayReplace(join(folder, name)));
    expect(answers).toEqual([true, true, true, false, false, false]);
  });
});

test('a site from which a file was taken, or cut short, is not whole', () => {
  const out = join(folderWith({}), 'dist');
  publish(out, 'one', { 'index.html': 'one', 'a/b.html': 'b' });
  const manifest = manifestOf(out);
  if (manifest === null) throw new Error('no manifest');
  expect(isWhole(out, manifest)).toBe(true);
  writeFileSync(join(out, 'a/b.html'), '');
  expect(isWhole(out, manifest)).toBe(false);
});
