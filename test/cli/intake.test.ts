/** What a phone dumped comes to its evenings: by its own time, nothing twice, nothing over another, nothing lost. */
import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { folderWith, put } from '../load/folder.ts';
import { box, FIRST, film, track } from '../photos/sample-film.ts';
import { jpegTaken } from '../photos/sample-pictures.ts';
import { JOURNAL } from './journal.ts';
import { run } from './run.ts';

const NOTE = 'van/sessions/2031-03-02-drum.md';
const FOLDERED = { ...JOURNAL, 'van/sessions/2031-03-02-drum/index.md': JOURNAL[NOTE] ?? '' };
delete (FOLDERED as Record<string, string>)[NOTE];
const IN = 'van/sessions/2031-03-02-drum';

/** A film whose movie header says a moment, in seconds since 1970, as version 0 or 1 has it. */
function filmTaken(instant: number, version: 0 | 1 = 0): Buffer {
  const time = Buffer.alloc(version === 0 ? 4 : 8);
  if (version === 0) time.writeUInt32BE(instant + 2_082_844_800);
  else time.writeBigUInt64BE(BigInt(instant + 2_082_844_800));
  const header = box('mvhd', Buffer.from([version, 0, 0, 0]), time, time, Buffer.alloc(88));
  return Buffer.concat([FIRST, box('mdat', `frames of ${instant}`), box('moov', header, track())]);
}
const at = (moment: string): number => Date.parse(moment) / 1000;

const filesIn = (cwd: string, folder: string): string[] => readdirSync(join(cwd, folder)).sort();
const intake = (cwd: string, ...more: string[]) => run(['intake', 'dump', '--content', 'van', ...more], { cwd });

