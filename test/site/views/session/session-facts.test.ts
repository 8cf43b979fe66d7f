import { expect, test } from 'vitest';
import type { PositionId } from '../../../../src/journal/model.ts';
import { deedWords } from '../../../../src/site/views/session/session-facts.ts';
import { did } from '../../../builders/journal.ts';

const sheet = { positionName: (id: PositionId) => (id === 'tail-lamp' ? 'Tail lamp and number light' : 'another') };

test('where a part was fitted is told by the name of the position, not by its id', () => {
  const entry = did('lamp', ['acquired', 'fitted'], { to: 'shelf A2', at: 'tail-lamp' as PositionId });
  expect(deedWords(sheet, entry)).toBe('acquired and fitted, to shelf A2, at Tail lamp and number light');
});
