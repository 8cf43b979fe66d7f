import { expect, test } from 'vitest';
import { noteContexts } from '../../../../src/markdown/note-context.ts';
import { renderNote } from '../../../../src/markdown/render.ts';
import { type PicturePlan, picturePlan } from '../../../../src/photos/plan.ts';
import type { SiteRecord } from '../../../../src/site/record.ts';
import { sheetOf } from '../../../../src/site/views/page/sheet.ts';
import { headPicture } from '../../../../src/site/views/pictures/pictures.ts';
import { closeUps, pointsOn } from '../../../../src/site/views/pictures/points.ts';
import { amongOthers, sessionsOfThread, threadsOfSession } from '../../../../src/site/views/session/threads.ts';
import { compileFiles, JOURNAL, NOTE, note } from '../../../journal/base.ts';
import { renditionOf } from './rendition.ts';

const FOLDER = NOTE.slice(0, NOTE.lastIndexOf('/'));
const PICTURES = `pictures:
  - { file: drum.jpg, shows: [drum], caption: It came off., points: [{ at: "10,20", note: the <crack> }, { at: "50,50,20,10", shows: studs, note: pulled }] }
  - { file: plain.jpg, shows: [drum] }`;
const compiled = compileFiles({
  journal: `${JOURNAL}threads: { braking: { title: The brakes, parts: [drum, studs] } }\nfront: ${FOLDER}/drum.jpg\n`,
  more: {
    [NOTE]: note(`parts: [{ part: drum, did: inspected }]\n${PICTURES}`, '![The rings](drum.jpg)\n\nOne[^a].\n\n[^a]: Note.\n'),
    'sessions/2031-03-14-other.md': '---\ndate: 2031-03-14\ntitle: Other\n---\nNothing.\n',
    'sessions/2031-03-16-spoken.md': '---\ndate: 2031-03-16\ntitle: Spoken of\n---\n[The studs](part:studs) again.\n',
  },
  assets: [`${FOLDER}/drum.jpg`, `${FOLDER}/plain.jpg`],
});
const plan: PicturePlan = picturePlan({
  renditions: ['drum', 'plain'].map((name) => renditionOf(`${FOLDER}/${name}.jpg`)),
  papers: [],
  inOrder: [],
});
const base = compiled.record as NonNullable<typeof compiled.record>;
const record: SiteRecord = { ...base, pictures: plan, warnings: [], noteHtml: async () => '' };
const sheet = sheetOf(record, 'parts/drum.html');
const [session] = record.journal.sessions;
const [pointing, plain] = session?.pictures ?? [];

test('a picture points by numbers, each with its key, on any page and in the prose alike', () => {
  expect(compiled.diagnostics.filter(({ severity }) => severity === 'error')).toEqual([]);
  const points = pointing && pointsOn(sheet, pointing);
  expect(points?.marks).toMatch(
    /<circle cx="120" cy="180"[^>]*><\/circle><text[^>]*>1<\/text><rect x="600" y="450" width="240" height="90"/,
  );
  expect(points?.key).toBe(
    '<ol class="points-key"><li>the &#x3C;crack></li><li><a href="studs.html#studs">Wheel studs</a>: pulled</li></ol>',
  );
  const html = session ? renderNote(session.body, noteContexts(record, plan)(session)).html : '';
  expect(html).toContain('<figure class="picture pointing">');
  expect(html).toContain('<a href="../parts/studs.html#studs">Wheel studs</a>: pulled');
  expect(plain && pointsOn(sheet, plain)).toBeNull();
});

test('what a picture points at it shows, and the page of the part shows that piece of it with some room', () => {
  expect(pointing?.shows).toEqual(['drum', 'studs']);
  const [close] = pointing ? closeUps(sheet, pointing, 'studs') : [];
  expect(close?.markup).toContain('viewBox="564 437 312 117"');
  expect(pointing && closeUps(sheet, pointing, 'drum')).toEqual([]);
});

test('a thread holds every session that touched or spoke of its parts, and each says what is before and after', () => {
  const [thread] = record.journal.threads;
  expect(thread && sessionsOfThread(record, thread).map(({ title }) => title)).toEqual(['Front brakes', 'Spoken of']);
  expect(threadsOfSession(record, '2031-03-16-spoken')).toMatchObject([
    { thread: { id: 'braking' }, before: { title: 'Front brakes' }, after: null },
  ]);
  expect(threadsOfSession(record, '2031-03-14-other')).toEqual([]);
});

test('prose among that of other sessions has anchors of its own', () => {
  expect(amongOthers('<p id="a"><a href="#note-fn-1" aria-describedby="x y">1</a> <a href="../p.html#q">', 's')).toBe(
    '<p id="s-a"><a href="#s-note-fn-1" aria-describedby="s-x s-y">1</a> <a href="../p.html#q">',
  );
});

test('the record opens with the picture that was chosen; one that no note shows is told', () => {
  expect(headPicture(sheet, 5)?.picture.file).toBe(`${FOLDER}/drum.jpg`);
  const wrong = compileFiles({ journal: `${JOURNAL}front: nowhere.jpg\n` });
  expect(wrong.diagnostics.map(({ code, place }) => [code, place.file])).toContainEqual(['A901', 'journal.yaml']);
});

test('a thread of a part that nobody knows, and a place in a picture that shows nothing, are told', () => {
  const wrong = compileFiles({
    journal: `${JOURNAL}threads: { braking: { title: The brakes, parts: [drm] } }\n`,
    more: { [NOTE]: note('pictures: [{ file: drum.jpg, points: [{ at: "10,20" }] }]') },
    assets: [`${FOLDER}/drum.jpg`],
  });
  expect(wrong.diagnostics.map(({ code, hint }) => [code, hint])).toEqual(
    expect.arrayContaining([
      ['A401', expect.stringContaining('`drum`')],
      ['A302', expect.stringContaining('shows')],
    ]),
  );
});

test('of the pictures that may stand at the head, one that somebody spoke of comes before one that only lies by its note', () => {
  const later = 'sessions/2031-03-14-other';
  const files = [`${FOLDER}/drum.jpg`, `${later}/left.jpg`];
  const headWith = (fields: string): string | undefined => {
    const more = {
      [NOTE]: note('pictures: [{ file: drum.jpg, shows: [drum], caption: It came off. }]'),
      [`${later}/index.md`]: `---\ndate: 2031-03-14\ntitle: Other\n${fields}\n---\n`,
    };
    const found = compileFiles({ more, assets: files }).record as NonNullable<typeof compiled.record>;
    const pictures = picturePlan({ renditions: files.map(renditionOf), papers: [], inOrder: [] });
    return headPicture(sheetOf({ ...found, pictures, warnings: [], noteHtml: async () => '' }, 'index.html'), 0)?.picture.file;
  };
  expect(headWith('')).toBe(files[0]);
  expect(headWith('pictures: [{ file: left.jpg, caption: The other one. }]')).toBe(files[1]);
});
