import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { compileJournal } from '../../src/journal/pipeline.ts';
import type { JournalRecord } from '../../src/journal/record.ts';
import { loadJournal } from '../../src/load/load.ts';
import { openNoteStore } from '../../src/markdown/note-store.ts';
import { notesOnDemand, renderNotes } from '../../src/markdown/render-notes.ts';
import { NO_PICTURES, type PicturePlan } from '../../src/photos/plan.ts';
import { JOURNAL } from '../cli/journal.ts';
import { folderWith } from '../load/folder.ts';

/** A record of a few notes; `changes` are texts by path. */
function recordOf(changes: Readonly<Record<string, string>> = {}): JournalRecord {
  const notes = {
    'van/sessions/2031-03-03-links.md':
      '---\ndate: 2031-03-03\ntitle: Links\n---\n\n[](part:drum) [](bag:1) [](session:2031-03-02) [](item:polish)\n',
    'van/sessions/2031-03-04-more.md': '---\ndate: 2031-03-04\ntitle: More\n---\n\nSee [that note](2031-03-03-links.md).\n',
  };
  const sources = loadJournal(join(folderWith({ ...JOURNAL, ...notes, ...changes }), 'van'));
  const { record, diagnostics } = compileJournal(sources, { today: '2031-03-12' });
  expect(diagnostics).toEqual([]);
  if (record === null) throw new Error('no record');
  return record;
}

const NOTHING = { kept: new Map<string, string>() };

describe('the notes of a record', () => {
  test('link to the pages of what they name, by its name where they give no words', async () => {
    const { html } = await renderNotes(recordOf(), NO_PICTURES, NOTHING);
    expect(html.get('2031-03-03-links')).toBe(
      '<p><a href="../parts/drum.html#drum" class="to-part">Front drum</a> <a href="../bags.html#bag-1" class="to-bag">bag 1</a> ' +
        '<a href="2031-03-02-drum.html" class="to-session">The drum</a> <a href="../items.html#polish" class="to-item">Polish it</a></p>',
    );
    expect(html.get('2031-03-04-more')).toBe('<p>See <a href="2031-03-03-links.html" class="to-file">that note</a>.</p>');
  });

  const WAYS = [
    '[it](part:dr%75m)',
    '[it](part&#58;drum)',
    '[it](part\\:drum)',
    '[it][d]\n\n[d]: part:dr%75m',
    '<a href="part:dr%75m">it</a>',
  ];

  test.each(WAYS)('link however the address is written, %j', async (way) => {
    const record = recordOf({ 'van/sessions/2031-03-05-way.md': `---\ndate: 2031-03-05\ntitle: Way\n---\n\n${way}\n` });
    const { html } = await renderNotes(record, NO_PICTURES, NOTHING);
    expect(html.get('2031-03-05-way')).toBe('<p><a href="../parts/drum.html#drum" class="to-part">it</a></p>');
  });

  test('that link by HTML of their own are checked like any other', () => {
    const note = '---\ndate: 2031-03-05\ntitle: Way\n---\n\nIn <a href="part:drom">the drum</a>.\n';
    const sources = loadJournal(join(folderWith({ ...JOURNAL, 'van/sessions/2031-03-05-way.md': note }), 'van'));
    expect(compileJournal(sources, { today: '2031-03-12' }).diagnostics.map(({ code, message }) => [code, message])).toEqual([
      ['A903', 'There is no part `drom`.'],
    ]);
  });

  test('are rendered once, and again only where the note, or what it names, has changed', async () => {
    const first = await renderNotes(recordOf(), NO_PICTURES, NOTHING);
    expect(first.rendered).toBe(3);
    expect((await renderNotes(recordOf(), NO_PICTURES, first)).rendered).toBe(0);
    const renamed = { 'van/parts/brakes.yaml': (JOURNAL['van/parts/brakes.yaml'] ?? '').replace('Front drum', 'Nearside drum') };
    const second = await renderNotes(recordOf(renamed), NO_PICTURES, first);
    expect(second.rendered).toBe(1);
    expect(second.html.get('2031-03-03-links')).toContain('Nearside drum');
  });

  test('are the same when each is rendered as it is asked for, and one that is kept is not rendered again', async () => {
    const { html, kept } = await renderNotes(recordOf(), NO_PICTURES, NOTHING);
    const served = new Map<string, string>();
    const noteHtml = notesOnDemand(recordOf(), NO_PICTURES, served);
    expect([...html.keys()].map(noteHtml)).toEqual([...html.values()]);
    expect(noteHtml('2031-03-09-no-such')).toBe('');
    expect(served).toEqual(kept);
    const marked = new Map([...kept].map(([key]): [string, string] => [key, 'kept']));
    expect(notesOnDemand(recordOf(), NO_PICTURES, marked)('2031-03-03-links')).toBe('kept');
  });

  test('are the same from one thread as from two', async () => {
    const many = Object.fromEntries(
      Array.from({ length: 600 }, (_, i) => [
        `van/sessions/2031-03-05-n${i}.md`,
        `---\ndate: 2031-03-05\ntitle: Note ${i}\n---\n\n[](part:drum) number *${i}*\n`,
      ]),
    );
    const record = recordOf(many);
    const one = await renderNotes(record, NO_PICTURES, NOTHING, 1);
    const two = await renderNotes(record, NO_PICTURES, NOTHING, 2);
    expect(one.rendered).toBe(603);
    expect([...two.html]).toEqual([...one.html]);
    expect(one.html.get('2031-03-05-n599')).toContain('<em>599</em>');
  });

  test('show a picture as the plan has it, and are rendered again when the plan has changed', async () => {
    const path = 'sessions/2031-03-06-p/drum.jpg';
    const record = recordOf({
      'van/sessions/2031-03-06-p/index.md': '---\ndate: 2031-03-06\ntitle: P\n---\n\n![The drum](drum.jpg)\n',
      [`van/${path}`]: 'picture',
    });
    const planned = (file: string): PicturePlan => {
      const rendered = { file: `pictures/${file}.jpg`, width: 480, height: 320 };
      const rendition = {
        path,
        key: file,
        width: 480,
        height: 320,
        sources: [],
        fallback: rendered,
        full: rendered,
        placeholder: null,
        takenAt: null,
        camera: null,
      };
      return { ...NO_PICTURES, rendition: (asked) => (asked === path ? rendition : null) };
    };
    const first = await renderNotes(record, planned('a'), NOTHING);
    expect(first.html.get('2031-03-06-p')).toContain('<img src="../pictures/a.jpg" alt="The drum" width="480" height="320"');
    expect((await renderNotes(record, planned('b'), first)).rendered).toBe(1);
  });
});

