/** A paper of a few sheets, set with the faces of the book: its head, then its parts. */
import { readFileSync } from 'node:fs';
import { typeset } from '../../exports/typeset.ts';
import type { SiteRecord } from '../../site/record.ts';
import { vehicleLine } from '../../site/views/home/vehicle.ts';
import { copyWords } from '../../site/views/page/words.ts';
import { type BookSetting, settingOf } from '../setting.ts';
import { call, literal, words } from '../typst-text.ts';

export type SheetPaper = 'a4' | 'us-letter';

export interface SheetOptions {
  readonly paper: SheetPaper;
  /** The folder that the rendered pictures of the plan lie in. */
  readonly workspace: string;
}

/** What a sheet says: its title, a line under it, and its parts as Typst source; empty ones are passed over. */
export interface SheetText {
  /** It stands on a day of its own, which its line says, and not on that of the record. */
  readonly ownDay?: boolean;
  readonly title: string;
  readonly line: string;
  readonly parts: readonly string[];
}

/** @returns the bytes of a PDF/A-3a; the same record gives the same bytes */
export function sheetPdf(record: SiteRecord, make: (setting: BookSetting) => SheetText, { paper, workspace }: SheetOptions): Uint8Array {
  return typeset(sheetSource(record, make, paper), { workspace, standard: 'a-3a' }).pdf;
}

/** The whole source. Pure. */
export function sheetSource(record: SiteRecord, make: (setting: BookSetting) => SheetText, paper: SheetPaper): string {
  const setting = settingOf(record, false);
  const { title, line, parts, ownDay = false } = make(setting);
  const { settings } = record.journal;
  const [language = 'en', region] = settings.locale.split('-');
  const [year, month, day] = record.day.split('-').map(Number);
  const named = {
    title: literal(`${title}: ${settings.title}`),
    stamp: `datetime(year: ${year}, month: ${month}, day: ${day})`,
    language: literal(language),
    region: region === undefined || !/^[A-Z]{2}$/.test(region) ? 'none' : literal(region),
    paper: literal(paper),
    inside: '20mm',
    outside: '20mm',
    top: '20mm',
    bottom: '20mm',
    'measure-side': '0mm',
    size: '10pt',
  };
  const given = Object.entries(named).map(([key, value]) => `${key}: ${value}`);
  const stood = `${ownDay ? 'Set from the record of' : 'As it stood on'} ${setting.sheet.date(record.day)}.`;
  const foot = `${vehicleLine(settings)} ${stood} ${copyWords(record.copy)}`;
  return `${readFileSync(new URL('../book.typ', import.meta.url), 'utf8')}
#show: setting.with(${given.join(', ')})
${call('sheet-head', { title: `[${words(title)}]`, line: `[${words(line)}]`, foot: `[${words(foot)}]` })}
${parts.filter((part) => part !== '').join('\n\n')}
`;
}

/** A part of the book as a part of a sheet: one level further down, and on the same page. */
export function asPart(section: string): string {
  return section.replace(/^= /, '== ').replaceAll('#heading(level: 2)', '#heading(level: 3)');
}
