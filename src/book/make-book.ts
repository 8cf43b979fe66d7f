/** The record as one typeset book: PDF/A-3a, tagged, with the tables and notes it was made from attached. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { typesetApart } from '../exports/typeset-apart.ts';
import type { SiteRecord } from '../site/record.ts';
import {
  account,
  cautions,
  comesWith,
  type ElsewhereInBook,
  indexOfParts,
  keepers,
  LIST_OF_PICTURES,
  methods,
  papers,
  temporary,
} from './appendices.ts';
import { measurements } from './measured.ts';
import { howToRead, listOfVolumes, theVehicle, titlePage } from './opening.ts';
import { plates } from './plates.ts';
import { departures, lives, register } from './register-chapters.ts';
import { type BookSetting, settingOf } from './setting.ts';
import { story } from './story.ts';
import { threads } from './threads.ts';
import { list, literal } from './typst-text.ts';
import { chaptersIn, intoVolumes, type Piece } from './volumes.ts';

export const PAPERS = ['a4', 'us-letter', 'a5'] as const;
export type BookPaper = (typeof PAPERS)[number];

/** Margins leave room for binding; the measure of running text is kept by indents at both sides; two pictures go on a page. */
const SHEETS: Readonly<Record<BookPaper, Readonly<Record<string, string>>>> = {
  a4: { inside: '30mm', outside: '22mm', top: '26mm', bottom: '26mm', 'measure-side': '16mm', size: '10.5pt', tall: '112mm' },
  'us-letter': { inside: '30mm', outside: '24mm', top: '24mm', bottom: '24mm', 'measure-side': '18mm', size: '10.5pt', tall: '102mm' },
  a5: { inside: '20mm', outside: '14mm', top: '18mm', bottom: '18mm', 'measure-side': '0mm', size: '9.2pt', tall: '75mm' },
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
  /** Of a volume, about; 400 where it is not said. */
  readonly mostPages?: number;
  progress(text: string): void;
}

/** What is asked of one volume. */
interface Volume {
  readonly n: number;
  readonly pieces: readonly Piece[];
  /** Of each volume, the chapters that it holds. */
  readonly holds: readonly (readonly string[])[];
}

/** What a volume tells those after it. */
interface Told {
  readonly parts: readonly (readonly [string, readonly number[]])[];
  readonly evenings: readonly (readonly [string, number])[];
}

/** Everything between the opening and the index, in its order. */
function piecesOf(setting: BookSetting): readonly Piece[] {
  const chapter = (source: string): Piece[] => {
    const title = /^= (.+)/.exec(source)?.[1];
    return title === undefined ? [] : [{ source, chapter: title, goesOn: '', evening: null }];
  };
  const before = [theVehicle(setting), keepers(setting)].flatMap(chapter);
  const told = story(setting);
  const after = [threads, plates, register, lives, departures, methods, account, temporary, comesWith, cautions, measurements, papers];
  return [...before, ...told, ...after.flatMap((part) => chapter(part(setting)))];
}

/** The whole source of a volume. Pure. */
function volumeSource(setting: BookSetting, { n, pieces, holds }: Volume, told: readonly Told[], options: BookOptions): string {
  const [many, last] = [holds.length > 1, n === holds.length - 1];
  const called = many ? `Volume ${n + 1} of ${holds.length}` : null;
  const pages = many ? toldPages(told) : { evenings: [], parts: new Map() };
  const parts = [
    titlePage(setting, called),
    '#contents()',
    ...(n === 0 ? [`${howToRead(setting)}\n\n${listOfVolumes(holds)}`] : []),
    pieces[0]?.goesOn ?? '',
    ...pieces.map(({ source }) => source),
    ...(last ? [indexOfParts(setting, pages.parts, many ? `${n + 1}: ` : '')] : []),
    LIST_OF_PICTURES,
    ...(many ? [`#told-of-volume(${list(pieces.flatMap(({ evening }) => (evening === null ? [] : [literal(evening)])))})`] : []),
  ];
  const attached = last ? options.attached.map(attachment) : [];
  return `${readFileSync(new URL('./book.typ', import.meta.url), 'utf8')}
#show: setting.with(${headOf(setting, options.paper, called)})
${attached.join('\n')}
${pages.evenings.length === 0 ? '' : `#elsewhere.update((${pages.evenings.join(', ')}))`}
${parts
  .filter((part) => part !== '')
  .map((part) => part.replace(/^= /gm, '#new-chapter()\n= '))
  .join('\n\n')}
`;
}

function toldPages(told: readonly Told[]): { readonly evenings: readonly string[]; readonly parts: ElsewhereInBook } {
  const evenings = told.flatMap((one, n) => one.evenings.map(([id, page]) => `${literal(id)}: [volume ${n + 1}, page ${page}]`));
  const parts = new Map<string, string[]>();
  for (const [n, one] of told.entries()) {
    for (const [id, pages] of one.parts) parts.set(id, [...(parts.get(id) ?? []), `${n + 1}: ${pages.join(', ')}`]);
  }
  return { evenings, parts };
}

function headOf({ record }: BookSetting, paper: BookPaper, called: string | null): string {
  const { settings } = record.journal;
  const [language, region] = settings.locale.split('-');
  const [year, month, day] = record.day.split('-').map(Number);
  const head = {
    title: literal(called === null ? settings.title : `${settings.title}, ${called.toLowerCase()}`),
    stamp: `datetime(year: ${year}, month: ${month}, day: ${day})`,
    language: literal(language ?? 'en'),
    region: region === undefined || !/^[A-Z]{2}$/.test(region) ? 'none' : literal(region),
    paper: literal(paper),
    ...SHEETS[paper],
  };
  return Object.entries(head)
    .map(([key, value]) => `${key}: ${value}`)
    .join(', ');
}

function attachment({ name, holds, type, content }: Attachment): string {
  return `#pdf.attach(${literal(`/${name}`)}, bytes(${exactLiteral(content)}), relationship: "source", mime-type: ${literal(type)}, description: ${literal(holds)})`;
}

/** Text of a file as a Typst string, every character of it. */
function exactLiteral(text: string): string {
  return `"${text.replace(/[\\"]/g, '\\$&').replaceAll('\n', '\\n').replaceAll('\r', '\\r').replaceAll('\t', '\\t')}"`;
}

/**
 * Sets the book, or its volumes one after the other, each in a process of its own: what the typesetter holds is gone when it ends.
 *
 * @returns the PDFs, files in the workspace; the same record gives the same bytes
 * @throws Error with the typesetter's own words when it does not take the source, which is a fault of ours
 */
export async function makeBook(record: SiteRecord, options: BookOptions): Promise<readonly string[]> {
  const setting = settingOf(record);
  const volumes = intoVolumes(piecesOf(setting), options.mostPages);
  const holds = volumes.map(chaptersIn);
  const files: string[] = [];
  const told: Told[] = [];
  for (const [n, pieces] of volumes.entries()) {
    options.progress(volumes.length === 1 ? 'Setting the book' : `Setting the book: volume ${n + 1} of ${volumes.length}`);
    const pdf = join(options.workspace, `volume-${n + 1}.pdf`);
    const source = volumeSource(setting, { n, pieces, holds }, told, options);
    told.push(...((await typesetApart(source, { workspace: options.workspace, standard: 'a-3a', pdf })) as readonly Told[]));
    files.push(pdf);
  }
  return files;
}
