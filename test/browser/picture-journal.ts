/** A journal of many pictures, for the browser: the heaviest of the demo's, put where a restorer may put them. */
import { copyFileSync, globSync, mkdirSync, mkdtempSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type BuiltSite, buildSite } from './built-site.ts';

export const PICTURES = 12;
const DEMO = new URL('../../content/', import.meta.url).pathname;

/** The ways in which a session may hold its pictures. */
export const IN_PROSE = '2026-03-10-in-prose';
export const UNDER_PICTURES = '2026-03-11-under-pictures';
export const UNMENTIONED = '2026-03-12-unmentioned';

/** Builds a site of three sessions, each of twelve pictures. */
export async function buildPictureJournal(): Promise<BuiltSite> {
  const journal = mkdtempSync(join(tmpdir(), 'asfound-picture-journal-'));
  const lines = ['title: The van', 'arrived: 2026-01-01', 'currency: GBP', 'time-zone: Europe/London', 'locale: en-GB', ''];
  writeFileSync(join(journal, 'journal.yaml'), lines.join('\n'));
  const numbers = Array.from({ length: PICTURES }, (_, n) => n);
  writeSession(journal, IN_PROSE, '', numbers.map((n) => `It came off at once.\n\n![Number ${n}](${n}.jpg)\n`).join('\n'));
  const listed = numbers.map((n) => `  - { file: ${n}.jpg, caption: Number ${n}. }`);
  writeSession(journal, UNDER_PICTURES, `pictures:\n${listed.join('\n')}\n`, 'It came off at once.\n');
  writeSession(journal, UNMENTIONED, '', 'It came off at once.\n');
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

function heaviest(): string[] {
  const all = globSync(`${DEMO}sessions/*/*.jpg`);
  return all.sort((a, b) => statSync(b).size - statSync(a).size).slice(0, PICTURES);
}
