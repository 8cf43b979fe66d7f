/** What the book and the sheets of a copy say of what it leaves out: that it does, and never that there was none. */
import { describe, expect, test } from 'vitest';
import { account } from '../../src/book/appendices.ts';
import { titlePage } from '../../src/book/opening.ts';
import { type BookSetting, settingOf } from '../../src/book/setting.ts';
import { buyerSheet } from '../../src/book/sheets/buyer.ts';
import type { SheetText } from '../../src/book/sheets/frame.ts';
import { inspectorSheet } from '../../src/book/sheets/inspector.ts';
import { insurerSheet } from '../../src/book/sheets/insurer.ts';
import { story } from '../../src/book/story.ts';
import { copyOf } from '../../src/journal/copy/copy.ts';
import type { LeaveOut } from '../../src/journal/model.ts';
import { NO_PICTURES } from '../../src/photos/plan.ts';
import { JOURNAL, journalWith } from '../ledger/small-journal.ts';

const PARTS = `- { id: drum, name: Drum, origin: original, marks: C 4417 }
- { id: drum-spare, name: Spare drum, origin: donor, for: drum, at: shelf }
- { id: hose, name: Hose, origin: original }
- { id: lever, name: Lever, origin: original }
- { id: knob, name: Knob, origin: original }
`;

function settingWithout(...kinds: LeaveOut[]): BookSetting {
  const { record, problems } = journalWith(
    { journal: `${JOURNAL}copies: { copy: { leave-out: [${kinds.join(', ')}] } }\n`, parts: PARTS },
    [
      '2031-03-01',
      'hours: [{ by: jm, on: brakes, time: 2h }]\nparts: [{ part: hose, did: [removed, sent-out], to: Quill Forge, work: Re-cover }, { part: lever, did: [removed, sent-out], to: Ash & Son, work: Nickel }]',
    ],
    [
      '2031-03-02',
      'bought: [{ what: A hose covered, as: outside-work, for: hose, cost: 84.00, from: Quill Forge }, { what: A lever plated, as: outside-work, for: lever, cost: 9.00, from: Ash & Son }, { what: A lever plated thin, as: outside-work, for: lever, cost: -4.00, from: Ash & Son, refund: thin plating }]\nparts: [{ part: hose, did: [returned, fitted] }, { part: lever, did: [returned, fitted] }, { part: knob, did: [removed, sent-out], to: A smith, work: Blue }, { part: drum-spare, from: shelf, did: stored, to: shelf }]\nvalued: [{ of: vehicle, value: 9000.00, basis: agreed value, by: A Valuer }]',
    ],
  );
  expect(problems).toEqual([]);
  return settingOf({ ...copyOf(record, 'copy'), pictures: NO_PICTURES, warnings: [], noteHtml: async () => '' });
}

