import { describe, expect, it } from 'vitest';
import type { Journal } from '../../src/journal/model.ts';
import { checkPictures, preparePictures } from '../../src/photos/pictures.ts';
import { compileFiles, NOTE, note } from '../journal/base.ts';
import { type DarkRoom, darkRoom } from './dark-room.ts';
import { onePagePdf } from './one-page-pdf.ts';
import { jpegTaken, orientedJpeg } from './sample-pictures.ts';

const FOLDER = 'sessions/2031-03-12-brakes';

function journalOf(fields: string, prose: string, assets: readonly string[], more: Record<string, string> = {}): Journal {
  const { record, diagnostics } = compileFiles({ more: { [NOTE]: note(fields, prose), ...more }, assets });
  expect(diagnostics.filter((one) => one.severity === 'error')).toEqual([]);
  if (record === null) throw new Error('the journal of the test does not compile');
  return record.journal;
}

/** The problems of the journal's pictures: code, file and line, message. */
async function said(room: DarkRoom, journal: Journal | null): Promise<[string, string, string][]> {
  const found = await checkPictures(journal, room.names('journal'), room);
  return found.map((one) => [one.code, `${one.place.file}:${one.place.line}`, one.message]);
}

describe('a picture that cannot be used', () => {
  it('is an error where the note names it, and at itself where no note does', async () => {
    using room = darkRoom();
    for (const name of ['a.jpg', 'b.jpg']) room.add(`${FOLDER}/${name}`, 'no picture');
    room.add('papers/bill.pdf', '');
    const fields = 'papers: [{ paper: bill.pdf, kind: receipt }]\npictures: [{ file: a.jpg, caption: As found. }]';
    const journal = journalOf(fields, '', room.names('journal'));
    expect(await said(room, journal)).toEqual([
      ['A909', `${NOTE}:4`, 'papers/bill.pdf is empty.'],
      ['A907', `${NOTE}:5`, `${FOLDER}/a.jpg is named as JPEG and is not a picture that can be read.`],
      ['A907', `${FOLDER}/b.jpg:1`, `${FOLDER}/b.jpg is named as JPEG and is not a picture that can be read.`],
    ]);
    expect((await said(room, null)).map(([code]) => code)).toEqual(['A909', 'A907', 'A907']);
  });

  it('is one that is of no kind that a page shows', async () => {
    using room = darkRoom();
    room.add(`${FOLDER}/moving.gif`, 'GIF89a');
    room.add('papers/letter.odt', 'PK');
    const fields = 'papers: [{ paper: letter.odt, kind: letter }]';
    const journal = journalOf(fields, '![It moves](moving.gif)\n', room.names('journal'));
    expect(await said(room, journal)).toEqual([
      ['A907', `${NOTE}:6`, `${FOLDER}/moving.gif is neither a picture nor a PDF, so no page can show it.`],
      ['A909', `${NOTE}:4`, 'papers/letter.odt is neither a picture nor a PDF, so no page can show it.'],
    ]);
  });
});

describe('a picture of another day', () => {
  it('is a warning in the folder of its session, mentioned or not', async () => {
    using room = darkRoom();
    room.add(`${FOLDER}/in-time.jpg`, await jpegTaken('2031:03:13 03:59:00', '+00:00'));
    room.add(`${FOLDER}/late.jpg`, await jpegTaken('2031:03:13 04:30:00', '+00:00'));
    room.add(`${FOLDER}/named.jpg`, await jpegTaken('2031:03:11 20:00:00', null));
    const journal = journalOf('', 'It came off.\n\n![The drum](named.jpg)\n', room.names('journal'));
    expect(await said(room, journal)).toEqual([
      ['A908', `${NOTE}:8`, `${FOLDER}/named.jpg was taken on 2031-03-11 at 20:00; the session is of 2031-03-12.`],
      ['A908', `${FOLDER}/late.jpg:1`, `${FOLDER}/late.jpg was taken on 2031-03-13 at 04:30; the session is of 2031-03-12.`],
    ]);
  });

  it('is none when it is shown again from another session', async () => {
    using room = darkRoom();
    room.add('sessions/2031-03-10-arrival/van.jpg', await jpegTaken('2031:03:10 20:00:00', null));
    const earlier = { 'sessions/2031-03-10-arrival/index.md': '---\ndate: 2031-03-10\ntitle: Arrival\n---\n' };
    const journal = journalOf('', '![The van](../2031-03-10-arrival/van.jpg)\n', room.names('journal'), earlier);
    expect(journal.sessions.map((session) => session.pictures.length)).toEqual([1, 1]);
    expect(await said(room, journal)).toEqual([]);
  });
});

describe('the plan of a journal', () => {
  it('holds what its pages show, and nothing else that lies in its folder', async () => {
    using room = darkRoom();
    room.add(`${FOLDER}/drum.jpg`, await orientedJpeg(1));
    room.add('papers/secret.pdf', onePagePdf());
    room.add('papers/bill.pdf', onePagePdf('Bill'));
    const journal = journalOf('papers: [{ paper: bill.pdf, kind: receipt }]', '', room.names('journal'));
    const { plan, diagnostics } = await preparePictures(journal, room);
    expect(diagnostics).toEqual([]);
    expect(plan.data.renditions.map((one) => one.path)).toEqual(['papers/bill.pdf', `${FOLDER}/drum.jpg`]);
    expect(plan.data.papers.map((one) => one.path)).toEqual(['papers/bill.pdf']);
  });
});
