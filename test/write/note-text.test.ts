/** What the form says is written into the text of a note; what it says nothing of stays, byte for byte. */
import { globSync, readFileSync } from 'node:fs';
import { relative } from 'node:path';
import { describe, expect, test } from 'vitest';
import { sessionSchema } from '../../src/journal/schema/session.ts';
import { formOf } from '../../src/write/form.ts';
import { changeNote, type NoteSays, newNote, readNote } from '../../src/write/note-text.ts';
import type { Values } from '../../src/write/values.ts';

const FORM = formOf(sessionSchema);
const DEMO = new URL('../../content/', import.meta.url).pathname;
const NOTES = globSync(`${DEMO}sessions/**/*.md`).map((file) => ({ path: relative(DEMO, file), text: readFileSync(file, 'utf8') }));

/** The fields that these tests change. */
type Fields = Values & { hours: Values[]; parts: [Values, Values] };

const PATH = 'sessions/2031-03-12-brakes.md';
const says = (text: string): NoteSays => readNote(text, PATH, FORM) as NoteSays;
const changed = (text: string, change: (fields: Fields) => void): string => {
  const read = structuredClone(says(text));
  change(read.fields as unknown as Fields);
  return changeNote(text, PATH, FORM, read);
};

const NOTE = `---
# The first evening on the brakes.
date: 2031-03-12
title:   "Front brakes, apart"   # as she called it
hours:
    - {by: rh,  on: brakes, time: 19:10-21:40}   # with a break
    # the second man came late
    - { by: jm, on: brakes, time: 1h }
parts:
  - part: front-drum-near
    did: [removed,   inspected]
    # it fought
    to: shelf B2
  - { part: wheel-stud-front-near, did: removed, count: 3, to: bag 14 }   # three of five
emptied:
  # none yet
cautions: [ asbestos ]
---

It came off   with two pulls.
`;

