/** A statement that was sent, set again: the same paper, whatever the notes and journal.yaml come to say. */
import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { parseHTML } from 'linkedom';
import { describe, expect, test } from 'vitest';
import { folderWith } from '../load/folder.ts';
import { JOURNAL } from './journal.ts';
import { run } from './run.ts';

const SETTINGS = `${JOURNAL['van/journal.yaml']?.replace('rate: 0', 'rate: 30.00')}
workshop: { name: The workshop, tax-number: GB 000, tax: 20% }
client: { name: The owner }
mark-up: { part: 10% }
statement: { shows: [costs, mark-up, not-charged] }
`;

const FIELDS = `hours:
  - { by: me, on: brakes, time: 2h }
  - { by: me, on: brakes, time: 1h30m, unpaid: still learning }
bought:
  - { what: Pin, as: part, for: drum, cost: 60.00, tax: 20% }
  - { what: Broken pin, as: part, for: drum, cost: 6.00, tax: exempt, not-charged: our mistake }
sold: [{ what: Old lamps, on: brakes, price: 12.00, tax: 20% }]
received: [{ from: The owner, amount: 50.00, for: deposit }]
`;

const note = (date: string, fields: string) => `---\ndate: ${date}\ntitle: Evening\n${fields}---\n`;
const LATE = 'hours: [{ by: me, on: brakes, time: 30m }]\nreceived: [{ from: The owner, amount: 5.00 }]\n';

/** The tables of a statement, by their titles. */
function tablesOf(page: string): Map<string, string[][]> {
  const { document } = parseHTML(page);
  const cells = (row: Element): string[] => [...row.querySelectorAll('td')].map(({ textContent }) => textContent ?? '');
  return new Map(
    [...document.querySelectorAll('h2')].map((title) => [
      title.textContent ?? '',
      [...(title.nextElementSibling?.querySelectorAll('tbody tr, tfoot tr') ?? [])].map(cells),
    ]),
  );
}

/** Writes a statement of the journal in a folder, and gives its text. */
const writer =
  (cwd: string) =>
  async (file: string, ...more: string[]) => {
    expect(await run(['statement', '--content', 'van', '--out', file, ...more], { cwd })).toMatchObject({ exit: 0, err: '' });
    return readFileSync(join(cwd, file), 'utf8');
  };

/** A journal whose first statement was closed, and that as it was sent. */
async function closed() {
  const cwd = folderWith({ ...JOURNAL, 'van/journal.yaml': SETTINGS, 'van/sessions/2031-03-05-pin.md': note('2031-03-05', FIELDS) });
  const write = writer(cwd);
  // Before it is sent nothing is owed on it, so it is of no age; all else is as it is sent.
  const open = await write('open.csv');
  expect(open).toMatch(/^owed,,/m);
  const sentCsv = open.replace(/^owed,,/m, 'owed,2031-03-05,');
  return { cwd, write, sentCsv, sent: await write('sent.html', '--close') };
}