describe('the store of rendered notes', () => {
  test('gives back what it kept, and holds one file for a journal', () => {
    const cache = folderWith({});
    openNoteStore(cache, '/a').save(new Map([['k', '<p>a</p>']]));
    openNoteStore(cache, '/b').save(new Map([['k', '<p>b</p>']]));
    expect([...openNoteStore(cache, '/a').kept]).toEqual([['k', '<p>a</p>']]);
    expect(readdirSync(join(cache, 'notes'))).toHaveLength(2);
  });

  test('takes a spoilt file for an empty one', () => {
    const cache = folderWith({});
    openNoteStore(cache, '/a').save(new Map([['k', 'v']]));
    const [name = ''] = readdirSync(join(cache, 'notes'));
    const text = readFileSync(join(cache, 'notes', name), 'utf8');
    for (const spoilt of ['', text.slice(0, 5), 'null', '[1]', '{"k":1}']) {
      writeFileSync(join(cache, 'notes', name), spoilt);
      expect(
        [...openNoteStore(cache, '/a').kept.values()].every((value) => typeof value === 'string'),
        spoilt,
      ).toBe(true);
      expect(openNoteStore(cache, '/a').kept.has('k')).toBe(false);
    }
  });

  test('that cannot be written keeps nothing, and stops nobody', () => {
    const cache = folderWith({ file: '' });
    mkdirSync(join(cache, 'sub'));
    expect(() => openNoteStore(join(cache, 'file'), '/a').save(new Map([['k', 'v']]))).not.toThrow();
  });
});
