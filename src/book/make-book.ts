/** The record as one typeset book: PDF/A-3a, tagged, with the tables and notes it was made from attached. */
import { readFileSync } from 'node:fs';
import { typeset } from '../exports/typeset.ts';
import type { SiteRecord } from '../site/record.ts';
import { account, cautions, comesWith, keepers, methods, papers, temporary, waysIn } from './appendices.ts';
import { measurements } from './measured.ts';
import { howToRead, theVehicle, titlePage } from './opening.ts';
import { plates } from './plates.ts';
import { departures, lives, register } from './register-chapters.ts';
import { settingOf } from './setting.ts';
import { story } from './story.ts';
import { threads } from './threads.ts';
import { literal } from './typst-text.ts';

export const PAPERS = ['a4', 'us-letter', 'a5'] as const;
export type BookPaper = (typeof PAPERS)[number];

/** Margins leave room for binding; the measure of running text is kept by indents at both sides. */
const SHEETS: Readonly<Record<BookPaper, Readonly<Record<string, string>>>> = {
  a4: { inside: '30mm', outside: '22mm', top: '26mm', bottom: '26mm', 'measure-side': '16mm', size: '10.5pt' },
  'us-letter': { inside: '30mm', outside: '24mm', top: '24mm', bottom: '24mm', 'measure-side': '18mm', size: '10.5pt' },
  a5: { inside: '20mm', outside: '14mm', top: '18mm', bottom: '18mm', 'measure-side': '0mm', size: '9.2pt' },
};

/** A file that goes with the book. */
export interface Attachment {
  readonly name: string;
  readonly holds: string;
  readonly type: string;
  readonly content: string;
}

export interface BookOptions {
  readonly paper: BookPaper;
  /** The folder that the rendered pictures of the plan lie in. */
  readonly workspace: string;
  readonly attached: readonly Attachment[];
  progress(text: string): void;
}

/** The whole source of the book. Pure. */
export function bookSource(record: SiteRecord, options: Pick<BookOptions, 'paper' | 'attached'>): string {
  const setting = settingOf(record);
  const { settings } = record.journal;
  const [language, region] = settings.locale.split('-');
  const [year, month, day] = record.day.split('-').map(Number);
  const head = {
    title: literal(settings.title),
    stamp: `datetime(year: ${year}, month: ${month}, day: ${day})`,
    language: literal(language ?? 'en'),
    region: region === undefined || !/^[A-Z]{2}$/.test(region) ? 'none' : literal(region),
    paper: literal(options.paper),
    ...SHEETS[options.paper],
  };
  const parts = [
    titlePage(setting),
    '#contents()',
    howToRead(setting),
    theVehicle(setting),
    keepers(setting),
    story(setting),
    threads(setting),
    plates(setting),
    register(setting),
    lives(setting),
    departures(setting),
    methods(setting),
    account(setting),
    temporary(setting),
    comesWith(setting),
    cautions(setting),
    measurements(setting),
    papers(setting),
    waysIn(setting),
  ];
  const named = Object.entries(head).map(([key, value]) => `${key}: ${value}`);
  const attached = options.attached.map(
    ({ name, holds, type, content }) =>
      `#pdf.attach(${literal(`/${name}`)}, bytes(${exactLiteral(content)}), relationship: "source", mime-type: ${literal(type)}, description: ${literal(holds)})`,
  );
  return `${readFileSync(new URL('./book.typ', import.meta.url), 'utf8')}
#show: setting.with(${named.join(', ')})
${attached.join('\n')}
${parts
  .filter((part) => part !== '')
  .map((part) => part.replace(/^= /gm, '#new-chapter()\n= '))
  .join('\n\n')}
`;
}

/** Text of a file as a Typst string, every character of it. */
function exactLiteral(text: string): string {
  return `"${text.replace(/[\\"]/g, '\\$&').replaceAll('\n', '\\n').replaceAll('\r', '\\r').replaceAll('\t', '\\t')}"`;
}

/**
 * @returns the bytes of the PDF; the same record gives the same bytes
 * @throws Error with the typesetter's own words when it does not take the source, which is a fault of ours
 */
export function makeBook(record: SiteRecord, options: BookOptions): Uint8Array {
  options.progress('Setting the book');
  return typeset(bookSource(record, options), { workspace: options.workspace, standard: 'a-3a' }).pdf;
}
