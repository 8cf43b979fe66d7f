/** Labels for bags: where they go on a sheet, and the sheet as Typst source. Pure. */
import { encode } from 'uqr';
import type { Hazard, PartId } from '../journal/model.ts';
import type { JournalRecord } from '../journal/record.ts';
import { bagsAt, inBag, leftBag, leftOf, unnamedIn } from '../journal/registers/bags.ts';
import { hazardInWords, hazardsOfLying } from '../journal/registers/hazards.ts';
import { dayWords } from './statement-head.ts';

/** A sheet of labels; every length in millimetres. */
export interface LabelSheet {
  readonly paper: 'a4' | 'us-letter';
  readonly columns: number;
  readonly rows: number;
  /** Null: what the margins and gaps leave, shared out. */
  readonly width: number | null;
  readonly height: number | null;
  readonly left: number;
  readonly top: number;
  readonly gapAcross: number;
  readonly gapDown: number;
  /** Labels already used on the first sheet. */
  readonly skip: number;
}

/** A4 is ISO 216; US Letter is ANSI/ASME Y14.1 size A, 8.5 by 11 inches. */
export const PAPERS: Readonly<Record<LabelSheet['paper'], { readonly width: number; readonly height: number }>> = {
  a4: { width: 210, height: 297 },
  'us-letter': { width: 215.9, height: 279.4 },
};

export const PLAIN_SHEET: LabelSheet = {
  paper: 'a4',
  columns: 2,
  rows: 6,
  width: null,
  height: null,
  left: 10,
  top: 12,
  gapAcross: 3,
  gapDown: 2,
  skip: 0,
};

export interface Label {
  readonly bag: number;
  readonly off: string | null;
  /** What its note says it holds, and parts of the catalogue in it that the note does not name. */
  readonly holds: readonly string[];
  readonly goesBack: string | null;
  /** The day on which it was filled, in words. */
  readonly filled: string;
  /** The day on which it was emptied; null while it is filled. */
  readonly emptied: string | null;
  /** What of it went elsewhere since. */
  readonly left: readonly string[];
  /** Hazards that the parts in it carry now. */
  readonly hazards: readonly Hazard[];
  /** The address of its entry, for the code; null where the journal has none. */
  readonly link: string | null;
}

/** The labels of bags, in the order asked for; a bag nobody filled has none. */
export function labelsOf(record: JournalRecord, bags: readonly number[], addressOf: (bag: number) => string): Label[] {
  const rows = new Map(bagsAt(record, null).map((row) => [row.bag, row]));
  const { address, locale } = record.journal.settings;
  const nameOf = (part: PartId): string => record.journal.parts.get(part)?.name ?? part;
  return bags.flatMap((bag) => {
    const row = rows.get(bag);
    if (!row) return [];
    const off = row.filling.off === null ? null : nameOf(row.filling.off);
    const link = address === null ? null : address + addressOf(bag);
    const hazards = hazardsOfLying(record, inBag(row), record.day);
    const { filling, filled, emptied } = row;
    const left = leftBag(row).map((one) => leftOf(one, nameOf(one.part)));
    const days = { filled: dayWords(filled.date, locale), emptied: emptied && dayWords(emptied.date, locale) };
    const holds = [...filling.holds, ...unnamedIn(row, nameOf, nameOf)];
    return [{ bag, off, holds, goesBack: filling.goesBack, ...days, left, hazards, link }];
  });
}

/** The place of each label: its sheet from 0, and its corner in millimetres. */
export function placesOn(sheet: LabelSheet, labels: number): { sheet: number; x: number; y: number; width: number; height: number }[] {
  const paper = PAPERS[sheet.paper];
  const share = (whole: number, margin: number, gap: number, n: number) => (whole - 2 * margin - gap * (n - 1)) / n;
  const width = sheet.width ?? share(paper.width, sheet.left, sheet.gapAcross, sheet.columns);
  const height = sheet.height ?? share(paper.height, sheet.top, sheet.gapDown, sheet.rows);
  const each = sheet.columns * sheet.rows;
  return Array.from({ length: labels }, (_, i) => {
    const n = i + sheet.skip;
    const column = n % sheet.columns;
    const row = Math.floor((n % each) / sheet.columns);
    return {
      sheet: Math.floor(n / each),
      x: sheet.left + column * (width + sheet.gapAcross),
      y: sheet.top + row * (height + sheet.gapDown),
      width,
      height,
    };
  });
}

