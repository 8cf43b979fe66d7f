import { expect, test } from 'vitest';
import type { FormField } from '../../src/write/form.ts';
import { choicesOf } from '../../src/write/page/chooser.ts';
import type { Sheet } from '../../src/write/page/sheet.ts';
import type { Values } from '../../src/write/values.ts';

const names = { bag: [{ id: '3', name: '2 studs' }], store: [{ id: 'loft', name: '' }] };
const offered = (name: string, fields: Values): readonly string[] =>
  choicesOf(
    { data: { names, nextBag: 4 }, draft: { fields } } as unknown as Sheet,
    { name, names: ['bag', 'store'] } as unknown as FormField,
  ).map(({ id }) => id);

test('what goes into a bag is offered the next free number and those of this evening, not a bag that an earlier one filled', () => {
  expect(offered('to', {})).toEqual(['bag 4', 'loft']);
  expect(offered('to', { bags: [{ bag: '4', holds: ['a clip'] }] })).toEqual(['bag 4', 'bag 5', 'loft']);
  expect(offered('to', { parts: [{ part: 'studs', did: 'removed', to: 'bag 3' }] })).toEqual(['bag 3', 'bag 4', 'loft']);
  expect(offered('to', { parts: [{ part: 'studs', did: 'removed', to: 'bag 4' }] })).toEqual(['bag 4', 'bag 5', 'loft']);
});

test('what comes out of a bag is offered the full ones', () => {
  expect(offered('from', {})).toEqual(['bag 3', 'loft']);
});
