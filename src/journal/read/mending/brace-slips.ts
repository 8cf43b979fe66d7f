/** Slips inside braces and brackets that open on one line and are meant to close on it. */
import { bracketSlips } from './bracket-slips.ts';
import { type FieldNames, type Groups, patternOf, type Row, type Slip, slipsByTable } from './slip.ts';
import { valueSlip, type Written } from './value-slips.ts';

const BEFORE = ({ shown }: Groups): string => `Write a comma before \`${shown}:\`.`;
const NAMED = ({ name, value = '' }: Groups): string => `Write \`${name}: ${value.trim()}\`.`;

/** Between the fields of an entry in braces. */
const BETWEEN_FIELDS: readonly Row[] = [
  {
    typed: /,\s*(?<shown>,)/u,
    message: 'A comma stands here with nothing before it.',
    hint: 'Take it out.',
    meant: { shown: '' },
    sure: true,
  },
  {
    typed: /(?<=[{,]\s*)(?<shown>[}\]])(?=\s*\p{L})/u,
    message: 'An entry is closed here that has not ended.',
    hint: 'Take it out.',
    meant: { shown: '' },
  },
  {
    code: 'A208',
    typed: /(?<mark>;)\s+(?<shown>KNOWN)\s*[:=]\s/u,
    message: 'Fields inside braces are kept apart by commas.',
    hint: BEFORE,
    meant: { mark: ',' },
    sure: true,
  },
  {
    code: 'A208',
    typed: /[^\s,;{[:](?<gap>)\s+(?<shown>KNOWN)\s*:\s/u,
    message: 'A comma is missing between two fields.',
    hint: BEFORE,
    meant: { gap: ',' },
  },
  {
    code: 'A208',
    typed: /(?<shown>(?<name>KNOWN)(?<mark>\s*(?:=|::|：)))(?<gap>\s*)(?=(?<value>[^,}\]]*))/u,
    message: 'Between a field and its value stands `: `.',
    hint: NAMED,
    meant: { mark: ':', gap: ' ' },
    sure: true,
  },
  {
    code: 'A208',
    typed: /(?<=[{,]\s*)(?<shown>(?<name>[\p{L}_][\p{L}\d_-]*):(?<gap>))(?=(?<value>[^\s:/,}\]][^,}\]]*))/u,
    message: 'After the colon of a field stands a space.',
    hint: NAMED,
    meant: { gap: ' ' },
    sure: true,
  },
  {
    code: 'A208',
    typed: /(?<=[{,]\s*)(?<shown>KNOWN)(?<colon>)(?=\s+[^\s:：=,}\]])/u,
    message: 'A field has no colon.',
    hint: ({ shown }) => `Write \`${shown}: \` and its value.`,
    meant: { colon: ':' },
  },
  {
    code: 'A208',
    typed: /(?<all>(?<=[{,]\s*)(?<shown>[\p{L}\d_][^,:：={}[\]"']*?)\s*(?:,\s*|(?=\})|$))/u,
    message: 'A field has no value.',
    hint: 'Every field is `name: value`.',
    meant: { all: '' },
  },
];

/**
 * Reads a line from its first brace or bracket, as a person would.
 *
 * @param line the line, its sound quotations masked
 * @param start where in the text the line begins
 * @param from where in the text the brace or bracket stands
 * @param known names that fields have
 */
export function braceSlips(text: string, line: string, start: number, from: number, known: FieldNames): Slip[] {
  const masked = text.slice(0, start) + line;
  const values = valuesIn(line, from - start, known).map(([field, at, end]): Written => {
    const written = text.slice(start + at, start + end);
    return { field, start: start + at + written.search(/\S|$/), text: written.trim() };
  });
  const lists = masked.slice(from).replaceAll(/\[[^\]{}]*/g, (list) => '['.padEnd(list.length, 'x'));
  return [
    ...oneOfAKind(values.map((value) => valueSlip(value, true, openFields(values, known))).filter((slip) => slip !== null)),
    ...slipsByTable(BETWEEN_FIELDS, masked.slice(0, from) + lists, from, masked.length, known),
    ...oneOfAKind(bracketSlips(masked, from, known)),
  ];
}

/** The names, and those that the entry on a line may still take; any where it is not plain what kind of entry it is. */
function openFields(values: readonly Written[], known: FieldNames): FieldNames {
  const has = values.flatMap(({ field }) => field ?? []);
  const kinds = (known.groups ?? []).filter((group) => has.every((name) => group.has(name)));
  if (kinds.length === 0) return known;
  return { ...known, open: new Set(kinds.flatMap((group) => [...group]).filter((name) => known.all.has(name) && !has.includes(name))) };
}

/** The first of each kind; the others are mended with it. */
function oneOfAKind(slips: readonly Slip[]): Slip[] {
  const kinds = Map.groupBy(slips, ({ message, quiet, sure }) => `${message.replaceAll(/`[^`]*`/g, '')}${quiet} ${sure}`);
  return [...kinds.values()].flatMap(([first, ...more]) =>
    first ? [{ ...first, edits: [first, ...more].flatMap(({ edits }) => edits) }] : [],
  );
}

type Value = readonly [field: string | null, start: number, end: number];

/** Where the plain values stand on a line: those of fields to the next field, those of lists to the next comma. `[x] y` is no list. */
function valuesIn(line: string, from: number, known: FieldNames): Value[] {
  const names = `${patternOf(known)}`;
  const name = /(?<=[{,]\s*|^[^{[]*)("[^"]*"|'[^']*'|[^\s,{}[\]"':][^,{}[\]:]*?)\s*:\s+|(?<![^\s{[,])\[\s*/gu;
  const values: Value[] = [];
  name.lastIndex = from;
  for (let found = name.exec(line); found; found = name.exec(line)) {
    const at = found.index + found[0].length;
    const field = found[1]?.replaceAll(/["']/g, '') ?? null;
    if (field === null) values.push(...itemsIn(line, at, names));
    else if (!/^(?:[{]|"x*"|'x*')/.test(line.slice(at)) && !/^\[[^\]]*(?:$|\]\s*(?:[,}\]#]|$))/.test(line.slice(at))) {
      const end = valueEnd(line, at, known.prose.has(field), names);
      if (!/^\]\s*[,}]/.test(line.slice(end))) values.push([field, at, end]);
      name.lastIndex = Math.max(end, at);
    }
  }
  return values.filter(([, at, end]) => line.slice(at, end).trim() !== '');
}

function itemsIn(line: string, from: number, names: string): Value[] {
  const end =
    from + line.slice(from).search(new RegExp(`[}\\]]\\s*(?:[,}\\]#]|$)|\\](?!.*\\])|(?<![^,]\\s*)\\{|,\\s*${names}\\s*:\\s|\\s#|$`));
  const values: Value[] = [];
  for (const { index, 0: item } of line.slice(from, end).matchAll(/[^,]+/g)) {
    if (!/^\s*["']x*["']\s*$/.test(item)) values.push([null, from + index, from + index + item.length]);
  }
  return values;
}

/** A value ends before another field, the end of the entry, or a comment. In prose a comma is likelier than a forgotten colon. */
function valueEnd(line: string, from: number, isProse: boolean, names: string): number {
  const rest = line.slice(from).replaceAll(/(?<!^)\[[^[\]]*\]/g, (inner) => 'x'.repeat(inner.length));
  const bare = isProse ? '' : `|,\\s*${names}\\s+[^\\s:,}\\]]`;
  const end = new RegExp(
    `[}\\]]\\s*(?:[,}\\]#]|$)|\\}(?!.*\\})|;?\\s+${names}\\s*:\\s|\\s#[^}\\]]*$${bare}` +
      `|,\\s*(?:$|[,}\\]]|"[^"]*"\\s*:|[\\p{Ll}\\d_][\\p{L}\\d_-]*\\s*(?:[:：](?:\\s|$)|=\\s)|[a-z-]+:[^\\s/])|$`,
    'u',
  );
  return from + rest.search(end);
}