/** Why a sheet cannot be printed; null when it can. */
export function sheetProblem(sheet: LabelSheet): string | null {
  const paper = PAPERS[sheet.paper];
  const [place] = placesOn({ ...sheet, skip: 0 }, 1);
  if (!place || place.width < 25 || place.height < 15) return 'a label must be at least 25 by 15 mm';
  const right = sheet.left + sheet.columns * place.width + (sheet.columns - 1) * sheet.gapAcross;
  const bottom = sheet.top + sheet.rows * place.height + (sheet.rows - 1) * sheet.gapDown;
  if (right > paper.width + 0.01)
    return `${sheet.columns} labels across are ${right.toFixed(1)} mm, and the paper is ${paper.width} mm wide`;
  if (bottom > paper.height + 0.01)
    return `${sheet.rows} labels down are ${bottom.toFixed(1)} mm, and the paper is ${paper.height} mm high`;
  return sheet.skip >= sheet.columns * sheet.rows ? 'more labels are skipped than a sheet has' : null;
}

/** The largest and the smallest letters of a label, in points. */
const LETTERS = { most: 9, least: 5 } as const;

/** The sheets as Typst source, one page a sheet. What does not fit at the smallest letters is cut, and its bag named under `<cut>`. */
export function labelsTypst(labels: readonly Label[], sheet: LabelSheet): string {
  const places = placesOn(sheet, labels.length);
  const pages = Map.groupBy(
    labels.map((label, i) => ({ label, place: places[i] })),
    ({ place }) => place?.sheet ?? 0,
  );
  const bodies = [...pages.values()].map((page) =>
    page
      .map(({ label, place }) => (place ? `#place(top + left, dx: ${place.x}mm, dy: ${place.y}mm, ${labelBox(label, place)})` : ''))
      .join('\n'),
  );
  return `#set document(title: "Bag labels")
#set page(paper: "${sheet.paper}", margin: 0pt)
#set text(font: "Libertinus Serif", size: 9pt, lang: "en")
#set par(leading: 0.45em, spacing: 0.5em)
#let fitted(bag, width, height, words) = context {
  let set-at(size) = block(width: width, { set text(size: size); words })
  let size = ${LETTERS.most}pt
  while size > ${LETTERS.least}pt and measure(set-at(size)).height > height { size -= 0.25pt }
  if measure(set-at(size)).height > height [#metadata(bag) <cut>]
  set-at(size)
}
${bodies.join('\n#pagebreak()\n')}
`;
}

/** Round the words and the code of a label, and between them, in millimetres. */
const INSET = 2.5;
const GUTTER = 2;

function labelBox(label: Label, { width, height }: { readonly width: number; readonly height: number }): string {
  const [across, down] = [width - 2 * INSET, height - 2 * INSET];
  const code = Math.min(down, across / 2, 26);
  const lines = [
    `text(size: 2.2em, weight: "bold")[#${literal(String(label.bag))}]`,
    ...(label.hazards.length === 0 ? [] : [`text(weight: "bold", ${literal(`Caution: ${label.hazards.map(hazardInWords).join(', ')}`)})`]),
    ...(label.off === null ? [] : [`text(weight: "bold", ${literal(`Off: ${label.off}`)})`]),
    `text(${literal(label.holds.join('; '))})`,
    ...(label.goesBack === null ? [] : [`text(style: "italic", ${literal(`Goes back: ${label.goesBack}`)})`]),
    ...(label.left.length === 0 ? [] : [`text(${literal(`Gone elsewhere since: ${label.left.join('; ')}`)})`]),
    `text(size: 0.8em, ${literal(`Filled ${label.filled}${label.emptied === null ? '' : `, emptied ${label.emptied}`}`)})`,
  ];
  const words = (room: number) => `fitted(${label.bag}, ${room}mm, ${down}mm, stack(dir: ttb, spacing: 0.4em, ${lines.join(', ')}))`;
  const content =
    label.link === null
      ? words(across)
      : `grid(columns: (1fr, ${code}mm), column-gutter: ${GUTTER}mm, ${words(across - code - GUTTER)}, image(bytes(${literal(codeSvg(label.link))}), format: "svg", width: ${code}mm, alt: ${literal(`Code for ${label.link}`)}))`;
  return `box(width: ${width}mm, height: ${height}mm, inset: ${INSET}mm, clip: true, ${content})`;
}

/** A QR code (ISO/IEC 18004) of a link, error correction M, with the quiet zone of four modules. */
export function codeSvg(link: string): string {
  const { data, size } = encode(link, { ecc: 'M', border: 4 });
  const cells = data.flatMap((row, y) => row.flatMap((dark, x) => (dark ? [`M${x} ${y}h1v1h-1z`] : [])));
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${size} ${size}" shape-rendering="crispEdges"><rect width="${size}" height="${size}" fill="#fff"/><path d="${cells.join('')}"/></svg>`;
}

/** Any text as a Typst string: nothing in it is markup. */
function literal(text: string): string {
  return `"${text.replace(/[\\"]/g, '\\$&').replace(/\s+/g, ' ')}"`;
}
