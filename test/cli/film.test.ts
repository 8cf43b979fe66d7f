import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { folderWith, put } from '../load/folder.ts';
import { PICTURES } from '../photos/sample-film.ts';
import { FILMED } from './filmed.ts';
import { finished } from './started.ts';

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

test('no file of the journal is published for being called a clip', () => {
  const cwd = folderWith({ ...FILMED, 'van/sessions/2031-03-03-film/full.jpg': 'a picture' });
  put(cwd, 'van/sessions/2031-03-03-film/index.md', '---\ndate: 2031-03-03\ntitle: Filmed\nfilm: [{ clip: full.jpg }]\n---\n');
  const { status, stderr } = finished(['check', '--content', 'van'], cwd);
  expect([status, stderr]).toEqual([1, expect.stringContaining('full.jpg has an ending that no film has')]);
});
