/** Sheets and work orders, read back by a program that did not write them (PDFium). */
import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { PDFiumLibrary } from '@hyzyla/pdfium';
import { describe, expect, test } from 'vitest';
import { run } from '../cli/run.ts';
import { folderWith } from '../load/folder.ts';
import { orientedJpeg } from '../photos/sample-pictures.ts';

const FILES: Readonly<Record<string, string>> = {
  'van/journal.yaml': `title: The van
vehicle: { make: A make, model: A model, year: 1952, marks: { frame: QX 5207 } }
arrived: 2031-03-01
currency: GBP
time-zone: Europe/London
locale: en-GB
people: { rh: { name: Ruth Haskell-Dray, rate: 10.00 } }
subsystems: { brakes: { name: Brakes, budget: { hours: 10, money: 100.00 } } }
milestones: { road: Road test }
stores: [shelf B2]
`,
  'van/parts/brakes.yaml': `- { id: drum, name: Front drum, origin: original, evidence: It carries the works' stamp, marks: C 4417, hazard: asbestos }
- { id: drum-spare, name: Spare drum, origin: reproduction, for: drum, at: shelf B2 }
- { id: hose, name: Brake hose, origin: original, evidence: Never off }
- { id: nuts, name: Dome nuts, origin: original, count: 12, found: loose, at: shelf B2 }
- { id: shoes-near, name: "Rear shoes, near", origin: original }
- { id: shoes-off, name: "Rear shoes, off", origin: original }
- { id: rim, name: Lamp rims, origin: original, count: 2, found: loose, at: shelf B2 }
`,
  'van/sessions/2031-03-02-drum.md': `---
date: 2031-03-02
title: The drum goes out
hours: [{ by: rh, on: brakes, time: 2h }]
parts:
  - { part: drum, did: removed, to: shelf B2, condition: 2 }
  - { part: drum, did: sent-out, to: a turner, work: Skim to clean up, due: 2031-04-01, quoted: 48.60, note: Mind the bell. }
  - { part: drum-spare, did: fitted }
measured: [{ part: drum, what: inside diameter, as: found, value: 9.043 in, limits: 9.000..9.060 in }]
decisions: [{ part: drum, verdict: replace, with: drum-spare, because: Only until the drum is back. }]
opens: [{ id: bleed, kind: task, what: Bleed the brakes, before: road, on: brakes }, { id: which, kind: question, what: Which drum goes on the road, on: brakes }]
valued: [{ of: vehicle, value: 9000.00, basis: agreed value, by: a valuer }]
---
It went out wrapped in a blanket. Nobody has turned it before.
`,
  'van/sessions/2031-03-03-nuts.md':
    '---\ndate: 2031-03-03\ntitle: Nuts to the plater\nparts: [{ part: nuts, did: sent-out, to: a plater, work: Nickel }]\n---\n',
  'van/sessions/2031-03-10-nuts.md':
    '---\ndate: 2031-03-10\ntitle: Nuts back\nparts: [{ part: nuts, did: returned, count: 11, to: shelf B2 }]\n---\n',
};

const printed = (command: string, ...more: string[]): Promise<string> => printedIn(folderWith(FILES), command, ...more);

async function printedIn(cwd: string, command: string, ...more: string[]): Promise<string> {
  const ran = await run([command, '--content', 'van', '--out', 'a.pdf', ...more], { cwd });
  expect(ran).toEqual({ exit: 0, out: 'a.pdf\n', err: '' });
  const library = await PDFiumLibrary.init();
  const document = await library.loadDocument(readFileSync(join(cwd, 'a.pdf')));
  const text = [...document.pages()]
    .map((page) => page.getText())
    .join(' ')
    .replace(/\s+/g, ' ');
  document.destroy();
  library.destroy();
  return text;
}

