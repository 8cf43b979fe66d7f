import {
  chmodSync,
  existsSync,
  linkSync,
  lstatSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  readlinkSync,
  rmSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { InTheWay } from '../../../src/site/swap/carry-over.ts';
import { type Place, placeOf } from '../../../src/site/swap/place.ts';
import { isWhole, MARKER, manifestOf, mayReplace } from '../../../src/site/swap/site-folder.ts';
import { recover, type Staging, type SwapEffects, stage } from '../../../src/site/swap/swap.ts';
import { folderWith, put } from '../../load/folder.ts';

class Killed extends Error {}

/**
 * Stands for a process killed at its nth step: nothing is done any more. A kill in a removal leaves some of it gone.
 *
 * @returns the hook, and how many steps it let pass
 */
function killedAt(step: number): Pick<SwapEffects, 'step'> & { passed(): number } {
  let done = 0;
  return {
    passed: () => done,
    step: (what, path) => {
      done += 1;
      if (done < step) return;
      if (done === step && what === 'remove') for (const name of [MARKER, 'index.html']) rmSync(join(path, name), { force: true });
      throw new Killed();
    },
  };
}

type Files = Readonly<Record<string, string>>;

/** Nobody looks from another machine, and who is killed shows no more that they live. */
const UNSEEN: Partial<SwapEffects> = { beat: () => () => Promise.resolve() };

async function publish(place: Place, made: string, files: Files, effects: Partial<SwapEffects> = {}): Promise<ReturnType<Staging['swap']>> {
  const staging = await stage(place, { ...UNSEEN, ...effects });
  try {
    for (const [path, text] of Object.entries(files)) put(staging.folder, path, text);
    const how = staging.swap(made);
    await staging.clear();
    return how;
  } finally {
    staging.discard();
  }
}

/** A process that is killed does not clean up, and its lock stays: of a process that is gone. */
async function publishKilled(place: Place, made: string, files: Files, step: number): Promise<number> {
  const kill = killedAt(step);
  await publish(place, made, files, kill).catch((error) => expect(error).toBeInstanceOf(Killed));
  for (const lock of [join(place.work, 'lock')].filter((file) => existsSync(file))) {
    writeFileSync(lock, JSON.stringify({ ...JSON.parse(readFileSync(lock, 'utf8')), began: 'another' }));
  }
  return kill.passed();
}

const textOf = (out: string, path: string): string => readFileSync(join(out, path), 'utf8');
const dist = (): { out: string; place: Place; parent: string } => {
  const parent = folderWith({});
  const out = join(parent, 'dist');
  return { out, parent, place: placeOf(out) };
};

describe('a new site', () => {
  test('takes the place of the last one as a whole, and what is no longer in it is gone', async () => {
    const { out, place, parent } = dist();
    await publish(place, 'one', { 'index.html': 'one', 'parts/drum.html': 'drum' });
    expect(await publish(place, 'two', { 'index.html': 'two' })).toBe('at once');
    expect(readdirSync(out).sort()).toEqual([MARKER, 'index.html'].sort());
    expect(textOf(out, 'index.html')).toBe('two');
    expect(manifestOf(out)).toEqual({ made: 'two', files: { 'index.html': 3 } });
    expect(readdirSync(parent)).toEqual(['dist']);
  });

  test('leaves nothing of the last one to be removed at the end', async () => {
    const { place } = dist();
    await publish(place, 'one', { 'index.html': 'one', 'parts/drum.html': 'drum' });
    const staging = await stage(place);
    put(staging.folder, 'index.html', 'two');
    staging.swap('two');
    await staging.clear();
    expect(readdirSync(place.work)).toEqual(['lock']);
    staging.discard();
  });

  test('keeps what the user put beside it', async () => {
    const { out, place } = dist();
    await publish(place, 'one', { 'index.html': 'one', 'parts/drum.html': 'drum' });
    put(out, 'CNAME', 'example.org');
    put(out, 'parts/mine/notes.txt', 'mine');
    await publish(place, 'two', { 'index.html': 'two' });
    expect(textOf(out, 'CNAME')).toBe('example.org');
    expect(textOf(out, 'parts/mine/notes.txt')).toBe('mine');
    expect(existsSync(join(out, 'parts/drum.html'))).toBe(false);
  });

  test('keeps empty folders, links and modes of the user\u2019s, as a repository has them', async () => {
    const { out, place } = dist();
    await publish(place, 'one', { 'index.html': 'one' });
    mkdirSync(join(out, '.git/refs/tags'), { recursive: true });
    put(out, '.git/objects/ab/cdef', 'object');
    chmodSync(join(out, '.git/objects/ab/cdef'), 0o444);
    chmodSync(join(out, '.git/objects/ab'), 0o555);
    symlinkSync('nowhere/yet', join(out, 'latest'));
    symlinkSync('index.html', join(out, 'home.html'));
    await publish(place, 'two', { 'index.html': 'two' });
    await publish(place, 'three', { 'index.html': 'three' });
    expect(statSync(join(out, '.git/refs/tags')).isDirectory()).toBe(true);
    expect([statSync(join(out, '.git/objects/ab/cdef')).mode & 0o777, statSync(join(out, '.git/objects/ab')).mode & 0o777]).toEqual([
      0o444, 0o555,
    ]);
    expect([readlinkSync(join(out, 'latest')), readlinkSync(join(out, 'home.html'))]).toEqual(['nowhere/yet', 'index.html']);
    expect(textOf(out, 'home.html')).toBe('three');
    expect(readdirSync(join(out, '..'))).toEqual(['dist']);
    chmodSync(join(out, '.git/objects/ab'), 0o755);
  });

  test.each([
    ['a file where it has a file', 'about.html', 'about.html'],
    ['a folder where it has a file', 'about.html/mine.txt', 'about.html'],
    ['a file where it has a folder', 'sessions', 'sessions/one.html'],
  ])('does not take the place of the user\u2019s own: %s', async (_, theirs, ours) => {
    const { out, place } = dist();
    await publish(place, 'one', { 'index.html': 'one' });
    put(out, theirs, 'mine');
    await expect(publish(place, 'two', { 'index.html': 'two', [ours]: 'ours' })).rejects.toThrow(InTheWay);
    expect([textOf(out, theirs), textOf(out, 'index.html')]).toEqual(['mine', 'one']);
    rmSync(join(out, theirs.split('/')[0] ?? ''), { recursive: true });
    await publish(place, 'two', { 'index.html': 'two', [ours]: 'ours' });
    expect(textOf(out, ours)).toBe('ours');
  });

  test('that is given up leaves nothing behind', async () => {
    const { out, place, parent } = dist();
    await publish(place, 'one', { 'index.html': 'one' });
    const staging = await stage(place);
    writeFileSync(join(staging.folder, 'index.html'), 'two');
    staging.discard();
    expect(readdirSync(parent)).toEqual(['dist']);
    expect(textOf(out, 'index.html')).toBe('one');
  });
});

describe('a kill', () => {
  const steps = Array.from({ length: 14 }, (_, n) => n + 1);
  test.each(steps)(
    'at step %i loses neither a whole site nor a file of the user\u2019s, and brings back no withdrawn page',
    async (step) => {
      const { out, place, parent } = dist();
      await publish(place, 'one', { 'index.html': 'one', 'parts/withdrawn.html': 'secret' });
      put(out, 'CNAME', 'example.org');
      put(out, 'deep/er/robots.txt', 'mine');
      mkdirSync(join(out, 'empty'));
      await publishKilled(place, 'two', { 'index.html': 'two' }, step);
      if (existsSync(out)) expect(textOf(out, 'CNAME')).toBe('example.org');
      await recover(place, UNSEEN);
      expect(['one', 'two']).toContain(manifestOf(out)?.made);
      expect(textOf(out, 'index.html')).toBe(manifestOf(out)?.made);
      expect(textOf(out, 'CNAME')).toBe('example.org');
      expect(textOf(out, 'deep/er/robots.txt')).toBe('mine');
      expect(readdirSync(parent)).toEqual(['dist']);
      await publish(place, 'three', { 'index.html': 'three' });
      expect(readdirSync(out).sort()).toEqual([MARKER, 'CNAME', 'deep', 'empty', 'index.html'].sort());
      expect([textOf(out, 'index.html'), textOf(out, 'CNAME')]).toEqual(['three', 'example.org']);
      expect(readdirSync(parent)).toEqual(['dist']);
    },
  );

  test('in each of those places: there are no more of them', async () => {
    const { place, out } = dist();
    await publish(place, 'one', { 'index.html': 'one', 'parts/withdrawn.html': 'secret' });
    put(out, 'CNAME', 'example.org');
    expect(await publishKilled(place, 'two', { 'index.html': 'two' }, 1000)).toBeLessThan(steps.length);
  });

  test('at every pair of steps, the second while the first is recovered from, comes out the same', async () => {
    for (const [first, second] of steps.flatMap((a) => [1, 2, 3, 4].map((b) => [a, b] as const))) {
      const { out, place } = dist();
      await publish(place, 'one', { 'index.html': 'one', 'old.html': 'old' });
      put(out, 'a.txt', 'a');
      await publishKilled(place, 'two', { 'index.html': 'two' }, first);
      await publishKilled(place, 'three', { 'index.html': 'three' }, second);
      await recover(place, UNSEEN);
      expect(textOf(out, 'index.html'), `${first} ${second}`).toBe(manifestOf(out)?.made);
      expect(textOf(out, 'a.txt'), `${first} ${second}`).toBe('a');
      await publish(place, 'four', { 'index.html': 'four' });
      expect(readdirSync(out).sort(), `${first} ${second}`).toEqual([MARKER, 'a.txt', 'index.html'].sort());
    }
  });

  test('leaves what is no site: without its marker nothing of it is taken over', async () => {
    const { out, place, parent } = dist();
    await publish(place, 'two', { 'index.html': 'two' });
    put(parent, '.asfound-work-dist/old/index.html', 'one');
    put(parent, '.asfound-work-dist/old/withdrawn.html', 'secret');
    await recover(place, UNSEEN);
    await publish(place, 'three', { 'index.html': 'three' });
    expect(readdirSync(out).sort()).toEqual([MARKER, 'index.html'].sort());
    expect(readdirSync(parent)).toEqual(['dist']);
  });
});

describe('two places side by side', () => {
  test('never share what is half made, however they are called', async () => {
    const parent = folderWith({});
    const names = ['site', 'site-99031', `site-${process.pid}`, 'site-media', 'site-new'];
    const begun = await Promise.all(names.map((name) => stage(placeOf(join(parent, name)))));
    for (const [n, staging] of begun.entries()) put(staging.folder, 'index.html', names[n] ?? '');
    for (const name of names) await publish(placeOf(join(parent, `${name}x`)), name, { 'index.html': name });
    for (const [n, staging] of begun.entries()) {
      staging.swap(names[n] ?? '');
      staging.discard();
    }
    for (const name of names) expect(textOf(join(parent, name), 'index.html')).toBe(name);
  });
});

describe('a folder that cannot be renamed', () => {
  /** As a mount point is: made inside, and put there file by file. */
  async function fixed(): Promise<{ out: string; place: Place }> {
    const { out, place } = dist();
    await publish(place, 'one', { 'index.html': 'one', 'was-file': 'a', 'was-folder/a.html': 'a', 'parts/withdrawn.html': 'secret' });
    put(out, 'CNAME', 'example.org');
    mkdirSync(join(out, 'parts/mine'));
    return { out, place: { site: out, work: join(out, '.asfound-work') } };
  }
  const TWO: Files = { 'index.html': 'two', 'was-file/a.html': 'b', 'was-folder': 'b' };

  test('has its files replaced one by one, and the user\u2019s stay', async () => {
    const { out, place } = await fixed();
    const inode = lstatSync(out).ino;
    expect(await publish(place, 'two', TWO)).toBe('file by file');
    expect(lstatSync(out).ino).toBe(inode);
    expect(readdirSync(out, { recursive: true }).sort()).toEqual(
      [MARKER, 'CNAME', 'index.html', 'parts', 'parts/mine', 'was-file', 'was-file/a.html', 'was-folder'].sort(),
    );
    expect(manifestOf(out)?.made).toBe('two');
  });

  test('is found out by its disk, or by the folder above taking no writing', async () => {
    const { out, parent } = dist();
    mkdirSync(out);
    expect(placeOf(out).work).toBe(join(parent, '.asfound-work-dist'));
    if (existsSync('/dev/shm')) expect(placeOf('/dev/shm').work).toBe('/dev/shm/.asfound-work');
  });

  test.each(Array.from({ length: 16 }, (_, n) => n + 1))('is made anew after a kill at step %i', async (step) => {
    const { out, place } = await fixed();
    await publishKilled(place, 'two', TWO, step);
    const last = manifestOf(out);
    if (last?.made === 'one') expect(isWhole(out, last)).toBe(true);
    expect(['', 'one', 'two']).toContain(last?.made);
    await publish(place, 'three', { 'index.html': 'three' });
    expect(readdirSync(out, { recursive: true }).sort()).toEqual([MARKER, 'CNAME', 'index.html', 'parts', 'parts/mine'].sort());
  });
});

describe('a place that is a link', () => {
  test('is where it leads, be there something or not', async () => {
    const folder = folderWith({ 'far/keep.txt': '' });
    symlinkSync('far/site', join(folder, 'dist'));
    await publish(placeOf(join(folder, 'dist')), 'one', { 'index.html': 'one' });
    await publish(placeOf(join(folder, 'dist')), 'two', { 'index.html': 'two' });
    expect(readlinkSync(join(folder, 'dist'))).toBe('far/site');
    expect(textOf(join(folder, 'far/site'), 'index.html')).toBe('two');
    expect(readdirSync(join(folder, 'far')).sort()).toEqual(['keep.txt', 'site']);
  });

  test('or lies behind one is the same place', () => {
    const folder = folderWith({ 'far/keep.txt': '' });
    symlinkSync('far', join(folder, 'near'));
    expect(placeOf(join(folder, 'near/site/dist'))).toEqual(placeOf(join(folder, 'far/site/dist')));
  });
});

describe('a site may be put', () => {
  test('where nothing is, or nothing is in it, or a site of ours is', async () => {
    const folder = folderWith({
      'theirs/letter.txt': 'x',
      'file.txt': 'x',
      'broken/.asfound-site': '{',
      'odd/.asfound-site': '{"made":"","files":[]}',
    });
    mkdirSync(join(folder, 'empty'));
    await publish(placeOf(join(folder, 'ours')), 'one', { 'index.html': '' });
    const answers = ['nowhere', 'empty', 'ours', 'theirs', 'file.txt', 'broken', 'odd'].map((name) => mayReplace(join(folder, name)));
    expect(answers).toEqual([true, true, true, false, false, false, false]);
  });
});

test('a site from which a file was taken, or cut short, is not whole', async () => {
  const { out, place } = dist();
  await publish(place, 'one', { 'index.html': 'one', 'a/b.html': 'b' });
  const manifest = manifestOf(out);
  if (manifest === null) throw new Error('no manifest');
  expect(isWhole(out, manifest)).toBe(true);
  writeFileSync(join(out, 'a/b.html'), '');
  expect(isWhole(out, manifest)).toBe(false);
});

test('what the user changes while the site is replaced is what stays', async () => {
  const { out, place } = dist();
  await publish(place, 'one', { 'index.html': 'one' });
  put(out, 'CNAME', 'old');
  const step: SwapEffects['step'] = (what, path) => {
    if (what !== 'rename' || path !== out) return;
    writeFileSync(join(out, 'fresh.txt'), 'fresh');
    writeFileSync(join(out, 'other'), 'newer');
    rmSync(join(out, 'CNAME'));
    linkSync(join(out, 'other'), join(out, 'CNAME'));
  };
  await publish(place, 'two', { 'index.html': 'two' }, { step });
  expect([textOf(out, 'index.html'), textOf(out, 'CNAME'), textOf(out, 'fresh.txt')]).toEqual(['two', 'newer', 'fresh']);
});
