import { expect, test } from 'vitest';
import { goesWords } from '../../../../src/site/views/stores/stores-page.ts';

test('how much of what is off goes with the vehicle is a whole sentence, for none too', () => {
  expect([0, 1, 4].map(goesWords)).toEqual([
    'No line of it is an original that goes with the vehicle.',
    '1 line of it is an original and goes with the vehicle.',
    '4 lines of it are originals and go with the vehicle.',
  ]);
});
