import { existsSync, readdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { CONSUMABLES, JOURNAL, note, PARTS } from '../journal/base.ts';
import { folderWith, put } from '../load/folder.ts';
import { run } from './run.ts';

const NOTE_TEXT = note(`parts:
  - { part: studs, did: removed, count: 2, to: bag 14 }
  - { part: drum, did: removed, to: shelf A1 }
bags:
  - { bag: 14, holds: [2 nuts 3/8 BSF], off: studs, goes-back: long end inboard }
opens:
  - { id: bleed, kind: task, what: Bleed the front drum circuit, before: first-start, on: brakes }`);

const journal = (): string =>
  folderWith({
    'journal.yaml': JOURNAL,
    'consumables.yaml': CONSUMABLES,
    'parts/brakes.yaml': PARTS,
    'sessions/2031-03-12-brakes/index.md': NOTE_TEXT,
  });

const found = async (cwd: string, ...words: string[]): Promise<string[]> =>
  (await run(['find', ...words], { cwd })).out
    .trimEnd()
    .split('\n')
    .map((line) => line.replaceAll(/ {2,}/g, ' | '));

describe('what to type is found by words', () => {
  test('with what it is called and where it is now, the nearest first', async () => {
    const cwd = journal();
    expect(await found(cwd, 'drum')).toEqual([
      'part | drum | Front brake drum | in stores, shelf A1',
      'part | drum-donor | Spare drum | in stores, shelf B2',
      'item | bleed | Bleed the front drum circuit | open, due before first-start',
    ]);
    expect(await found(cwd, 'studs')).toEqual([
      'part | studs | Wheel studs | 3 of 5 on the vehicle, 2 of 5 in bag 14',
      'bag | bag 14 | 2 nuts 3/8 BSF, 2 studs | filled 2031-03-12',
    ]);
    expect(await found(cwd, 'shelf', 'b2')).toEqual(['store | shelf B2 | 1 thing', 'part | drum-donor | Spare drum | in stores, shelf B2']);
    expect(await found(cwd, 'clean')).toEqual(['consumable | brake-cleaner | Brake cleaner | 2 L left']);
    expect(await found(cwd, 'spare', 'drum')).toEqual(['part | drum-donor | Spare drum | in stores, shelf B2']);
  });

  test('or nothing but that, a line each', async () => {
    expect((await run(['find', '--ids', 'bag', '14'], { cwd: journal() })).out.split('\n')[0]).toBe('bag 14');
  });

  test('nothing found says so, and no words are a question', async () => {
    const cwd = journal();
    expect(await run(['find', 'gearbox'], { cwd })).toMatchObject({
      exit: 0,
      out: '',
      err: expect.stringContaining('Nothing has all of these words'),
    });
    expect(await run(['find'], { cwd })).toMatchObject({ exit: 2, err: expect.stringContaining('WORDS') });
    expect(await run(['find', ' '], { cwd })).toMatchObject({ exit: 2, err: expect.stringContaining('say what to find') });
    expect(await run(['find', 'drum', '--content', 'nowhere'], { cwd })).toMatchObject({ exit: 3 });
  });
});

describe('from what the last check left', () => {
  const cacheOf = (cwd: string): string => join(cwd, '.asfound-cache', 'things');

  test('check leaves it; it is read while no file has changed, and made again when one has', async () => {
    const cwd = journal();
    await run(['check'], { cwd });
    const [name = ''] = readdirSync(cacheOf(cwd));
    expect(await found(cwd, 'spare')).toEqual(['part | drum-donor | Spare drum | in stores, shelf B2']);
    put(cwd, 'parts/brakes.yaml', PARTS.replace('Spare drum', 'Spare drum, lined'));
    expect(await found(cwd, 'spare')).toEqual(['part | drum-donor | Spare drum, lined | in stores, shelf B2']);
    put(cwd, 'sessions/2031-03-13.md', 'Put [it](part:drum) down.');
    expect(await found(cwd, 'spare')).toEqual(['part | drum-donor | Spare drum, lined | in stores, shelf B2']);
    expect(readdirSync(cacheOf(cwd))).toEqual([name]);
  });

  test('what is damaged there is made again', async () => {
    const cwd = journal();
    const before = await found(cwd, 'drum');
    const [name = ''] = readdirSync(cacheOf(cwd));
    writeFileSync(join(cacheOf(cwd), name), 'not what was written');
    expect(await found(cwd, 'drum')).toEqual(before);
  });

  test('a check for a past day leaves nothing', async () => {
    const cwd = journal();
    await run(['check', '--to', '2031-03-01'], { cwd });
    expect(existsSync(cacheOf(cwd))).toBe(false);
  });
});
