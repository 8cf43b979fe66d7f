import { expect, test } from 'vitest';
import { keepersNotes, NotCleaned } from '../../src/exports/keepers-notes.ts';
import { copyOf } from '../../src/journal/copy/copy.ts';
import type { JournalRecord } from '../../src/journal/record.ts';
import { compileFiles, NOTE, note } from '../journal/base.ts';

/** What is left of a note or a catalogue when its private fields are taken out. */
function cleaned(files: { readonly parts?: string; readonly note?: string }): string {
  const [path, text] = files.parts === undefined ? [NOTE, files.note ?? ''] : ['parts/brakes.yaml', files.parts];
  const { record, diagnostics } = compileFiles({
    ...(files.parts === undefined ? {} : { parts: files.parts }),
    more: { [NOTE]: files.note ?? note('') },
  });
  expect(diagnostics.filter(({ severity }) => severity === 'error')).toEqual([]);
  const whole = (record as JournalRecord).journal;
  return keepersNotes([{ path, text }], whole, copyOf(record as JournalRecord, 'keeper').journal)[0]?.text ?? '';
}

test.each([
  ['a line', 'private: Mine', ''],
  ['a line with a comment', 'private: "Mine" # not for you', ''],
  ['a block', 'private: |\n  Mine\n\n  and more', ''],
  ['folded lines', 'private: >-\n  Mine\n  too', ''],
  ['words that run on', 'private: Mine\n  and more', ''],
  ['what stands after it', 'private: Mine\ncautions: [dust] # kept', 'cautions: [dust] # kept\n'],
  ['what stands before it', '# kept\ncautions: [dust]\nprivate: Mine', '# kept\ncautions: [dust]\n'],
])('of a note, %s', (_, fields, left) => {
  expect(cleaned({ note: note(fields, 'private: this is prose.\n') })).toBe(
    `---\ndate: 2031-03-12\ntitle: Front brakes\n${left}---\nprivate: this is prose.\n`,
  );
});

test.each([
  ['- { id: drum, name: Drum, private: Mine }\n', '- { id: drum, name: Drum }\n'],
  ['- { id: drum, private: "Mine, and more", name: Drum }\n', '- { id: drum, name: Drum }\n'],
  ['- { private: Mine, id: drum, name: Drum }\n', '- { id: drum, name: Drum }\n'],
  ['- id: drum\n  private: Mine\n  name: Drum\n', '- id: drum\n  name: Drum\n'],
  ['- private: Mine\n  id: drum\n  name: Drum\n', '- id: drum\n  name: Drum\n'],
  [
    '- id: drum\n  name: Drum\n  private: |\n    Mine\n    too\n- { id: hose, name: Hose }\n',
    '- id: drum\n  name: Drum\n- { id: hose, name: Hose }\n',
  ],
  [
    '- { id: drum, name: Drum, private: A }\n- { id: hose, name: Hose, private: B } # kept\n',
    '- { id: drum, name: Drum }\n- { id: hose, name: Hose } # kept\n',
  ],
])('of a catalogue: %j', (parts, left) => {
  expect(cleaned({ parts })).toBe(left);
});

test('what cannot be found where it should stand is refused, never left in', () => {
  const { record } = compileFiles({ more: { [NOTE]: note('private: Mine') } });
  const { journal } = record as JournalRecord;
  expect(() => keepersNotes([{ path: NOTE, text: 'private: Mine' }], journal, copyOf(record as JournalRecord, 'keeper').journal)).toThrow(
    NotCleaned,
  );
});
