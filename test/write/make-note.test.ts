/** A note that was made, while the disk would not keep that it was: the same draft makes no second one. */
import { existsSync, mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { type Desk, openDesk } from '../../src/write/desk.ts';
import type { Draft } from '../../src/write/drafts.ts';
import { type LaidFile, makeNote } from '../../src/write/make-note.ts';

let folder: string;
let desk: Desk;
const at = (path: string): string => join(folder, path);

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'asfound-note-'));
  mkdirSync(at('van/sessions'), { recursive: true });
  writeFileSync(at('van/journal.yaml'), 'title: The van\narrived: 2031-01-01\npeople: { rh: { name: Ruth } }\n');
  const day = (): string => '2031-03-12';
  desk = openDesk({ folder: at('van'), cache: at('cache'), today: day, evening: day });
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const draft = (title: string): Draft => ({
  key: '00000000000000aa',
  writer: '00000000000000cc',
  revision: 0,
  corrects: null,
  became: null,
  fields: { date: '2031-03-12', title },
  prose: 'Off it came.',
});

function picture(bytes: string): LaidFile[] {
  writeFileSync(at('laid.jpg'), bytes);
  return [{ name: 'drum.jpg', what: 'picture', file: at('laid.jpg') }];
}

const notes = (): string[] => readdirSync(at('van/sessions')).sort();

test('an evening that is sent again after it was written down is not written down twice', () => {
  const first = makeNote(desk, draft('The drum'), picture('a drum'));
  expect(makeNote(desk, draft('The drum'), picture('a drum'))).toEqual(first);
  expect(notes()).toEqual(['2031-03-12-the-drum']);
});

test('it is known under any name that its day and title take', () => {
  makeNote(desk, draft('The drum'), []);
  const second = makeNote(desk, draft('The drum!'), []);
  expect(makeNote(desk, draft('The drum!'), [])).toEqual(second);
  expect(notes()).toEqual(['2031-03-12-the-drum', '2031-03-12-the-drum-2']);
});

test('another picture under the same name, or other words, are another evening', () => {
  makeNote(desk, draft('The drum'), picture('a drum'));
  makeNote(desk, draft('The drum'), picture('another drum'));
  makeNote(desk, { ...draft('The drum'), prose: 'On it went.' }, picture('a drum'));
  expect(notes()).toEqual(['2031-03-12-the-drum', '2031-03-12-the-drum-2', '2031-03-12-the-drum-3']);
  expect(existsSync(at('van/sessions/2031-03-12-the-drum-2/drum.jpg'))).toBe(true);
});