describe('a note that a person wrote', () => {
  test.each(NOTES)('$path can be shown and is given back as it was', ({ path, text }) => {
    const read = readNote(text, path, FORM);
    expect(read).not.toBeNull();
    expect(changeNote(text, path, FORM, read as NoteSays)).toBe(text);
  });

  test('is changed in one value and nowhere else', () => {
    expect(changed(NOTE, (fields) => ((fields.hours[0] as Values).time = '19:10-22:00'))).toBe(NOTE.replace('19:10-21:40', '19:10-22:00'));
  });

  test('keeps the quotation marks of a text that is changed', () => {
    const after = changed(NOTE, (fields) => (fields.title = 'Rear brakes'));
    expect(after).toBe(NOTE.replace('"Front brakes, apart"', '"Rear brakes"'));
  });

  test('gets a field in an entry in braces, and in one on lines', () => {
    const after = changed(NOTE, (fields) => {
      fields.parts[0].condition = '2';
      fields.parts[1].note = 'Pulled, all of them';
    });
    expect(after).toBe(
      NOTE.replace('    to: shelf B2\n', '    to: shelf B2\n    condition: 2\n').replace(
        'to: bag 14 }',
        'to: bag 14, note: "Pulled, all of them" }',
      ),
    );
  });

  test('loses a field of an entry, and an entry, and no comment that stands by itself', () => {
    const after = changed(NOTE, (fields) => {
      delete fields.parts[1].count;
      fields.hours.splice(0, 1);
    });
    expect(after).toBe(NOTE.replace('    - {by: rh,  on: brakes, time: 19:10-21:40}   # with a break\n', '').replace(', count: 3', ''));
  });

  test('gets an entry at the end of a list, as far in as the others', () => {
    const after = changed(NOTE, (fields) => fields.hours.push({ by: ['rh'], time: '30m' }));
    expect(after).toBe(NOTE.replace('time: 1h }\n', 'time: 1h }\n    - { by: rh, time: 30m }\n'));
  });

  test('gets a group of fields where the format has it', () => {
    const after = changed(NOTE, (fields) => {
      fields.decisions = [{ part: ['front-drum-near'], verdict: 'repair', because: 'Scored; it will clean up.' }];
    });
    expect(after).toBe(
      NOTE.replace('emptied:', 'decisions:\n  - { part: front-drum-near, verdict: repair, because: Scored; it will clean up. }\nemptied:'),
    );
  });

  test('gets entries under a field that nothing stood under', () => {
    expect(changed(NOTE, (fields) => (fields.emptied = ['11']))).toBe(NOTE.replace('emptied:', 'emptied: [11]'));
  });

  test('gets other words, and keeps its fields', () => {
    const read = says(NOTE);
    expect(changeNote(NOTE, PATH, FORM, { ...read, prose: 'It came off.' })).toBe(
      NOTE.replace('It came off   with two pulls.', 'It came off.'),
    );
  });

  test('keeps its ends of lines and its byte order mark', () => {
    const text = `\uFEFF${NOTE.replaceAll('\n', '\r\n')}`;
    const after = changed(text, (fields) => fields.hours.push({ time: '30m' }));
    expect(after).toBe(text.replace('time: 1h }\r\n', 'time: 1h }\r\n    - { time: 30m }\r\n'));
  });

  test('without fields stays without them until one is said', () => {
    const text = 'The drum came off.\n';
    const read = says(text);
    expect(read.fields).toEqual({ date: '2031-03-12', title: 'The drum came off' });
    expect(changeNote(text, PATH, FORM, { ...read, prose: 'The drum came off. So did the other.' })).toBe(
      'The drum came off. So did the other.\n',
    );
    expect(changed(text, (fields) => (fields.emptied = ['11', '12']))).toBe(
      '---\ndate: 2031-03-12\ntitle: The drum came off\nemptied: [11, 12]\n---\nThe drum came off.\n',
    );
  });

  test.each(['# Drum off', 'Drum off.'])('without fields, its title on a line of its own (%s), can be given some', (title) => {
    const text = `${title}\n\nThe drum came off.\n`;
    expect(says(text)).toEqual({ fields: { date: '2031-03-12', title: 'Drum off' }, prose: 'The drum came off.\n' });
    expect(changed(text, (fields) => (fields.emptied = ['11']))).toBe(
      '---\ndate: 2031-03-12\ntitle: Drum off\nemptied: [11]\n---\nThe drum came off.\n',
    );
  });

  test('that is no YAML is not shown as a form', () => {
    expect(readNote('---\ndate: 2031-03-12\ntitle: [\n---\n', PATH, FORM)).toBeNull();
  });
});

describe('a new note', () => {
  const written = (fields: Values, prose = ''): string => newNote(FORM, { fields, prose });

  test('has its fields in the order of the format, and its words under them', () => {
    expect(
      written({ title: 'Brakes', date: '2031-03-12', parts: [{ part: ['a', 'b'], did: ['removed'], to: 'shelf B2' }] }, 'Off it came.'),
    ).toBe('---\ndate: 2031-03-12\ntitle: Brakes\nparts:\n  - { part: [a, b], did: removed, to: shelf B2 }\n---\n\nOff it came.\n');
  });

  test('says again what it was given, whatever marks stand in it', () => {
    const words = [
      'yes',
      'null',
      '~',
      'a: b',
      'a #b',
      '{x}',
      'a, b',
      '- a',
      "'",
      '"',
      '%',
      '@x',
      '`',
      '12',
      '1:20',
      '\\',
      'ä',
      '?',
      '|',
      '!',
      '&a',
      '*a',
    ];
    const fields = {
      date: '2031-03-12',
      title: 'T',
      bags: words.map((word, n) => ({ bag: String(n + 1), holds: [word, 'b'], 'goes-back': word })),
    };
    expect(says(written(fields))).toEqual({ fields, prose: '' });
  });
});
