import { type ChildProcessByStdio, spawn } from 'node:child_process';
import { once } from 'node:events';
import { existsSync, mkdirSync, readdirSync, readFileSync, renameSync, statSync, utimesSync, writeFileSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { dirname, join } from 'node:path';
import type { Readable } from 'node:stream';
import { describe, expect, it } from 'vitest';
import { openEntryCache } from '../../src/disk/entry-cache.ts';
import { openDecoder } from '../../src/photos/decoder.ts';
import type { Progress } from '../../src/photos/render-all.ts';
import { renderPicture } from '../../src/photos/render-picture.ts';
import { type DarkRoom, darkRoom } from './dark-room.ts';
import { onePagePdf } from './one-page-pdf.ts';
import { jpegTaken, orientedJpeg, SCENE } from './sample-pictures.ts';

/** Every file of the site with its bytes, to compare two builds. */
function published(room: DarkRoom): Map<string, string> {
  return new Map(room.names('site').map((name) => [name, readFileSync(room.at(name)).toString('base64')]));
}

/** Renders the room's folder in a process of its own. */
function building(room: DarkRoom, site: string): ChildProcessByStdio<null, Readable, null> {
  const program = new URL('./build-until-killed.ts', import.meta.url).pathname;
  return spawn(process.execPath, [program, room.root, room.cache, site], { stdio: ['ignore', 'pipe', 'inherit'] });
}

async function fill(room: DarkRoom, count: number, width: number = SCENE.width): Promise<void> {
  for (let index = 0; index < count; index += 1) {
    room.add(`sessions/a/${index}.jpg`, await jpegTaken(`2031:03:12 21:${10 + index}:00`, null, width));
  }
}

describe('a rendering is used again', () => {
  it('by a second build, which touches no pixel and no file of the site', async () => {
    using room = darkRoom();
    await fill(room, 3);
    room.add('papers/bill.pdf', onePagePdf());
    expect(await room.build()).toMatchObject({ rendered: 4, reused: 0 });
    const stamps = room.names('site').map((name) => statSync(room.at(name)).ctimeMs);
    const again = await room.build({ onProgress: () => expect.unreachable('nothing is rendered') });
    expect(again).toMatchObject({ rendered: 0, reused: 4 });
    expect(room.names('site').map((name) => statSync(room.at(name)).ctimeMs)).toEqual(stamps);
  });

  it('in a new site, which comes out the same', async () => {
    using room = darkRoom();
    await fill(room, 2);
    const first = await room.build();
    const before = published(room);
    const site = `${room.site}-new`;
    mkdirSync(site);
    const { renderAll } = await import('../../src/photos/render-all.ts');
    const second = await renderAll(await room.plan(), site, room);
    expect(second.plan.data).toEqual(first.plan.data);
    expect(second.rendered).toBe(0);
    expect(
      readdirSync(join(site, 'pictures'))
        .map((name) => `pictures/${name}`)
        .sort(),
    ).toEqual([...before.keys()]);
  });

  it('after a picture was renamed, or lies there twice', async () => {
    using room = darkRoom();
    await fill(room, 2);
    await room.build();
    const before = published(room);
    renameSync(join(room.root, 'sessions/a/0.jpg'), join(room.root, 'sessions/a/drum.jpg'));
    room.add('sessions/b/copy.jpg', await jpegTaken('2031:03:12 21:11:00', null));
    expect(await room.build()).toMatchObject({ rendered: 0, reused: 2 });
    expect(published(room)).toEqual(before);
  });

  it('but not when the picture changed, and the old files leave the site', async () => {
    using room = darkRoom();
    await fill(room, 2);
    await room.build();
    const before = room.names('site');
    writeFileSync(room.at('pictures/not-ours.txt'), 'somebody else put it here');
    room.add('sessions/a/0.jpg', await orientedJpeg(3));
    expect(await room.build()).toMatchObject({ rendered: 1, reused: 1 });
    const after = room.names('site');
    expect(after.filter((name) => before.includes(name))).toHaveLength(before.length / 2);
    expect(after).toContain('pictures/not-ours.txt');
    expect(after).toHaveLength(before.length + 1);
  });

  it('but not when somebody wrote over a file of the site, which is linked into the cache', async () => {
    using room = darkRoom();
    await fill(room, 1);
    await room.build();
    const before = published(room);
    const [name = ''] = room.names('site');
    writeFileSync(room.at(name), 'spoilt');
    expect(await room.build()).toMatchObject({ rendered: 1, reused: 0 });
    expect(published(room)).toEqual(before);
  });
});

describe('a disk that takes no more', () => {
  it('is told as what it is by what writes pictures, and not as a fault of the program', async () => {
    using room = darkRoom();
    await fill(room, 1);
    const [rendition] = (await room.plan()).data.renditions;
    if (!rendition) throw new Error('there is no picture');
    const decoder = openDecoder();
    const written = renderPicture(rendition, join(room.root, rendition.path), join(room.cache, 'no/such/folder'), decoder);
    await expect(written).rejects.toMatchObject({ code: 'ENOENT', syscall: 'open' });
    await decoder.close();
  });
});

describe('two builds and kills', () => {
  it('two builds at once give the same site as one', async () => {
    using room = darkRoom();
    await fill(room, 4);
    const results = await Promise.all([room.build(), room.build(), room.build()]);
    for (const { problems } of results) expect(problems).toEqual([]);
    const site = published(room);
    using alone = darkRoom();
    await fill(alone, 4);
    await alone.build();
    expect(site).toEqual(published(alone));
    expect(room.names('cache').filter((name) => name.includes('unfinished'))).toEqual([]);
    expect(await room.build()).toMatchObject({ rendered: 0, reused: 4 });
  });

  it('two processes that share a cache, each with a site of its own, both give that site', async () => {
    using room = darkRoom();
    await fill(room, 4);
    const sites = ['one', 'two'].map((name) => join(room.root, '..', name));
    const ended = await Promise.all(sites.map((site) => once(building(room, site), 'exit')));
    expect(ended.map(([code]) => code)).toEqual([0, 0]);
    await room.build();
    const wanted = room.names('site');
    for (const name of ['one', 'two']) expect(room.names(name)).toEqual(wanted);
    for (const file of wanted) {
      for (const site of sites) expect(readFileSync(join(site, file)).equals(readFileSync(room.at(file))), file).toBe(true);
    }
    expect(room.names('cache').filter((name) => name.includes('unfinished'))).toEqual([]);
  });

  it('a build that is killed at any moment leaves nothing that the next one trips over', async () => {
    using room = darkRoom();
    await fill(room, 3, 1600);
    for (const moment of [150, 300, 450, 600]) {
      const child = building(room, room.site);
      await Promise.race([once(child, 'exit'), new Promise((resolve) => setTimeout(resolve, moment))]);
      child.kill('SIGKILL');
      if (child.exitCode === null && child.signalCode === null) await once(child, 'exit');
    }
    expect((await room.build()).problems).toEqual([]);
    using alone = darkRoom();
    await fill(alone, 3, 1600);
    await alone.build();
    expect(published(room)).toEqual(published(alone));
  });

  it('a build that was killed leaves what it had finished to the next one', async () => {
    using room = darkRoom();
    // Some are left over when the first is done, however many are made at a time.
    const count = 2 * availableParallelism() + 2;
    await fill(room, count, 1600);
    const child = building(room, room.site);
    await once(child.stdout, 'data');
    child.kill('SIGKILL');
    await once(child, 'exit');
    const kept = readdirSync(join(room.cache, 'pictures')).filter((name) => /^[0-9a-f]{16}$/u.test(name)).length;
    expect(kept).toBeGreaterThan(0);
    expect(kept).toBeLessThan(count);
    expect(await room.build()).toMatchObject({ rendered: count - kept, reused: kept, problems: [] });
    using alone = darkRoom();
    await fill(alone, count, 1600);
    await alone.build();
    expect(published(room)).toEqual(published(alone));
  });

  it('a build that is asked to stop stops between two pictures', async () => {
    using room = darkRoom();
    await fill(room, 8);
    const stop = new AbortController();
    const seen: Progress[] = [];
    const onProgress = (progress: Progress): void => {
      seen.push(progress);
      stop.abort(new Error('enough'));
    };
    await expect(room.build({ signal: stop.signal, onProgress })).rejects.toThrow('enough');
    expect(seen.length).toBeLessThan(8);
    expect(room.names('site')).toEqual([]);
  });

  it('a picture that changes between being looked at and being rendered is not kept under the wrong key', async () => {
    using room = darkRoom();
    await fill(room, 1);
    const plan = await room.plan();
    room.add('sessions/a/0.jpg', await orientedJpeg(3));
    const { renderAll } = await import('../../src/photos/render-all.ts');
    const { problems } = await renderAll(plan, room.site, room);
    expect(problems).toMatchObject([{ path: 'sessions/a/0.jpg', message: 'changed while the site was being made' }]);
    expect(room.names('site')).toEqual([]);
  });

  it('progress counts up to the number of pictures and estimates the rest', async () => {
    using room = darkRoom();
    await fill(room, 5);
    const seen: Progress[] = [];
    await room.build({ onProgress: (progress) => seen.push(progress) });
    expect(seen.map((one) => [one.done, one.total])).toEqual([1, 2, 3, 4, 5].map((done) => [done, 5]));
    expect(seen.map((one) => one.secondsLeft === null)).toEqual([true, true, false, false, false]);
    expect(seen.at(-1)?.secondsLeft).toBe(0);
  });
});

describe('a file of the cache', () => {
  it.each(['cut', 'flipped', 'swapped'])('that was %s is made again, and the site is the same', async (how) => {
    using room = darkRoom();
    await fill(room, 3);
    room.add('papers/bill.pdf', onePagePdf('Nobody', '200 10'));
    room.add('papers/other.pdf', onePagePdf('Somebody', '200 10'));
    await room.build();
    const before = published(room);
    const files = room.names('cache').map((name) => join(room.cache, name));
    expect(files.length).toBeGreaterThan(15);
    for (const [n, round] of oneOfEachEntry(files).entries()) {
      const others = round.map((file) => readFileSync(files[(files.indexOf(file) + 1) % files.length] ?? ''));
      for (const [each, file] of round.entries()) spoil(how, file, others[each] ?? Buffer.alloc(0));
      const site = `${room.site}-${n}`;
      mkdirSync(site);
      const { renderAll } = await import('../../src/photos/render-all.ts');
      await renderAll(await room.plan(), site, room);
      const after = new Map([...before.keys()].map((name) => [name, readFileSync(join(site, name)).toString('base64')]));
      expect(
        [...after].filter(([name, bytes]) => before.get(name) !== bytes).map(([name]) => name),
        round.join(),
      ).toEqual([]);
    }
  });
});

/** Rounds in which each file is the only one of its entry: what becomes of one entry is nothing to another. */
function oneOfEachEntry(files: readonly string[]): string[][] {
  const entries = [...Map.groupBy(files, dirname).values()];
  const most = Math.max(...entries.map(({ length }) => length));
  return Array.from({ length: most }, (_, n) => entries.flatMap((entry) => entry.slice(n, n + 1)));
}

/** Cut to half, changed in one bit of the middle, or with what another file of the cache holds. */
function spoil(how: string, file: string, other: Buffer): void {
  const bytes = readFileSync(file);
  if (how === 'cut') writeFileSync(file, bytes.subarray(0, bytes.length >> 1));
  if (how === 'swapped') writeFileSync(file, other);
  if (how !== 'flipped') return;
  const at = bytes.length >> 1;
  bytes[at] = (bytes[at] ?? 0) ^ 1;
  writeFileSync(file, bytes);
}

describe('the cache keeps within bounds', () => {
  const HOURS = 60 * 60 * 1000;

  async function entryOf(cacheFolder: string, key: string, hoursAgo: number): Promise<void> {
    await openEntryCache(cacheFolder, 'pictures').make(key, async (folder) => {
      writeFileSync(join(folder, 'one.webp'), Buffer.alloc(1000));
      return { colour: '#808080' };
    });
    const then = (Date.now() - hoursAgo * HOURS) / 1000;
    utimesSync(join(cacheFolder, 'pictures', key), then, then);
  }

  it('by taking away what was not used for longest, and never what this build uses', async () => {
    using room = darkRoom();
    const keys = ['a', 'b', 'c', 'd'].map((letter) => letter.repeat(16));
    for (const [index, key] of keys.entries()) await entryOf(room.cache, key, 40 - index * 10);
    const cache = openEntryCache(room.cache, 'pictures');
    expect(cache.find('a'.repeat(16), ['one.webp'])).not.toBeNull();
    expect(cache.sweep(4000)).toEqual({ removed: 0, bytes: 4000 });
    expect(cache.sweep(2500)).toEqual({ removed: 2, bytes: 2000 });
    expect(readdirSync(join(room.cache, 'pictures')).sort()).toEqual(['a'.repeat(16), 'd'.repeat(16)]);
    expect(cache.sweep(0)).toEqual({ removed: 1, bytes: 1000 });
  });

  it('by a use, however long ago it was made, being noted', async () => {
    using room = darkRoom();
    await entryOf(room.cache, 'a'.repeat(16), 40);
    await entryOf(room.cache, 'b'.repeat(16), 30);
    openEntryCache(room.cache, 'pictures').find('a'.repeat(16), ['one.webp']);
    expect(openEntryCache(room.cache, 'pictures').sweep(1500).removed).toBe(1);
    expect(existsSync(join(room.cache, 'pictures', 'a'.repeat(16)))).toBe(true);
  });

  it('by leaving alone what this build uses, however lately that was noted before', async () => {
    using room = darkRoom();
    await entryOf(room.cache, 'a'.repeat(16), 2);
    await entryOf(room.cache, 'b'.repeat(16), 2);
    const cache = openEntryCache(room.cache, 'pictures');
    cache.find('a'.repeat(16), ['one.webp']);
    expect(cache.sweep(0)).toEqual({ removed: 1, bytes: 1000 });
    expect(readdirSync(join(room.cache, 'pictures'))).toEqual(['a'.repeat(16)]);
  });

  it('and what killed builds left goes, but not what another build may be writing', async () => {
    using room = darkRoom();
    const home = join(room.cache, 'pictures');
    for (const [name, hoursAgo] of [
      ['unfinished-4194305-old', 3],
      ['unfinished-4194305-new', 0],
    ] as const) {
      mkdirSync(join(home, name), { recursive: true });
      writeFileSync(join(home, name, 'half.webp'), 'half');
      utimesSync(join(home, name), Date.now() / 1000 - hoursAgo * 3600, Date.now() / 1000 - hoursAgo * 3600);
    }
    openEntryCache(room.cache, 'pictures').sweep(1e9);
    expect(readdirSync(home)).toEqual(['unfinished-4194305-new']);
  });
});
