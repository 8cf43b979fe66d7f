/** Kinds of text that name what the journal has. Whether it has such a thing is told when all of it is read. */
import { naming } from './facts.ts';
import { destination, text } from './fields.ts';
import type { ACTIONS } from './words.ts';

export const partName = naming(text, ['part']);
export const positionName = naming(text, ['position']);
export const personName = naming(text, ['person']);
export const milestoneName = naming(text, ['milestone']);
export const consumableName = naming(text, ['consumable']);
export const subsystemName = naming(text, ['subsystem']);
export const itemName = naming(text, ['item']);
/** A session by its id, or by its day. */
export const sessionName = naming(text, ['session']);
/** What time, money or stock is laid to. */
export const chargeName = naming(text, ['part', 'subsystem']);
/** Where a part lies. */
export const lyingPlace = naming(destination, ['bag', 'store']);

/** Where a part went: what is sent out goes to a firm, which nothing else names. */
export const goesTo = naming(destination, ({ did }) => (says(did, 'sent-out') ? [] : ['bag', 'store']));
/** Where a part came from; what is made is made from parts, and what comes new from somebody that nothing else names. */
export const comesFrom = naming(text, ({ did }) => {
  if (says(did, 'made')) return ['part'];
  return says(did, 'acquired') ? [] : ['bag', 'store', 'position'];
});

function says(did: unknown, word: (typeof ACTIONS)[number]): boolean {
  return [did].flat().some((each) => typeof each === 'string' && each.toLowerCase().replaceAll(/[\s_]+/g, '-') === word);
}
