import { expect, test } from 'vitest';
import { noteContexts } from '../../../../src/markdown/note-context.ts';
import { renderNote } from '../../../../src/markdown/render.ts';
import { picturePlan } from '../../../../src/photos/plan.ts';
import type { SiteRecord } from '../../../../src/site/record.ts';
import { sheetOf } from '../../../../src/site/views/page/sheet.ts';
import { bagPicture, picturesAfter } from '../../../../src/site/views/session/session-page.ts';
import { compileFiles, NOTE, note } from '../../../journal/base.ts';
import { renditionOf } from '../pictures/rendition.ts';

const files = ['bag', 'seen', 'other'].map((name) => NOTE.replace('index.md', `${name}.jpg`));
const fields = `bags:
  - { bag: 3, holds: [2 bolts], picture: bag.jpg }
  - { bag: 4, holds: [2 nuts], picture: seen.jpg }
pictures:
  - { file: bag.jpg, caption: The bag. }
  - { file: other.jpg, caption: Other. }`;

test('a picture of a bag stands once on the page of its session: beside the bag, or in the prose that has it', () => {
  const { record } = compileFiles({ more: { [NOTE]: note(fields, '![The nuts](seen.jpg)') }, assets: files });
  const pictures = picturePlan({ renditions: files.map(renditionOf), papers: [], inOrder: files });
  const sheet = sheetOf({ ...(record as NonNullable<typeof record>), pictures } as SiteRecord, 'sessions/a.html');
  const [session] = sheet.record.journal.sessions;
  if (!session) throw new Error('no session');
  expect(session.bags.map((bag) => bagPicture(session, bag))).toEqual([files[0], null]);
  const { mentioned, unmentioned } = picturesAfter(sheet, session);
  expect([...mentioned, ...unmentioned].map(({ file }) => file)).toEqual([files[2]]);
});

test('a picture of a bag that the prose shows is set small there, and no other is', () => {
  const prose = '![The nuts](seen.jpg)\n\n![Other](other.jpg)';
  const { record } = compileFiles({ more: { [NOTE]: note(fields, prose) }, assets: files });
  const plan = picturePlan({ renditions: files.map(renditionOf), papers: [], inOrder: files });
  const [session] = record?.journal.sessions ?? [];
  if (!record || !session) throw new Error('no session');
  const { pictures } = noteContexts(record, plan)(session);
  expect([...pictures].map(([file, { ofBag }]) => [file, ofBag])).toEqual([
    [files[1], true],
    [files[2], false],
  ]);
  const { html } = renderNote(prose, noteContexts(record, plan)(session));
  expect(html.match(/<figure class="[^"]*"/g)).toEqual(['<figure class="picture of-bag"', '<figure class="picture"']);
});
