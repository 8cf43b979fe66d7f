import { expect, test } from 'vitest';
import { limitWords } from '../../../../src/site/views/page/limits.ts';

test.each([
  ['9.000..9.060 in', '9.000 to 9.060 in'],
  ['3.0.. mm', 'at least 3.0 mm'],
  ['5.. mm2', 'at least 5 mm2'],
  ['..2.0 in', 'at most 2.0 in'],
  [null, 'none given'],
])('limits written %s are told as: %s', (written, told) => {
  expect(limitWords(written)).toBe(told);
});