describe('pictures and clips', () => {
  test('are taken in beside nothing that a stopped run left, in the folder of that evening or of another', async () => {
    const gone = spawnSync(process.execPath, ['-e', '']).pid;
    const half = (folder: string): string => `van/sessions/${folder}/.unfinished-${gone}-a0a0a0a0a0a0`;
    const own = 'van/sessions/2031-02-01-lamps/.unfinished-thoughts';
    const cwd = folderWith({
      ...FOLDERED,
      [half('2031-03-02-drum')]: 'half a picture',
      [half('2031-02-01-lamps')]: 'half a picture',
      [own]: 'of the user',
      'dump/evening.jpg': await jpegTaken('2031:03:02 21:00:00', null),
    });
    await intake(cwd, '--dry-run');
    expect(filesIn(cwd, 'van/sessions/2031-02-01-lamps')).toHaveLength(2);
    expect((await intake(cwd)).exit).toBe(0);
    expect(filesIn(cwd, IN)).toEqual(['evening.jpg', 'index.md']);
    expect(filesIn(cwd, 'van/sessions/2031-02-01-lamps')).toEqual(['.unfinished-thoughts']);
  });

  test('go to the evening they were taken on, by their own time and the zone of the journal, up to four in the night', async () => {
    const cwd = folderWith({
      ...FOLDERED,
      'dump/evening.jpg': await jpegTaken('2031:03:02 21:00:00', null),
      // One in the night in London, which is the evening of the second.
      'dump/deep/abroad.jpg': await jpegTaken('2031:03:03 02:10:00', '+01:00', 300),
      'dump/reel.mp4': filmTaken(at('2031-03-02T22:00:00Z')),
      'dump/long.mov': filmTaken(at('2031-03-03T03:30:00Z'), 1),
      'dump/20310302_203000.mp4': film(),
    });
    const { exit, out, err } = await intake(cwd);
    expect(exit).toBe(0);
    expect(filesIn(cwd, IN)).toEqual(['20310302_203000.mp4', 'abroad.jpg', 'evening.jpg', 'index.md', 'long.mov', 'reel.mp4']);
    expect(readFileSync(join(cwd, IN, 'abroad.jpg'))).toEqual(readFileSync(join(cwd, 'dump/deep/abroad.jpg')));
    expect(out).toContain(`dump/evening.jpg -> ${IN}/evening.jpg\n`);
    expect(err).toContain('To mark under `film` in sessions/2031-03-02-drum/index.md:\n');
    expect(err).toContain('  - { clip: "reel.mp4", title: …, shows: { "0:00": … } }\n');
    expect(err).toMatch(/2 pictures and 3 clips copied, 0 there already, 0 left\.\n$/);
    expect((await run(['check', '--content', 'van'], { cwd })).exit).toBe(0);
  });

  test('without a note are left, and the command that is offered makes the note and takes them in', async () => {
    const cwd = folderWith({
      ...FOLDERED,
      'dump/a.jpg': await jpegTaken('2031:03:05 20:00:00', null),
      'dump/b.mp4': filmTaken(at('2031-03-05T20:30:00Z')),
    });
    const { err } = await intake(cwd);
    expect(filesIn(cwd, IN)).toEqual(['index.md']);
    const offered = /No note of 2031-03-05, 1 picture and 1 clip: asfound (.*)\n/.exec(err)?.[1] ?? '';
    expect(offered).toBe('new --content van --date 2031-03-05 --from dump');
    const made = await run(offered.split(' '), { cwd });
    expect(made.exit).toBe(0);
    const folder = 'van/sessions/2031-03-05-evening-in-the-workshop';
    expect(filesIn(cwd, folder)).toEqual(['a.jpg', 'b.mp4', 'index.md']);
    const note = readFileSync(join(cwd, folder, 'index.md'), 'utf8');
    expect(note).toMatch(/^pictures:\n {2}# - \{ file: "a\.jpg", .*\} # 20:00$/m);
    expect(note).toMatch(/^film:\n {2}# - \{ clip: "b\.mp4", .*\} # 20:30$/m);
    expect((await run(['check', '--content', 'van'], { cwd })).exit).toBe(0);
    expect((await intake(cwd)).err).toMatch(/no pictures copied, 2 there already, 0 left\.\n$/);
  });

  test('come once, whatever they are called, and never over another', async () => {
    const one = await jpegTaken('2031:03:02 20:00:00', null);
    const other = await jpegTaken('2031:03:02 20:01:00', null, 300);
    const third = await jpegTaken('2031:03:02 20:02:00', null, 280);
    const cwd = folderWith({
      ...FOLDERED,
      [`${IN}/Hub.JPG`]: one,
      'dump/copy.jpg': one,
      'dump/hub.jpg': other,
      'dump/more/hub.jpg': third,
      'dump/z.jpg': other,
    });
    expect((await intake(cwd)).err).toMatch(/2 pictures copied, 2 there already, 0 left\.\n$/);
    expect(filesIn(cwd, IN)).toEqual(['Hub.JPG', 'hub-2.jpg', 'hub-3.jpg', 'index.md']);
    expect(readFileSync(join(cwd, IN, 'Hub.JPG'))).toEqual(one);
    expect(readFileSync(join(cwd, IN, 'hub-2.jpg'))).toEqual(other);
    expect((await intake(cwd)).err).toMatch(/no pictures copied, 4 there already/);
  });

  test('are shown and not copied in a dry run, and taken out of the folder only when asked', async () => {
    const cwd = folderWith({ ...JOURNAL, 'dump/a.jpg': await jpegTaken('2031:03:02 20:00:00', null), 'dump/letter.txt': 'mine' });
    const dry = await intake(cwd, '--dry-run', '--move');
    expect(dry.out).toBe(`dump/a.jpg -> ${IN}/a.jpg\n`);
    expect([existsSync(join(cwd, IN)), filesIn(cwd, 'dump')]).toEqual([false, ['a.jpg', 'letter.txt']]);
    const moved = await intake(cwd, '--move');
    expect(moved.err).toContain('1 picture moved');
    expect(filesIn(cwd, 'dump')).toEqual(['letter.txt']);
  });

  test('of a note that is a file alone bring it into a folder with them, and it is the same session', async () => {
    const cwd = folderWith({ ...JOURNAL, 'dump/a.jpg': await jpegTaken('2031:03:02 20:00:00', null) });
    await intake(cwd);
    expect([existsSync(join(cwd, NOTE)), filesIn(cwd, IN)]).toEqual([false, ['a.jpg', 'index.md']]);
    expect(readFileSync(join(cwd, IN, 'index.md'), 'utf8')).toBe(JOURNAL[NOTE]);
    expect((await run(['check', '--content', 'van'], { cwd })).err).toBe('no errors, no warnings in 1 note\n');
  });

  test('of a note alone that names files beside it are left', async () => {
    const linked = `${JOURNAL[NOTE]}See [the bill](../papers/bill.pdf).\n`;
    const cwd = folderWith({
      ...JOURNAL,
      [NOTE]: linked,
      'van/papers/bill.pdf': '%PDF',
      'dump/a.jpg': await jpegTaken('2031:03:02 20:00:00', null),
    });
    const { err } = await intake(cwd);
    expect(err).toContain('van/sessions/2031-03-02-drum.md names files beside it');
    expect(err).toMatch(/no pictures copied, 0 there already, 1 left\.\n$/);
    expect(readFileSync(join(cwd, NOTE), 'utf8')).toBe(linked);
  });

  test('that tell no time, are broken, or of a day that cannot be are left and told', async () => {
    const whole = await jpegTaken('2031:03:02 20:00:00', null);
    const cwd = folderWith({
      ...FOLDERED,
      'dump/no-time.mp4': film(),
      'dump/cut.jpg': whole.subarray(0, whole.length - 400),
      'dump/old.jpg': await jpegTaken('2019:01:01 00:00:00', null),
      'dump/later.jpg': await jpegTaken('2031:03:13 20:00:00', null),
    });
    const { exit, err } = await intake(cwd);
    expect(exit).toBe(0);
    expect(err).toContain('dump/no-time.mp4 tells no time of its own');
    expect(err).toMatch(/dump\/cut\.jpg is cut short/);
    expect(err).toContain('dump/old.jpg says it was taken on 2019-01-01');
    expect(err).toContain('dump/later.jpg says it was taken on 2031-03-13');
    expect(err).toMatch(/no pictures copied, 0 there already, 4 left\.\n$/);
    expect(filesIn(cwd, 'dump')).toHaveLength(4);
  });

  test('that the journal has already are told to be there, whatever day they tell, or none', async () => {
    const [bare, old] = [film(), await jpegTaken('2019:01:01 00:00:00', null)];
    const cwd = folderWith({ ...FOLDERED, [`${IN}/reel.mp4`]: bare, [`${IN}/old.jpg`]: old, 'dump/no-time.mp4': bare, 'dump/b.jpg': old });
    expect((await intake(cwd)).err).toBe('no pictures copied, 2 there already, 0 left.\n');
    expect(filesIn(cwd, 'dump')).toHaveLength(2);
    expect((await intake(cwd, '--move')).err).toBe('no pictures moved, 2 there already, 0 left.\n');
    expect(filesIn(cwd, 'dump')).toEqual([]);
  });

  test('of two notes of one day go to the one whose hours they fall into', async () => {
    const note = (title: string, time: string) =>
      `---\ndate: 2031-03-04\ntitle: ${title}\nhours: [{ by: me, on: brakes, time: ${time} }]\n---\n`;
    const cwd = folderWith({
      ...JOURNAL,
      'van/sessions/2031-03-04-a/index.md': note('A', '09:00-11:00'),
      'van/sessions/2031-03-04-b/index.md': note('B', '19:00-21:00'),
      'dump/a.jpg': await jpegTaken('2031:03:04 20:00:00', null),
      'dump/b.jpg': await jpegTaken('2031:03:04 15:00:00', null, 300),
    });
    await intake(cwd);
    expect([filesIn(cwd, 'van/sessions/2031-03-04-a'), filesIn(cwd, 'van/sessions/2031-03-04-b')]).toEqual([
      ['b.jpg', 'index.md'],
      ['a.jpg', 'index.md'],
    ]);
  });

  test('are not looked for in the journal, nor where nothing is', async () => {
    const cwd = folderWith(FOLDERED);
    mkdirSync(join(cwd, 'van/sessions/inbox'));
    expect((await run(['intake', 'van/sessions/inbox', '--content', 'van'], { cwd })).err).toContain('lies in the journal');
    expect((await intake(cwd)).exit).toBe(3);
    expect((await run(['intake', '--content', 'van'], { cwd })).err).toContain('needs FOLDER');
  });
});

describe('a new note', () => {
  test('finds the pictures of the evening where ASFOUND_PHOTOS says, and says of which days there are others', async () => {
    const cwd = folderWith({
      ...FOLDERED,
      'phone/a.jpg': await jpegTaken('2031:03:12 19:00:00', null),
      'phone/b.jpg': await jpegTaken('2031:03:01 19:00:00', null, 300),
    });
    const made = await run(['new', '--content', 'van'], { cwd, env: { ASFOUND_PHOTOS: 'phone' } });
    expect(made.out).toContain('/a.jpg\n');
    const none = await run(['new', '--content', 'van', '--date', '2031-03-10', '--from', 'phone'], { cwd });
    expect(none.err).toContain(
      'phone has no picture of 2031-03-10 that the journal does not have. It has some of 2031-03-01, 2031-03-12.\n',
    );
    expect((await run(['new', '--content', 'van', '--from', 'nowhere'], { cwd })).exit).toBe(3);
  });

  test('takes another name where a note that is a file alone has it', async () => {
    const cwd = folderWith(FOLDERED);
    put(cwd, 'van/sessions/2031-03-12-evening-in-the-workshop.md', 'mine');
    const { out } = await run(['new', '--content', 'van'], { cwd });
    expect(out).toBe('van/sessions/2031-03-12-evening-in-the-workshop-2/index.md\n');
  });
});