describe('a work order', () => {
  test('says what goes out, how many, as it is, what is to be done and not, its hazards, due, quoted, and has lines to sign', async () => {
    const text = await printed('work-order', '--firm', 'a turner');
    for (const said of [
      'Front drum',
      'Skim to clean up',
      'Nothing else without asking',
      '1 April 2031',
      '£48.60',
      'C 4417',
      '9.043 in, limits 9.000..9.060 in',
      'Mind the bell.',
      'Assume asbestos',
      'Taken away and still out: 1 in all',
      'Brought back',
    ]) {
      expect(text, said).toContain(said);
    }
    expect(text).not.toContain('Brake hose');
  });

  test('of what goes along in another part says so, and neither its work nor its marks', async () => {
    const cwd = folderWith({
      ...FILES,
      'van/parts/brakes.yaml': `${FILES['van/parts/brakes.yaml']}- { id: lever, name: Lever, origin: original }\n- { id: knob, name: Knob, origin: original, in: lever }\n`,
      'van/sessions/2031-03-11-lever.md':
        '---\ndate: 2031-03-11\ntitle: Lever\nparts: [{ part: lever, did: [removed, sent-out], to: a smith, work: Re-nickel, marks: L 9, finish: nickel, note: Mind the thread. }]\n---\n',
    });
    const text = await printedIn(cwd, 'work-order', '--firm', 'a smith');
    const knob = text.slice(text.indexOf('Knob'), text.indexOf('Taken away'));
    expect(knob).toContain('Goes along in Lever; what is to be done is said of that');
    expect(knob).not.toMatch(/Re-nickel|L 9|Finish|Mind the thread/);
    expect(text.slice(text.indexOf('Taken away'))).toContain('2 in all');
  });

  test('of what came back short says how many were sent, came back and are owed', async () => {
    const text = await printed('work-order', '--firm', 'a plater');
    expect(text).toContain('Came back short 11 of 12 came back on 10 March 2031, 1 is still with a plater');
    expect(text).toContain('Taken away and still out: 1 in all');
  });

  test('of what went out for one price and came back in part says what the price is for', async () => {
    const cwd = folderWith({
      ...FILES,
      'van/sessions/2031-03-10-out.md':
        '---\ndate: 2031-03-10\ntitle: Out\nparts: [{ part: rim, count: 2, did: sent-out, to: a welder, work: Weld, quoted: 64.00 }]\n---\n',
      'van/sessions/2031-03-12-back.md':
        '---\ndate: 2031-03-12\ntitle: Back\nparts: [{ part: rim, count: 1, did: returned, from: a welder }]\n---\n',
    });
    expect(await printedIn(cwd, 'work-order', '--firm', 'a welder')).toContain('£64.00 for the 2 that were sent, of which 1 is still out');
  });

  test('shows the pictures of what goes out, with numbers on what they point at and their key', async () => {
    const cwd = folderWith({
      ...FILES,
      'van/sessions/2031-03-11-rim/index.md':
        '---\ndate: 2031-03-11\ntitle: The rim\nparts: [{ part: rim, count: 1, did: sent-out, to: a welder, work: Weld }]\npictures: [{ file: rim.jpg, shows: [rim], caption: From behind., points: [{ at: "10,20,30,40", shows: rim, note: Cracked here }, { at: "70,80", note: Sound }] }]\n---\n',
    });
    writeFileSync(join(cwd, 'van/sessions/2031-03-11-rim/rim.jpg'), await orientedJpeg(1));
    const text = await printedIn(cwd, 'work-order', '--firm', 'a welder');
    expect(text).toContain('From behind. 1 Lamp rims: Cracked here; 2 Sound');
    expect(text).toContain('Taken away and still out: 1 in all');
  });

  test('of some of a numbered lot says which', async () => {
    const cwd = folderWith({
      ...FILES,
      'van/parts/brakes.yaml': `${FILES['van/parts/brakes.yaml']}- { id: leaves, name: Spring leaves, origin: original, count: 4, numbered: I to IIII, found: loose, at: shelf B2 }\n`,
      'van/sessions/2031-03-11-leaves.md':
        '---\ndate: 2031-03-11\ntitle: Leaves\nparts: [{ part: leaves, which: [1, 3], did: sent-out, to: a spring smith, work: Re-set }]\n---\n',
    });
    expect(await printedIn(cwd, 'work-order', '--firm', 'a spring smith')).toContain('How many 2, numbers 1 and 3');
  });

  test('of a firm that has nothing is refused with those that have', async () => {
    const ran = await run(['work-order', '--content', 'van', '--firm', 'a smith', '--out', 'a.pdf'], { cwd: folderWith(FILES) });
    expect(ran).toMatchObject({ exit: 2, err: expect.stringContaining('a turner') });
  });

  test('is in no copy without the names of firms: what is with several would be told as with one', async () => {
    const ran = await run(['work-order', '--content', 'van', '--copy', 'public', '--firm', 'a firm', '--out', 'a.pdf'], {
      cwd: folderWith(FILES),
    });
    expect(ran).toMatchObject({ exit: 2, err: expect.stringContaining('the public copy leaves out the names of firms') });
  });
});

