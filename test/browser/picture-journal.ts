/** A journal of many pictures, for the browser: the heaviest of the demo's, put where a restorer may put them. */
import { copyFileSync, globSync, linkSync, mkdirSync, mkdtempSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type BuiltSite, buildSite } from './built-site.ts';

export const PICTURES = 12;
const DEMO = new URL('../../content/', import.meta.url).pathname;

/** The ways in which a session may hold its pictures. */
export const IN_PROSE = '2026-03-10-in-prose';
export const UNDER_PICTURES = '2026-03-11-under-pictures';
export const UNMENTIONED = '2026-03-12-unmentioned';

/** Sessions of one month that hold more pictures than one page of all pictures takes. */
export const BUSY = { month: '2026-02', sessions: 5, pictures: 60 } as const;

/** Builds a site of three sessions, each of twelve pictures, and of a busy month before them. */
export async function buildPictureJournal(): Promise<BuiltSite> {
  const journal = mkdtempSync(join(tmpdir(), 'asfound-picture-journal-'));
  const lines = ['title: The van', 'arrived: 2026-01-01', 'currency: GBP', 'time-zone: Europe/London', 'locale: en-GB', ''];
  writeFileSync(join(journal, 'journal.yaml'), lines.join('\n'));
  const numbers = Array.from({ length: PICTURES }, (_, n) => n);
  writeSession(journal, IN_PROSE, '', numbers.map((n) => `It came off at once.\n\n![Number ${n}](${n}.jpg)\n`).join('\n'));
  const listed = numbers.map((n) => `  - { file: ${n}.jpg, caption: Number ${n}. }`);
  writeSession(journal, UNDER_PICTURES, `pictures:\n${listed.join('\n')}\n`, 'It came off at once.\n');
  writeSession(journal, UNMENTIONED, '', 'It came off at once.\n');
  busyMonth(journal);
  const site = await buildSite(['--content', journal]);
  rmSync(journal, { recursive: true, force: true });
  return site;
}

function writeSession(journal: string, id: string, fields: string, prose: string): void {
  const folder = join(journal, 'sessions', id);
  mkdirSync(folder, { recursive: true });
  for (const [n, file] of heaviest().entries()) copyFileSync(file, join(folder, `${n}.jpg`));
  writeFileSync(join(folder, 'index.md'), `---\ndate: ${id.slice(0, 10)}\ntitle: ${id.slice(11)}\n${fields}---\n${prose}`);
}

/** The same few pictures again and again, linked, so that little is copied and little rendered. */
function busyMonth(journal: string): void {
  const from = join(journal, 'sessions', UNMENTIONED);
  for (let evening = 1; evening <= BUSY.sessions; evening += 1) {
    const date = `${BUSY.month}-${String(evening).padStart(2, '0')}`;
    const folder = join(journal, 'sessions', `${date}-busy`);
    mkdirSync(folder);
    for (let n = 0; n < BUSY.pictures; n += 1) linkSync(join(from, `${n % PICTURES}.jpg`), join(folder, `${n}.jpg`));
    writeFileSync(join(folder, 'index.md'), `---\ndate: ${date}\ntitle: Busy\n---\nMuch came off.\n`);
  }
}

function heaviest(): string[] {
  const all = globSync(`${DEMO}sessions/*/*.jpg`);
  return all.sort((a, b) => statSync(b).size - statSync(a).size).slice(0, PICTURES);
}