/** Typst source as it reads. */
const read = (source: string): string => source.replaceAll(/#"((?:[^"\\]|\\.)*)";?/g, '$1').replaceAll(/\s+/g, ' ');

const sheet = (make: (setting: BookSetting) => SheetText, ...kinds: LeaveOut[]): string => {
  const { line, parts } = make(settingWithout(...kinds));
  return read([line, ...parts].join(' '));
};

describe('without hours', () => {
  test('the account of a book has no column of noughts, and says that labour is in no sum', () => {
    const [whole, copy] = [account(settingWithout()), account(settingWithout('hours'))].map(read);
    expect(whole).toMatch(/\[Hours\].*hours at their rates|hours at their rates.*\[Hours\]/);
    expect(copy).not.toMatch(/\[Hours\]|rates|Job cost/);
    expect(copy).toContain('This copy leaves hours out, and labour is in no sum.');
  });

  test('what an evening cost is told to be without labour', () => {
    const told = (...kinds: LeaveOut[]) =>
      read(
        story(settingWithout(...kinds))
          .map(({ source }) => source)
          .join(' '),
      );
    expect(told()).toContain('cost £89.00');
    expect(told()).not.toContain('labour left out');
    expect(told('hours')).toContain('cost £89.00, labour left out');
  });

  test('an inspector is not told that nobody is named, nor that the hours of nobody are there', () => {
    const text = sheet(inspectorSheet, 'hours', 'people');
    expect(text).toContain('and what was done.');
    expect(text).toContain('This copy leaves hours out, and with them who worked.');
    expect(text).toContain('Two notes, each dated; who worked stands with the hours, which this copy leaves out.');
    expect(text).not.toMatch(/[Nn]obody/);
    expect(sheet(inspectorSheet)).toContain('Two notes, each dated; who worked is not named in ‘Evening’.');
  });
});

describe('without people', () => {
  test('several firms are not told as one, and all who worked are told to stand as one', () => {
    const text = sheet(inspectorSheet, 'people', 'stores');
    expect(text).toContain('Parts were out with firms, whose names this copy leaves out.');
    expect(text).toContain('Outside work was done by firms: A hose covered and A lever plated.');
    expect(text).toContain('This copy leaves names out: all who worked are told as one.');
    expect(text).toContain('this copy leaves out the names of those who worked, and 1 note names nobody.');
    expect(text).not.toMatch(/(?:were out with|done by) a firm/);
    expect(sheet(inspectorSheet)).toContain('Parts were out with A smith, Ash & Son and Quill Forge.');
  });

  test('nobody is named on the title page, and a value has no column for who gave it', () => {
    expect(read(titlePage(settingWithout(), null))).toContain('Kept and worked on by Ruth and Jory');
    expect(read(titlePage(settingWithout('people'), null))).not.toContain('worked on by');
    expect(sheet(insurerSheet)).toContain('[By]');
    expect(sheet(insurerSheet, 'people')).not.toContain('[By]');
    expect(sheet(insurerSheet)).toContain('[Out with A smith], [Knob]');
    expect(sheet(insurerSheet, 'people', 'hours')).toContain('[Out with others], [Knob]');
  });
});

test('without money a refund of outside work is no work, and an insurer is told that values are left out', () => {
  expect(sheet(inspectorSheet, 'money', 'papers')).toContain('Ash & Son (A lever plated)');
  const text = sheet(insurerSheet, 'money', 'stores');
  expect(text).toContain('This copy leaves money out, and with it what the vehicle is held to be worth.');
  expect(text).not.toMatch(/No value|held to be worth, what/);
});

describe('without marks or stores', () => {
  test('what moved from place to place in the stores is told to be there, once', () => {
    const told = (...kinds: LeaveOut[]) =>
      read(
        story(settingWithout(...kinds))
          .map(({ source }) => source)
          .join(' '),
      );
    expect(told()).toContain('Spare drum: put away, from shelf, to shelf.');
    expect(told('stores', 'hours')).toContain('Spare drum: put away, to the stores.');
  });

  test('a buyer is not told that nothing speaks for an original, nor that nothing is missing', () => {
    expect(sheet(buyerSheet)).toContain('Marks: C 4417');
    const text = sheet(buyerSheet, 'marks', 'stores');
    expect(text).toContain('Believed original; marks that may tell it this copy leaves out: Drum, Hose and Lever.');
    expect(text).not.toContain('nothing speaks against it');
    expect(text).toContain('What went back with neither marks nor a picture is not told');
    expect(sheet(buyerSheet)).toMatch(/neither marks taken that time nor a picture.*Hose and Lever/);
  });

  test('an inspector is shown no points table where no part is said to be a component', () => {
    expect(sheet(inspectorSheet)).not.toMatch(/points|Engine/);
  });

  test('an inspector is told that numbers are left out, and an insurer of no place that was not noted', () => {
    expect(sheet(inspectorSheet, 'marks')).toContain('This copy leaves numbers and marks out.');
    expect(sheet(insurerSheet, 'stores', 'film')).toContain('[In stores], [Spare drum]');
    expect(sheet(insurerSheet)).toContain('[Shelf], [Spare drum]');
  });
});
