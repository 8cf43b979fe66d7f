/** A proof that cannot read is no proof: the reader of PDFs is made to fail at each of its steps. */
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { beforeEach, describe, expect, test, vi } from 'vitest';
import { leaksOfFile } from '../../src/site/proof/prove.ts';
import { Unproved } from '../../src/site/proof/text-of-pdf.ts';
import { run } from '../cli/run.ts';
import { folderWith } from '../load/folder.ts';

const reader = vi.hoisted(() => ({ fails: '', says: '' }));

vi.mock('@hyzyla/pdfium', () => {
  const failAt = (step: string) => {
    if (reader.fails === step) throw new Error(reader.says);
  };
  const page = {
    getText: () => {
      failAt('page');
      return 'Nothing of note.';
    },
  };
  const document = { pages: () => [page], destroy: () => undefined };
  const library = {
    destroy: () => undefined,
    loadDocument: async () => {
      failAt('document');
      return document;
    },
  };
  return {
    PDFiumLibrary: {
      init: async () => {
        failAt('start');
        return library;
      },
    },
  };
});

beforeEach(() => {
  Object.assign(reader, { fails: '', says: '' });
});

const SECRET = [{ text: 'Secret', what: 'private' }] as const;
const proofOf = () => leaksOfFile('papers/a.pdf', Buffer.from('%PDF-1.7'), SECRET);

describe('a PDF whose text is not read is not published', () => {
  test.each([
    ['start', 'WebAssembly.instantiate(): out of memory'],
    ['document', 'memory access out of bounds'],
    ['page', 'Failed to load text page'],
  ])('the reader fails at the %s', async (fails, says) => {
    Object.assign(reader, { fails, says });
    await expect(proofOf()).rejects.toThrow(Unproved);
    await expect(proofOf()).rejects.toThrow(`papers/a.pdf could not be read for the proof (${says})`);
  });

  test.each(['File not in PDF format or corrupted', 'Password required or incorrect password'])(
    'but one without text for anybody is: %s',
    async (says) => {
      Object.assign(reader, { fails: 'document', says });
      expect(await proofOf()).toEqual([]);
    },
  );
});

const VAN = {
  'van/journal.yaml': 'title: The van\narrived: 2031-01-01\ntime-zone: Europe/London\nsubsystems: { brakes: { name: Brakes } }\n',
  'van/parts/brakes.yaml': '- { id: drum, name: Drum, origin: original, private: Secret of part }\n',
  'van/sessions/2031-01-05-e.md': '---\ndate: 2031-01-05\ntitle: An evening\n---\nNothing is told here.\n',
};

test.each([
  ['book', 'van.pdf'],
  ['archive', 'van-archive'],
])('%s refuses in one line and writes nothing', async (command, out) => {
  const cwd = folderWith(VAN);
  Object.assign(reader, { fails: 'start', says: 'no such file: pdfium.wasm' });
  const ran = await run([command, '--content', 'van', '--copy', 'record', '--out', out], { cwd });
  expect(ran.exit).toBe(3);
  expect(ran.out).toBe('');
  expect(ran.err).toMatch(
    /^asfound: the text of book\.pdf could not be read for the proof \(no such file: pdfium\.wasm\)\. Nothing is published unproved\.\n$/,
  );
  expect(existsSync(join(cwd, out))).toBe(false);
});
