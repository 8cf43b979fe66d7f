/** What somebody typed by mistake, and what it was meant to be; and tables of such slips. */
import type { Edit } from './mended-text.ts';

/** A slip. Offsets are within the YAML. */
export interface Slip {
  readonly code: 'A201' | 'A202' | 'A208';
  readonly start: number;
  readonly end: number;
  readonly message: string;
  readonly hint: string;
  /** With these the text reads as it was meant. */
  readonly edits: readonly Edit[];
  /** Nothing else can have been meant: it is read so, and not told. */
  readonly quiet?: boolean;
  /** Nothing else can have been meant: what was may be written without asking. */
  readonly sure?: boolean;
}

/** Names that fields have, and those of fields whose values are prose. */
export interface FieldNames {
  readonly all: ReadonlySet<string>;
  readonly prose: ReadonlySet<string>;
  /** Of fields that take several texts. */
  readonly lists?: ReadonlySet<string>;
  /** The fields of each kind of entry. */
  readonly groups?: readonly ReadonlySet<string>[];
  /** Of one entry, those that it does not have yet. */
  readonly open?: ReadonlySet<string>;
}

/** A pattern for any of the names. */
export function patternOf({ all }: FieldNames): string {
  return `(?:${[...all].join('|') || '(?!)'})`;
}

/** The texts of a pattern's named groups. */
export type Groups = Readonly<Record<string, string>>;

/** A row of a table: what is typed, how it is told, and what it was meant to be. */
export interface Row {
  /** Without it, A201. */
  readonly code?: Slip['code'];
  /** `KNOWN` in it stands for any name that a field has, `EOL` for the end of a line; the group `shown` is pointed at. */
  readonly typed: RegExp;
  readonly message: string;
  readonly hint: string | ((found: Groups) => string);
  /** What takes the place of each group. */
  readonly meant: Readonly<Record<string, string | ((found: Groups) => string)>>;
  /** @see Slip.sure */
  readonly sure?: boolean;
}

/**
 * @param text the YAML; quotations that are sound may be masked, at the same length
 * @param start where in it to begin looking
 * @returns a slip for each row that is found, the first place of it shown and all of them mended
 */
export function slipsByTable(table: readonly Row[], text: string, start: number, end: number, known: FieldNames): Slip[] {
  const names = `${patternOf(known)}(?![\\w-])`;
  const part = text.slice(start, end);
  return table.flatMap((row) => {
    const pattern = new RegExp(row.typed.source.replaceAll('KNOWN', names).replaceAll('EOL', '(?=[ \\t\\r]*(?:\\n|$))'), 'dgu');
    const found = [...part.matchAll(pattern)].map((match) => slipOf(row, match, start));
    return found[0] ? [{ ...found[0], edits: found.flatMap(({ edits }) => edits) }] : [];
  });
}

function slipOf({ code = 'A201', message, hint, meant, sure = false }: Row, match: RegExpExecArray, start: number): Slip {
  const groups = (match.groups ?? {}) as Groups;
  const spanOf = (group: string): [number, number] => match.indices?.groups?.[group] ?? [-1, -1];
  const said = (words: string | ((found: Groups) => string)): string => (typeof words === 'string' ? words : words(groups));
  const edits = Object.entries(meant).flatMap(([group, put]) => {
    const [from, to] = spanOf(group);
    return from === -1 ? [] : [{ start: start + from, end: start + to, text: said(put) }];
  });
  const [from, to] = spanOf('shown');
  return { code, start: start + from, end: start + to, message, hint: said(hint), edits, sure };
}

const QUOTATION = /(?<=[{[,:(-]\s*)(?:"(?:[^"\\\n]|\\.)*"|'(?:[^'\n]|'')*')(?=\s*(?:[,}\]\n]|$|:\s|\s#))/g;

/** The text with a letter for each one between quotation marks that stand well, so that no mark in there counts. */
export function maskQuotations(text: string): string {
  return text.replaceAll(QUOTATION, (all) => all[0] + 'x'.repeat(all.length - 2) + all[0]);
}
