/** A set as one line: bought, catalogued, acquired and costed in one entry. */
import { expect, test } from 'vitest';
import { costOfPosition } from '../../src/journal/ledger/of-position.ts';
import type { JournalRecord } from '../../src/journal/record.ts';
import { registerRowAt } from '../../src/journal/registers/register.ts';
import { whereaboutsAt } from '../../src/journal/registers/stays.ts';
import { compileFiles, NOTE, note } from './base.ts';

const SET = `bought:
  - what: Brake hoses, all, with clips
    cost: 88.00
    tax: 20%
    makes:
      - { id: hose-new, name: New hose, origin: new, for: drum, at: shelf A1 }
      - { id: clips-new, name: New clips, origin: new, for: studs, count: 3 }`;

const compiled = (fields: string) => {
  const { record, diagnostics } = compileFiles({ more: { [NOTE]: note(fields) } });
  if (record === null) throw new Error('the journal was not understood');
  return { record, told: diagnostics.map(({ code, message }) => `${code} ${message}`) };
};

test('what is bought is in the catalogue, here, and has cost what it cost', () => {
  const { record, told } = compiled(SET);
  expect(told).toEqual([]);
  expect(record.journal.parts.get('hose-new')).toMatchObject({ name: 'New hose', origin: 'new', position: 'drum', subsystem: 'brakes' });
  expect(record.history.stays.get('hose-new')?.at(-1)).toMatchObject({
    where: { at: 'stores', store: 'shelf A1' },
    from: { date: '2031-03-12' },
  });
  expect(record.history.stays.get('clips-new')?.at(-1)).toMatchObject({ count: 3, where: { at: 'stores' } });
  // 88.00 over one hose and three clips.
  expect(record.ledger.entries.map(({ part, gross }) => [part, gross])).toEqual([
    ['hose-new', 2200],
    ['clips-new', 6600],
  ]);
  expect(costOfPosition(record, 'drum', null).gross).toBe(2200);
});

test('until its note nobody knew of it: on a day before, it puts no place in question', () => {
  const parts = '- { id: drum, name: Drum, origin: original }\n- { id: studs, name: Studs, origin: original, count: 5 }\n';
  const record = compileFiles({ parts, more: { [NOTE]: note(SET) } }).record as JournalRecord;
  const day = (date: string) => [registerRowAt(record, 'drum', date).outcome.words, whereaboutsAt(record, 'hose-new', date)[0]?.where.at];
  expect(day('2031-03-11')).toEqual(['untouched', 'not-yet']);
  expect(day('2031-03-12')).toEqual(['undecided', 'stores']);
});

test('it may be bought on the day on which the vehicle arrived', () => {
  const more = { 'sessions/2030-09-14-arrived.md': note(SET).replace('2031-03-12', '2030-09-14') };
  const { record, diagnostics } = compileFiles({ more });
  expect(diagnostics).toEqual([]);
  expect(record?.history.stays.get('hose-new')?.at(-1)).toMatchObject({ where: { at: 'stores', store: 'shelf A1' } });
});

test('it may be fitted in the same note', () => {
  const { record, told } = compiled(`${SET}\nparts: [{ part: drum, did: removed }, { part: hose-new, did: fitted }]`);
  expect(told).toEqual([]);
  expect(record.history.stays.get('hose-new')?.at(-1)).toMatchObject({ where: { at: 'fitted', position: 'drum' } });
});

test('carriage of a bill is shared over the parts of a set too', () => {
  const bill = SET.replace('bought:\n  - what', 'bills:\n  - carriage: 8.00\n    total: 96.00\n    lines:\n    - what')
    .replaceAll('\n    cost', '\n      cost')
    .replaceAll('\n    tax', '\n      tax')
    .replaceAll('\n    makes', '\n      makes');
  const { record, told } = compiled(bill);
  expect(told).toEqual([]);
  expect(record.ledger.entries.reduce((all, { gross }) => all + gross, 0)).toBe(9600);
});

test.each([
  ['an id that is taken', 'id: drum, name: X, origin: new, for: drum', /^A410/],
  ['a position that nobody knows', 'id: x, name: X, origin: new, for: drun', /^A407 .*drun/],
  ['no origin', 'id: x, name: X, for: drum', /^A302 .*origin/],
])('%s is told where it stands', (_, made, problem) => {
  expect(compiled(`bought: [{ what: X, cost: 1.00, makes: [{ ${made} }] }]`).told[0]).toMatch(problem);
});
