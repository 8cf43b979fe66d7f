import { describe, expect, test } from 'vitest';
import { compileFiles, NOTE } from './base.ts';

/** What is said of one note, each as `line:column code`. */
function saidOf(text: string, path: string = NOTE): string[] {
  return compileFiles({ more: { [path]: text } }).diagnostics.map(({ place, code }) => `${place.line}:${place.column} ${code}`);
}

describe('a fault at the top of a note does not hide what is wrong below it', () => {
  const hours = 'hours:\n  - { by: nobody, on: brakes, time: 1h }';

  test('a second colon in the title', () => {
    expect(saidOf(`---\ndate: 2031-03-12\ntitle: Brakes: near side\n${hours}\n---\n`)).toEqual(['3:8 A208', '5:11 A402']);
  });

  test('second colons in several values', () => {
    expect(saidOf(`---\ndate: 2031-03-12\ntitle: Brakes: near: side\nprivate: Rear: off\n${hours}\n---\n`)).toEqual([
      '3:8 A208',
      '4:10 A208',
      '6:11 A402',
    ]);
  });

  test('a second colon in a value below the top', () => {
    const decisions = 'decisions:\n  - part: nothing\n    verdict: keep\n    because: Sound: no play\n';
    expect(saidOf(`---\ndate: 2031-03-12\ntitle: Brakes\n${decisions}---\n`)).toEqual(['5:11 A401', '7:14 A208']);
  });

  test('no title', () => {
    expect(saidOf(`---\ndate: 2031-03-12\n${hours}\n---\n`)).toEqual(['2:1 A302', '4:11 A402']);
  });

  test('a date that is not in the calendar, where the name of the note gives one', () => {
    expect(saidOf(`---\ndate: 2031-02-30\ntitle: Brakes\n${hours}\n---\n`)).toEqual(['2:7 A305', '5:11 A402']);
  });

  test('a date that is not in the calendar, where nothing gives one', () => {
    expect(saidOf(`---\ndate: 2031-02-30\ntitle: Brakes\n${hours}\n---\n`, 'sessions/brakes.md')).toEqual(['2:7 A305']);
  });
});

test('a field that was taken out for its fault is not called missing as well', () => {
  expect(saidOf('---\ndate: 2031-03-12\ntitle: { a: b }\n---\n')).toEqual(['3:8 A303']);
});
