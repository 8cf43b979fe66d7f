import { expect, test } from 'vitest';
import type { PartId, PositionId } from '../../../../src/journal/model.ts';
import { deedWords } from '../../../../src/site/views/session/session-facts.ts';
import { did } from '../../../builders/journal.ts';

const sheet = {
  positionName: (id: PositionId) => (id === 'tail-lamp' ? 'Tail lamp and number light' : 'another'),
  partName: (id: PartId) => (id === 'wheel-near' ? 'Front wheel, nearside' : id),
};

test('where a part was fitted is told by the name of the position, not by its id', () => {
  const entry = did('lamp', ['acquired', 'fitted'], { to: 'shelf A2', at: 'tail-lamp' as PositionId });
  expect(deedWords(sheet, entry)).toBe('acquired to shelf A2 and fitted, at Tail lamp and number light');
  const washed = did('lamp', ['acquired', 'cleaned', 'fitted'], { to: 'shelf A2', from: 'a dealer' });
  expect(deedWords(sheet, washed)).toBe('acquired to shelf A2, cleaned and fitted, from a dealer');
  expect(deedWords(sheet, did('lamp', ['removed', 'cleaned'], { to: 'shelf A2' }))).toBe('removed and cleaned, to shelf A2');
});

test('what it was taken out of is told by name, a store or a bag as the note has it', () => {
  const from = (where: string) => deedWords(sheet, did('tyre', 'removed', { from: where }));
  expect([from('wheel-near'), from('rack'), from('bag 3')]).toEqual([
    'removed, from Front wheel, nearside',
    'removed, from rack',
    'removed, from bag 3',
  ]);
});
