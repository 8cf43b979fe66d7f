import { expect, test } from 'vitest';
import { ownFault } from '../../src/cli/own-fault.ts';

const full = Object.assign(new Error("ENOSPC: no space left on device, open 'a'"), { code: 'ENOSPC', syscall: 'open' });

function told(error: unknown): [exit: number, text: string] {
  let text = '';
  const exit = ownFault(error, { env: {}, err: (more) => (text += more) });
  return [exit, text];
}

test.each([
  ['by itself', full],
  ['as the cause of another', new Error('Build failed', { cause: full })],
  ['among the errors of a library', Object.assign(new Error('Build failed with 1 error:'), { errors: [full] })],
  [
    'in the words of a library',
    new Error("Build failed with 1 error:\n\n[plugin a]\nError: ENOSPC: no space left on device, open 'a'\n    at b"),
  ],
])('a full disk is told as what it is, %s', (_, error) => {
  expect(told(error)).toEqual([3, "asfound: the system refused: ENOSPC: no space left on device, open 'a'\n"]);
});

test('and so it is in the words of a library that is no JavaScript', () => {
  const error = new Error(
    'Build failed with 1 error:\n\nFailed to write file in /a/b\n\nCaused by:\n    No space left on device (os error 28)\n   0: x',
  );
  expect(told(error)).toEqual([3, 'asfound: the system refused: No space left on device (os error 28)\n']);
});

test('a fault of our own is told as one, in a line', () => {
  expect(told(new TypeError('x is not a function'))).toEqual([
    70,
    'asfound: a fault of its own: x is not a function\nASFOUND_DEBUG=1 shows more.\n',
  ]);
});
