import { existsSync, readdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { allCommands } from '../../src/cli/commands.ts';
import { folderWith, put } from '../load/folder.ts';
import { JOURNAL } from './journal.ts';
import { run } from './run.ts';

const NOTE = 'van/sessions/2031-03-02-drum.md';
const wrong = { ...JOURNAL, [NOTE]: (JOURNAL[NOTE] ?? '').replace('{ part: drum, did', '{ part: drun, did') };

describe('the command line', () => {
  test('without a command is not understood, and says what there is', async () => {
    const { exit, out, err } = await run([], { cwd: '/' });
    expect([exit, out]).toEqual([2, '']);
    for (const { name } of await allCommands()) expect(err).toContain(name);
  });

  test.each(['99999999999999999', '-1', 'abc', '1e3', '1.5'])(
    'with a day of building that is none, %s, is not understood',
    async (epoch) => {
      const { exit, err } = await run(['check', '--content', 'van'], { cwd: folderWith(JOURNAL), env: { SOURCE_DATE_EPOCH: epoch } });
      expect([exit, err.includes('SOURCE_DATE_EPOCH'), err.includes(epoch)]).toEqual([2, true, true]);
    },
  );

  test.each([1970, 2106])('by a clock that is at the year %i is told, before anything is made', async (year) => {
    const { exit, err } = await run(['check', '--content', 'van'], { cwd: folderWith(JOURNAL), now: new Date(year, 5, 1) });
    expect([exit, err]).toEqual([3, expect.stringContaining(`the year ${year}`)]);
  });

  test('says of a past day how many notes there were by then', async () => {
    const cwd = folderWith({ ...JOURNAL, 'van/sessions/2031-03-05.md': '---\ndate: 2031-03-05\ntitle: Later\n---\n' });
    const told = async (...to: string[]) => (await run(['check', '--content', 'van', ...to], { cwd })).err;
    expect([await told('--to', '2031-03-04'), await told()]).toEqual([
      expect.stringContaining('in 1 note\n'),
      expect.stringContaining('in 2 notes\n'),
    ]);
  });

  test('does not put a site into the notes by way of a link', async () => {
    const cwd = folderWith(JOURNAL);
    symlinkSync('van/sessions', join(cwd, 'near'));
    const { exit, err } = await run(['build', '--content', 'van', '--out', 'near/site'], { cwd });
    expect([exit, err.includes('lies in sessions/')]).toEqual([2, true]);
  });

  test('has help for all, and for each with its options and the exit codes', async () => {
    expect((await run(['--help'], { cwd: '/' })).out).toContain('Exit codes');
    for (const { name, options } of await allCommands()) {
      const { exit, out, err } = await run([name, '--help'], { cwd: '/' });
      expect([exit, err]).toEqual([0, '']);
      for (const option of Object.keys(options)) expect(out, name).toContain(`--${option}`);
      expect(out).toContain('Exit codes');
    }
  });

  test.each([
    [['chek'], 'Did you mean `check`?'],
    [['check', '--contnt', 'x'], 'Did you mean `--content`?'],
    [['check', '--content'], '`--content` needs its value: `--content DIR`'],
    [['build', '--force=yes'], '`--force` takes no value'],
    [['chekc'], 'Did you mean `check`?'],
    [['labels', '--content', 'van', '--out', 'labels.txt'], 'FILE.pdf'],
    [['new', '--content', 'van', '--date', '1990-01-01'], 'before the vehicle arrived'],
    [['build', '--content', 'van', '--out', 'van/sessions/site'], 'lies in sessions/'],
    [['check', 'extra'], 'takes nothing'],
    [['init'], 'needs DIR'],
    [['check', '--format', 'xml'], 'text or json'],
  ])('%j is not understood, with the way out and no stack trace', async (argv, says) => {
    const { exit, out, err } = await run(argv, { cwd: folderWith(JOURNAL) });
    expect([exit, out]).toEqual([2, '']);
    expect(err).toContain(says);
    expect(err).not.toMatch(/^\s+at /m);
  });

  test('looks at its options before the journal', async () => {
    const cwd = folderWith(wrong);
    const bags = await run(['labels', '--content', 'van', '--out', 'l.pdf', '--bags', 'x'], { cwd });
    const from = await run(['statement', '--content', 'van', '--out', 's.csv', '--from', 'x'], { cwd });
    expect([bags.exit, bags.err]).toEqual([2, 'asfound: --bags takes numbers such as 12-20,25, not `x`.\n']);
    expect([from.exit, from.err.startsWith('asfound: --from: ')]).toEqual([2, true]);
  });

  test('says in words what the system refused', async () => {
    const { exit, err } = await run(['init', 'a/b'], { cwd: folderWith({ a: 'a file' }) });
    expect(exit).toBe(3);
    expect(err).toMatch(/cannot be written: what should be a folder on the way to it is a file\.\n$/);
  });

  test('writes no note where there is no journal', async () => {
    const cwd = folderWith({ 'x/letter.txt': 'mine' });
    const { exit, err } = await run(['new', '--content', 'x'], { cwd });
    expect(exit).toBe(3);
    expect(err).toContain('it has no journal.yaml');
    expect(readdirSync(join(cwd, 'x'))).toEqual(['letter.txt']);
  });

  test('says in one line what the system refused', async () => {
    const { exit, err } = await run(['check', '--content', 'nowhere'], { cwd: folderWith({}) });
    expect(exit).toBe(3);
    expect(err.trim().split('\n')).toHaveLength(1);
    expect((await run(['check', '--content', 'a'], { cwd: folderWith({ a: 'file' }) })).exit).toBe(3);
  });
});

describe('check', () => {
  test('finds the journal by option, by environment, in ./content and where one stands', async () => {
    const cwd = folderWith(JOURNAL);
    expect((await run(['check', '--content', 'van'], { cwd })).exit).toBe(0);
    expect((await run(['check'], { cwd, env: { ASFOUND_CONTENT: join(cwd, 'van') } })).exit).toBe(0);
    expect((await run(['check'], { cwd: join(cwd, 'van') })).exit).toBe(0);
    for (const [path, text] of Object.entries(JOURNAL)) put(cwd, path.replace('van/', 'content/'), text);
    expect((await run(['check'], { cwd })).err).toContain('in 1 note');
  });

  test('ends with 1 and shows the place, the source and the nearest name, on standard error', async () => {
    const { exit, out, err } = await run(['check', '--content', 'van'], { cwd: folderWith(wrong) });
    expect([exit, out]).toEqual([1, '']);
    expect(err).toMatch(/^van\/sessions\/2031-03-02-drum\.md:5:13 {2}error A401/m);
    expect(err).toMatch(/^ +\| +\^{4}$/m);
    expect(err).toContain('Did you mean `drum`?');
    expect(err).toMatch(/\d errors?, no warnings in 1 note\n$/);
  });

  test('in JSON is one object on standard output, and nothing beside it', async () => {
    const { exit, out, err } = await run(['check', '--content', 'van', '--format', 'json'], { cwd: folderWith(wrong) });
    expect([exit, err]).toEqual([1, '']);
    expect(JSON.parse(out)).toMatchObject({ version: 1, notes: 1, diagnostics: [{ code: 'A401', line: 5, column: 13 }] });
  });

  test('is in colour on a terminal, unless the environment says no', async () => {
    const cwd = folderWith(wrong);
    const colourCode = '\u001b[';
    expect((await run(['check', '--content', 'van'], { cwd, terminal: true })).err).toContain(colourCode);
    expect((await run(['check', '--content', 'van'], { cwd, terminal: true, env: { NO_COLOR: '1' } })).err).not.toContain(colourCode);
    expect((await run(['check', '--content', 'van'], { cwd })).err).not.toContain(colourCode);
  });

  test('writes nothing into the journal', async () => {
    const cwd = folderWith(JOURNAL);
    const before = readdirSync(join(cwd, 'van'), { recursive: true }).sort();
    await run(['check', '--content', 'van'], { cwd });
    expect(readdirSync(join(cwd, 'van'), { recursive: true }).sort()).toEqual(before);
  });
});

describe('init', () => {
  test.each([
    [['init', 'mine'], 'no errors, no warnings in no notes\n'],
    [['init', 'mine', '--sample'], 'no errors, no warnings in 2 notes\n'],
  ])('%j makes a journal that has no errors, whatever the day', async (argv, says) => {
    const now = new Date(2032, 1, 29, 12);
    const cwd = folderWith({});
    expect((await run(argv, { cwd, now })).exit).toBe(0);
    const { exit, err } = await run(['check', '--content', 'mine'], { cwd, now });
    expect([exit, err]).toEqual([0, says]);
  });

  test('makes one without evenings, in which the first is begun at once, after midnight too', async () => {
    const now = new Date(2032, 1, 29, 0, 30);
    const cwd = folderWith({});
    const { out } = await run(['init', 'mine'], { cwd, now });
    expect(out).toContain('asfound write --content mine');
    expect(existsSync(join(cwd, 'mine/sessions'))).toBe(false);
    const made = await run(['new', '--content', 'mine'], { cwd, now });
    expect([made.exit, made.out]).toEqual([0, 'mine/sessions/2032-02-28-evening-in-the-workshop/index.md\n']);
    // The catalogue holds when its comments are taken away.
    const parts = readFileSync(join(cwd, 'mine/parts/brakes.yaml'), 'utf8').replaceAll(/^# (?=- | {2})/gm, '');
    writeFileSync(join(cwd, 'mine/parts/brakes.yaml'), parts);
    expect((await run(['check', '--content', 'mine'], { cwd, now })).err).toBe('no errors, no warnings in 1 note\n');
    expect((await run(['find', 'drum', '--content', 'mine'], { cwd, now })).out).toContain('front-drum-near');
  });

  test('says of its sample how it is deleted, and that leaves a sound journal', async () => {
    const cwd = folderWith({});
    const { out } = await run(['init', 'mine', '--sample'], { cwd });
    expect(out).toContain('delete the two folders in sessions/ and the parts in parts/brakes.yaml');
    const notes = readdirSync(join(cwd, 'mine/sessions'));
    expect(notes).toHaveLength(2);
    for (const note of notes) {
      expect(readFileSync(join(cwd, `mine/sessions/${note}/index.md`), 'utf8')).toMatch(/This evening is an example.*delete its folder/s);
      rmSync(join(cwd, 'mine/sessions', note), { recursive: true });
    }
    writeFileSync(join(cwd, 'mine/parts/brakes.yaml'), '# None yet.\n');
    expect((await run(['check', '--content', 'mine'], { cwd })).err).toBe('no errors, no warnings in no notes\n');
  });

  test('leaves a folder alone that is not empty', async () => {
    const cwd = folderWith({ 'mine/letter.txt': 'x' });
    const { exit, err } = await run(['init', 'mine'], { cwd });
    expect(exit).toBe(3);
    expect(err).toContain('not empty');
    expect(readdirSync(join(cwd, 'mine'))).toEqual(['letter.txt']);
  });
});

describe('new', () => {
  const made = (out: string, cwd: string): string => readFileSync(join(cwd, out.trim()), 'utf8');

  test('writes a note of today that checks, with all that is open, and the bags', async () => {
    const cwd = folderWith(JOURNAL);
    const { exit, out } = await run(['new', '--content', 'van', '--title', 'Wheel: off & "on"'], { cwd });
    expect(exit).toBe(0);
    expect(out).toBe('van/sessions/2031-03-12-wheel-off-on/index.md\n');
    const text = made(out, cwd);
    expect(text).toContain('date: 2031-03-12');
    expect(text).toMatch(/#.*pipe-capped/);
    expect(text).toMatch(/#.*buy-fluid/);
    expect(text).toMatch(/# To do:\n# +polish: Polish it \(before road-test\)\n/);
    expect(text).toMatch(/# Bags still filled:\n# +1: drum \(drum\)\n/);
    expect((await run(['check', '--content', 'van'], { cwd })).err).toBe('no errors, no warnings in 2 notes\n');
  });

  test('after midnight is of the evening before, and says so', async () => {
    const cwd = folderWith(JOURNAL);
    const { out, err } = await run(['new', '--content', 'van'], { cwd, now: new Date(2031, 2, 12, 0, 30) });
    expect(out).toContain('van/sessions/2031-03-11-');
    expect(err).toContain('the evening of 2031-03-11; --date 2031-03-12 says otherwise');
    expect((await run(['new', '--content', 'van'], { cwd, now: new Date(2031, 2, 12, 4, 0) })).out).toContain('van/sessions/2031-03-12-');
  });

  test('never overwrites: a second one on the day gets another name', async () => {
    const cwd = folderWith(JOURNAL);
    const first = await run(['new', '--content', 'van'], { cwd });
    writeFileSync(join(cwd, first.out.trim()), 'mine');
    const second = await run(['new', '--content', 'van'], { cwd });
    expect(second.out).not.toBe(first.out);
    expect(made(first.out, cwd)).toBe('mine');
  });

  test('takes another day, and refuses one that is none or is still to come', async () => {
    const cwd = folderWith(JOURNAL);
    expect((await run(['new', '--content', 'van', '--date', '2031-03-05'], { cwd })).out).toContain('/2031-03-05-');
    for (const date of ['2031-02-30', '5 March', '2031-03-13']) {
      expect((await run(['new', '--content', 'van', '--date', date], { cwd })).exit, date).toBe(2);
    }
    expect(readdirSync(join(cwd, 'van/sessions'))).toHaveLength(2);
  });

  test('cannot be led out of the journal by a title', async () => {
    const cwd = folderWith(JOURNAL);
    const { out } = await run(['new', '--content', 'van', '--title', '../../../etc/passwd'], { cwd });
    expect(out).toBe('van/sessions/2031-03-12-etc-passwd/index.md\n');
    expect(existsSync(join(cwd, out.trim()))).toBe(true);
  });
});

describe('build', () => {
  test('with an error publishes nothing and leaves the last site as it is', async () => {
    const cwd = folderWith({ ...wrong, 'dist/.asfound-site': '{"made":"x","files":{"index.html":4}}', 'dist/index.html': 'last' });
    const { exit, out, err } = await run(['build', '--content', 'van'], { cwd });
    expect([exit, out]).toEqual([1, '']);
    expect(err).toContain('Nothing was published');
    expect(readdirSync(join(cwd, 'dist')).sort()).toEqual(['.asfound-site', 'index.html']);
    expect(readFileSync(join(cwd, 'dist/index.html'), 'utf8')).toBe('last');
  });

  test.each(['van', '.', 'letters'])('does not put a site over a folder of the user\u2019s: %s', async (out) => {
    const cwd = folderWith({ ...JOURNAL, 'letters/a.txt': 'x' });
    const { exit, err } = await run(['build', '--content', 'van', '--out', out], { cwd });
    expect(exit).toBe(3);
    expect(err).toContain('left alone');
    expect(existsSync(join(cwd, 'letters/a.txt'))).toBe(true);
  });
});
