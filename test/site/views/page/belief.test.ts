import { expect, test } from 'vitest';
import { ORIGINS } from '../../../../src/journal/schema/words.ts';
import { beliefWords } from '../../../../src/site/views/page/belief.ts';

const sheetOf = (count: number) =>
  ({
    ask: () => ({ count, position: 'lamp' }),
    personName: () => 'Ruth',
  }) as unknown as Parameters<typeof beliefWords>[0];

test('every origin that somebody came to believe in makes a sentence, of one part and of a lot', () => {
  const told = (count: number, by: string | null) => ORIGINS.map((origin) => beliefWords(sheetOf(count), { part: 'lamp', origin, by }));
  expect(told(1, 'rh')).toEqual([
    'believed by Ruth to be original',
    'believed by Ruth to be an earlier replacement',
    'believed by Ruth to be off another vehicle of its kind',
    'believed by Ruth to be new old stock',
    'believed by Ruth to be of the period, by another make',
    'believed by Ruth to be a reproduction',
    'believed by Ruth to be new',
    'believed by Ruth to be made for this job',
    'believed by Ruth to be borrowed',
    'looked into by Ruth, and nobody can say of what origin',
  ]);
  expect(told(4, null).filter((_, i) => [1, 5, 9].includes(i))).toEqual([
    'believed to be earlier replacements',
    'believed to be reproductions',
    'looked into, and nobody can say of what origin',
  ]);
});