describe('a statement that was closed', () => {
  test('has its own sum on the statements that were sent', async () => {
    const { sent } = await closed();
    // 2 h at 30.00 and its tax is 72.00; 50.00 with 10 % and tax is 66.00; less 12.00.
    expect(tablesOf(sent).get('The account on 5 Mar 2031')).toEqual([
      ['On statements that were sent', '£126.00'],
      ['On none yet', '£0.00'],
      ['Received', '−£50.00'],
      ['To pay, the oldest since 5 Mar 2031', '£76.00'],
    ]);
  });

  test('tells the tax inside what was paid apart from what was sold for, of no labour of its own and of nothing that is not charged', async () => {
    const { sent } = await closed();
    expect(tablesOf(sent).get('Tax, inside what was paid')).toEqual([
      ['At 20 %', '£50.00', '£10.00', '£60.00'],
      ['Sold, at 20 %', '−£10.00', '−£2.00', '−£12.00'],
    ]);
  });

  test('charges its days: one of a day within or before them is refused, with what to do', async () => {
    const { cwd } = await closed();
    const more = note('2031-03-09', 'hours: [{ by: me, on: brakes, time: 1h }]\n');
    writeFileSync(join(cwd, 'van/sessions/2031-03-09-on.md'), more);
    writeFileSync(join(cwd, 'van/sessions/2031-03-04-early.md'), note('2031-03-04', 'hours: [{ by: me, on: brakes, time: 1h }]\n'));
    for (const asked of [['--out', 'twice.html'], ['--close']]) {
      const { exit, err } = await run(['statement', '--content', 'van', '--to', '2031-03-04', ...asked], { cwd });
      expect([exit, err]).toEqual([2, expect.stringContaining('--to 2031-03-04 is within statement 1, which was closed: it charges ')]);
      expect(err).toContain('`--number 1` sets it as it was sent');
    }
    expect(readdirSync(join(cwd, 'van/statements'))).toEqual(['0001.yaml']);
    expect(await run(['statement', '--content', 'van', '--to', '2031-03-05', '--out', 'late.html'], { cwd })).toMatchObject({ exit: 0 });
  });

  test('is not closed twice: it is said that it is, in which file it is kept, and how it is seen', async () => {
    const { cwd } = await closed();
    const said =
      'Nothing is left to close: statement 1, which is closed (statements/0001.yaml), has charged 2031-03-01 to 2031-03-05 already. `statement --number 1 --out FILE.pdf` sets it as it was sent.';
    for (const days of [[], ['--to', '2031-03-05'], ['--from', '2031-03-01']])
      expect(await run(['statement', '--content', 'van', '--close', ...days], { cwd })).toMatchObject({
        exit: 2,
        out: '',
        err: expect.stringContaining(said),
      });
    writeFileSync(join(cwd, 'van/sessions/2031-03-09-on.md'), note('2031-03-09', 'private: nothing\n'));
    const { err } = await run(['statement', '--content', 'van', '--close'], { cwd });
    expect(err).toContain('Nothing of 2031-03-06 to 2031-03-09 is charged, so there is nothing to close.');
    expect(readdirSync(join(cwd, 'van/statements'))).toEqual(['0001.yaml']);
  });

  test('is set again as it was sent', async () => {
    const { write, sent, sentCsv } = await closed();
    expect([...tablesOf(sent).keys()]).toEqual(expect.arrayContaining(['Not charged', 'Tax, inside what was paid']));
    expect(await write('again.html', '--number', '1')).toBe(sent);
    expect(tablesOf(sent).get('Not charged')).toHaveLength(2);
    expect(await write('again.csv', '--number', '1')).toBe(sentCsv);
  });

  test('is so after more was told of its days, and the next has only that', async () => {
    const { cwd, write, sent } = await closed();
    writeFileSync(join(cwd, 'van/sessions/2031-03-04-late.md'), note('2031-03-04', LATE));
    writeFileSync(join(cwd, 'van/sessions/2031-03-09-on.md'), note('2031-03-09', 'hours: [{ by: me, on: brakes, time: 1h }]\n'));
    writeFileSync(join(cwd, 'van/journal.yaml'), SETTINGS.replace('[costs, mark-up, not-charged]', '[not-charged]'));
    expect(await write('later.html', '--number', '1')).toBe(sent);
    const next = await write('next.html', '--close');
    expect(tablesOf(next).get('Not charged')).toBeUndefined();
    expect(
      tablesOf(next)
        .get('Labour')
        ?.map(([day, what]) => [day, what]),
    ).toEqual([
      ['4 Mar 2031', 'Somebody: Evening (late: of an earlier statement’s time)'],
      ['9 Mar 2031', 'Somebody: Evening'],
      ['', 'Sum'],
    ]);
    expect(await write('next-again.html', '--number', '2')).toBe(next);
    expect(await write('later-still.html', '--number', '1')).toBe(sent);
  });

  test('is to whom it was sent, from whom, and with tax, though the client moves and the workshop charges tax no more', async () => {
    const { cwd, write, sent, sentCsv } = await closed();
    const moved = SETTINGS.replace(', tax-number: GB 000, tax: 20%', '').replace('name: The owner', 'name: The heirs, address: Elsewhere');
    writeFileSync(join(cwd, 'van/journal.yaml'), moved);
    expect(await write('again.html', '--number', '1')).toBe(sent);
    expect(await write('again.csv', '--number', '1')).toBe(sentCsv);
  });
});

describe('a statement that cannot be written', () => {
  const opened = () =>
    folderWith({ ...JOURNAL, 'van/journal.yaml': SETTINGS, 'van/sessions/2031-03-05-pin.md': note('2031-03-05', FIELDS) });
  const CLOSE = ['statement', '--content', 'van', '--close', '--out'];

  test('where a file of that name is, is not closed either', async () => {
    const cwd = opened();
    writeFileSync(join(cwd, 'sent.pdf'), 'mine');
    expect(await run([...CLOSE, 'sent.pdf'], { cwd })).toMatchObject({ exit: 3, out: '' });
    expect(readFileSync(join(cwd, 'sent.pdf'), 'utf8')).toBe('mine');
    expect(existsSync(join(cwd, 'van/statements'))).toBe(false);
  });

  test('for its place, is not closed either', async () => {
    const cwd = opened();
    writeFileSync(join(cwd, 'file'), '');
    expect(await run([...CLOSE, 'file/sent.pdf'], { cwd })).toMatchObject({ exit: 3, out: '' });
    expect(existsSync(join(cwd, 'van/statements'))).toBe(false);
  });

  test('for the disk, stays closed, and is told how it is set again', async () => {
    const cwd = opened();
    const { exit, err } = await run([...CLOSE, '/proc/sent.pdf'], { cwd });
    expect(exit).toBe(3);
    expect(err).toMatch(/cannot be written: .* The statement is closed: `statement --number 1 --out \/proc\/sent\.pdf` sets it\.\n$/);
    expect(readdirSync(join(cwd, 'van/statements'))).toEqual(['0001.yaml']);
  });

  test('leaves nothing about of what was begun by one that was stopped', async () => {
    const cwd = opened();
    await writer(cwd)('sent.html', '--close');
    writeFileSync(join(cwd, '.unfinished-999999999-0123456789ab'), 'half of it');
    expect(await run([...CLOSE, 'again.html'], { cwd })).toMatchObject({ exit: 2 });
    expect(readdirSync(cwd).filter((name) => name.startsWith('.unfinished'))).toEqual([]);
  });
});
