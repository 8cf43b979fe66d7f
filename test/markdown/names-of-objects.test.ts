import { expect, test } from 'vitest';
import { htmlOf } from './context.ts';

/** Names that every object has without anybody having given them. */
const NAMES = ['__proto__', 'constructor', 'toString', 'hasOwnProperty', 'valueOf'];

test.each(NAMES)('a note may name a file or a part `%s` that is not there, and nothing of the program shows', (name) => {
  const written = `<img src="../../${name}"> ![x](../../${name}) <a href="../../${name}">y</a> [z](../../${name}) [](part:${name})`;
  const html = htmlOf(written);
  expect(html).not.toMatch(/native code|\[object|function/);
  expect(html).toContain('y</a>');
});
