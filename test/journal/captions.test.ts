import { describe, expect, test } from 'vitest';
import { compileFiles, NOTE, note } from './base.ts';

const FILE = 'sessions/2031-03-12-brakes/a.jpg';

/** The caption of the one picture of a note. */
function captionOf(listed: string, prose: string): string | null | undefined {
  const fields = `pictures: [{ file: a.jpg${listed} }]`;
  const { record, diagnostics } = compileFiles({ more: { [NOTE]: note(fields, prose) }, assets: [FILE] });
  expect(diagnostics.filter(({ severity }) => severity === 'error')).toEqual([]);
  const [picture, ...more] = record?.journal.sessions[0]?.pictures ?? [];
  expect(more).toEqual([]);
  return picture?.caption;
}

describe('what the front matter says of a picture and what the prose says are both read on the page', () => {
  test.each([
    ['both', ', caption: As it came off.', '![Three rings.](a.jpg)', 'As it came off. Three rings.'],
    ['a caption without its full stop', ', caption: As it came off', '![Three rings.](a.jpg)', 'As it came off. Three rings.'],
    ['a question', ', caption: "Which way round?"', '![Three rings.](a.jpg)', 'Which way round? Three rings.'],
    ['the same words', ', caption: Three rings', '![Three rings.](a.jpg)', 'Three rings'],
    ['the caption alone', ', caption: As it came off.', '![](a.jpg)', 'As it came off.'],
    ['the prose alone', '', '![Three rings.](a.jpg)', 'Three rings.'],
    ['a text of its own, and the title of the prose', ', caption: Off., alt: A drum', '![drum](a.jpg "Three rings.")', 'Off. Three rings.'],
    ['a text of its own, and the words of the prose', ', alt: A drum', '![Three rings.](a.jpg)', 'Three rings.'],
  ])('%s', (_, listed, prose, caption) => {
    expect(captionOf(listed, prose)).toBe(caption);
  });
});
