import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { folderWith, put } from '../load/folder.ts';
import { film, PICTURES } from '../photos/sample-film.ts';
import { JOURNAL } from './journal.ts';
import { finished, serving, until } from './started.ts';

/** Text a file, or bytes. */
const FILMED: Readonly<Record<string, string | Uint8Array>> = {
  ...JOURNAL,
  'van/sessions/2031-03-03-film/index.md': `---
date: 2031-03-03
title: Filmed
film:
  - { clip: reel 07.mp4, title: Strip, shows: { "0:12": drum, "1:00": pipe } }
---
`,
  'van/sessions/2031-03-03-film/reel 07.mp4': film(),
};

/** The addresses of marks on a page, as files of the site with their fragments. */
function marksOn(site: string, page: string): [file: string, fragment: string][] {
  const links = [...readFileSync(join(site, page), 'utf8').matchAll(/href="([^"]*\.mp4[^"]*)"/g)].map(([, href]) => href ?? '');
  return links.map((href) => {
    const [path = '', fragment = ''] = href.split('#');
    return [join(site, page, '..', decodeURIComponent(path)), fragment];
  });
}

test('a clip that lies by its note is in the site, and every page that names a mark of it opens it there', () => {
  const cwd = folderWith(FILMED);
  expect(finished(['build', '--content', 'van'], cwd).status).toBe(0);
  const site = join(cwd, 'dist');
  for (const page of ['film.html', 'parts/drum.html', 'parts/pipe.html', 'sessions/2031-03-03-film.html']) {
    const marks = marksOn(site, page);
    expect(marks.length, page).toBeGreaterThan(0);
    for (const [file, fragment] of marks) {
      expect(readFileSync(file, 'latin1')).toContain(PICTURES);
      expect(fragment).toMatch(/^t=(12(,60)?|60)$/);
    }
  }
});

test('while a journal is served, a player gets the stretch of a clip that it asks for', async () => {
  const { address } = await serving(['--content', 'van'], folderWith(FILMED));
  const clip = `${address}files/sessions/2031-03-03-film/reel%2007.mp4`;
  await until(async () => (await fetch(`${address}film.html`)).status === 200);
  const answer = await fetch(clip, { headers: { range: 'bytes=4-7' } });
  expect([answer.status, answer.headers.get('content-type'), await answer.text()]).toEqual([206, 'video/mp4', 'ftyp']);
  expect((await fetch(`${address}files/journal.yaml`)).status).toBe(404);
});

test('no file of the journal is published for being called a clip', () => {
  const cwd = folderWith({ ...FILMED, 'van/sessions/2031-03-03-film/full.jpg': 'a picture' });
  put(cwd, 'van/sessions/2031-03-03-film/index.md', '---\ndate: 2031-03-03\ntitle: Filmed\nfilm: [{ clip: full.jpg }]\n---\n');
  const { status, stderr } = finished(['check', '--content', 'van'], cwd);
  expect([status, stderr]).toEqual([1, expect.stringContaining('full.jpg has an ending that no film has')]);
});
