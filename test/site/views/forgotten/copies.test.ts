import { expect, test } from 'vitest';
import { copyOf } from '../../../../src/journal/copy/copy.ts';
import { forgottenOf } from '../../../../src/site/views/forgotten/forgotten-page.ts';
import { compileFiles, NOTE, note } from '../../../journal/base.ts';

test('a copy calls nothing forgotten that it leaves out itself', () => {
  const fields =
    'parts: [{ part: drum, did: removed, marks: C 4417 }]\nbought: [{ what: Pins, cost: 4.20, paper: bill.pdf }, { what: Nuts, cost: 1.00 }]';
  const { record } = compileFiles({ more: { [NOTE]: note(fields) }, assets: ['papers/bill.pdf'] });
  if (!record) throw new Error('no record');
  const told = (name: string) => forgottenOf(copyOf(record, name)).flatMap(({ kind, missed }) => missed.map(() => kind));
  expect(told('record')).toEqual(['bills', 'undecided', 'undecided']);
  expect(told('public')).toEqual(['undecided', 'undecided']);
});