describe('a sheet', () => {
  test.each([
    [
      'buyer',
      [
        'What is original',
        'Never off',
        'Departures from the original',
        'stand-in',
        'Only until the drum is back.',
        'What comes with the vehicle',
        'Lamp rims × 2 In stores: shelf B2 as found',
        'What is missing from the record',
        'Came back short. Dome nuts: 11 of 12 came back on 10 March 2031',
        'Assume asbestos',
      ],
    ],
    [
      'inspector',
      [
        'QX 5207',
        'Came back short: Dome nuts: 11 of 12',
        'Departures from the original',
        'Ruth Haskell-Dray',
        'American Institute for Conservation',
        '1 decision, in place of no earlier one; it stays with its reason.',
        'Methods',
      ],
    ],
    [
      'insurer',
      [
        '£9,000.00',
        'agreed value',
        'Brakes',
        'Shelf B2',
        'Lamp rims × 2',
        'Out with a turner Front drum',
        'Came back short: Dome nuts: 11 of 12',
      ],
    ],
    [
      'client',
      [
        'March 2031',
        'The drum goes out',
        'It went out wrapped in a blanket.',
        '£20.00',
        'Before “Road test”',
        'Bleed the brakes',
        'Decisions wanted',
        'Which drum goes on the road',
        'Came back short',
        'Dome nuts: 11 of 12 came back on 10 March 2031, 1 is still with a plater.',
      ],
    ],
  ])('for a %s answers what is asked', async (reader, says) => {
    const text = await printed('sheet', '--for', reader);
    for (const said of says.filter((one) => one !== 'stand-in' && one !== 'Methods')) expect(text, said).toContain(said);
  });

  test('for an inspector says in whole sentences that there are neither numbers nor measurements', async () => {
    const cwd = folderWith({
      ...FILES,
      'van/journal.yaml': (FILES['van/journal.yaml'] ?? '').replace(', marks: { frame: QX 5207 }', ''),
      'van/sessions/2031-03-02-drum.md': (FILES['van/sessions/2031-03-02-drum.md'] ?? '').replace(/^measured:.*\n/m, ''),
    });
    const text = await printedIn(cwd, 'sheet', '--for', 'inspector');
    expect(text).toContain('No number is given in this copy. No measurements.');
  });

  test('a buyer is told where a danger lies, what is against a decision as one sentence, and names with commas apart from each other', async () => {
    const text = await printed('sheet', '--for', 'buyer');
    expect(text).toMatch(/Asbestos: Front drum \(out with: a turner\)\. |Asbestos: Front drum \(out with a turner\)\. /);
    expect(text).toContain('Rear shoes, near; Rear shoes, off');
    expect(text).not.toMatch(/\.\.|\.;/);
  });

  test('a buyer is told that a place holds what the works put there where it holds its own, and not an original of another place', async () => {
    const swapped =
      '---\ndate: 2031-03-11\ntitle: Swapped\nparts: [{ part: shoes-near, did: removed }, { part: shoes-off, did: [removed, fitted], at: shoes-near }, { part: shoes-near, did: fitted, at: shoes-off }]\n---\n';
    const told = async (files: Readonly<Record<string, string>>) => {
      const text = await printedIn(folderWith(files), 'sheet', '--for', 'buyer');
      return /(\d+) of the 6 places on the vehicle holds? what the works put there/.exec(text)?.[1];
    };
    expect([await told(FILES), await told({ ...FILES, 'van/sessions/2031-03-11-swapped.md': swapped })]).toEqual(['3', '1']);
  });

  test.each(['buyer', 'inspector'])(
    'a %s is told of every place that does not hold what the works put there, empty ones too, whatever was found there',
    async (reader) => {
      const cwd = folderWith({
        ...FILES,
        'van/parts/brakes.yaml': `- { id: canvas, name: Roof canvas, origin: earlier-replacement }
- { id: set, name: Dynamo set, origin: original }
- { id: tank, name: Its tank, origin: unknown, in: set }
- { id: pin, name: Pin, found: missing }
- { id: shoes, name: Shoes, origin: original, count: 2 }
- { id: lamp, name: Lamp, origin: new, acquired: 2031-03-02, at: shelf B2 }
- { id: drum, name: Drum, origin: original }
`,
        'van/sessions/2031-03-02-drum.md':
          '---\ndate: 2031-03-02\ntitle: Off\nparts: [{ part: canvas, did: [removed, gone], how: scrapped }, { part: set, did: removed }, { part: shoes, did: removed, count: 1, to: shelf B2 }]\n---\n',
        'van/sessions/2031-03-03-nuts.md': '---\ndate: 2031-03-03\ntitle: Nothing\n---\n',
        'van/sessions/2031-03-10-nuts.md': '---\ndate: 2031-03-10\ntitle: Nothing\n---\n',
      });
      const text = await printedIn(cwd, 'sheet', '--for', reader);
      const told = text.slice(text.indexOf('Every place that does not hold'));
      for (const said of [
        'Roof canvas nothing on the vehicle: gone (scrapped) None is known; what was found there: scrapped',
        'Dynamo set nothing on the vehicle: off for now In stores: no place noted',
        'Its tank nothing on the vehicle: ',
        'Pin nothing on the vehicle: missing None is known; what was found there: missing',
        'Shoes 1 of 2: original 1 of 2: in stores: shelf B2',
        'Lamp nothing on the vehicle: not yet fitted None: the place came with a later part',
      ]) {
        expect(told, said).toContain(said);
      }
      if (reader === 'buyer') expect(text).toContain('1 of the 7 places on the vehicle');
    },
  );

  test('an inspector is told of every class that was written down and whether before any work, and of firms that only a bill names', async () => {
    const cwd = folderWith({
      ...FILES,
      'van/sessions/2031-03-11-work.md': `---
date: 2031-03-11
title: Work
parts:
  - { part: hose, did: inspected, condition: 1 }
  - { part: hose, did: cleaned }
  - { part: shoes-near, did: cleaned }
  - { part: shoes-near, did: inspected, condition: 1 }
bought:
  - { what: A tyre shrunk, as: outside-work, for: drum, cost: 84.00, from: Quill Forge }
  - { what: Paper, as: tool, cost: 1.00, from: A stationer }
bills: [{ from: Quill Forge, lines: [{ what: A rivet set, as: outside-work, cost: 4.00 }] }]
---
`,
    });
    const text = await printedIn(cwd, 'sheet', '--for', 'inspector');
    expect(text).toContain(
      'A condition class from before any work is written down for 2 of the 6 places, for 1 only from when work on it had begun;',
    );
    expect(text).toContain('Outside work was done by Quill Forge (A tyre shrunk and A rivet set). Parts were out with');
    expect(text).not.toContain('A stationer');
    rmSync(join(cwd, 'a.pdf'));
    expect(await printedIn(cwd, 'sheet', '--for', 'inspector', '--copy', 'public')).not.toContain('Quill Forge');
  });

  test('an insurer is told of pieces, not of places: of two rims each counts', async () => {
    const text = await printed('sheet', '--for', 'insurer');
    expect(text).toContain('Subsystem Pieces that belong On the vehicle Of these original Brakes 18 4 3');
  });

  test('a letter stands as it stood at the end of its month, whatever came after', async () => {
    const text = await printed('sheet', '--for', 'client', '--month', '2031-02');
    expect(text).toContain('Nothing was written down that month. All else as it stood on 28 February 2031.');
    expect(text).not.toMatch(/Decisions wanted|Came back short|Bleed the brakes/);
    expect(text).toContain('Set from the record of 10 March 2031.');
    expect(text).not.toContain('As it stood on 10 March 2031');
  });

  test('a letter says that there is another only where one was there by then and does not stand there', async () => {
    const noteOf = (day: string, fields: string) => `---\ndate: ${day}\ntitle: Hose of ${day}\n${fields}\n---\n`;
    const bought = 'bought: [{ what: Hose, cost: 9.00, makes: [{ id: hose-new, name: New hose, origin: new, for: hose }] }]';
    const files = {
      ...FILES,
      'van/journal.yaml': (FILES['van/journal.yaml'] ?? '').replace('arrived: 2031-03-01', 'arrived: 2030-12-01'),
      'van/sessions/2030-12-11-off.md': noteOf('2030-12-11', 'parts: [{ part: hose, did: removed, to: shelf B2 }]'),
      'van/sessions/2031-01-02-bought.md': noteOf('2031-01-02', bought),
      'van/sessions/2031-02-02-on.md': noteOf(
        '2031-02-02',
        'parts: [{ part: hose, did: gone, how: scrapped }, { part: hose-new, did: fitted }]',
      ),
    };
    const asks = async (month: string) =>
      /Brakes: [^•]*?Brake hose( \(there is another\))?/.exec(
        await printedIn(folderWith(files), 'sheet', '--for', 'client', '--month', month),
      );
    expect((await asks('2030-12'))?.[1]).toBeUndefined();
    expect((await asks('2031-01'))?.[1]).toBe(' (there is another)');
    expect((await asks('2031-02'))?.[1]).toBeUndefined();
  });

  test('a letter asks for a decision on every place that the drawings say asks for one, a line for each subsystem', async () => {
    const text = await printed('sheet', '--for', 'client', '--month', '2031-03');
    expect(text).toContain('Decisions wanted • Which drum goes on the road. • Brakes: Dome nuts and Lamp rims. Came back');
  });

  test('of a copy says nothing that it leaves out', async () => {
    const text = await printed('sheet', '--for', 'inspector', '--copy', 'public');
    expect(text).toContain('Public copy, without');
    expect(text).not.toMatch(/QX 5207|Ruth|C 4417/);
  });

  test.each([[['--for', 'nobody']], [['--for', 'client', '--month', '2031-13']]])('%s is refused', async (more) => {
    expect((await run(['sheet', '--content', 'van', '--out', 'a.pdf', ...more], { cwd: folderWith(FILES) })).exit).toBe(2);
  });
});
