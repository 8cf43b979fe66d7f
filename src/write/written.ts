/** Values as YAML, the way a person writes them: an entry on a line, in braces; quotation marks only where they are needed. */
import { Document, Scalar, type YAMLSeq } from 'yaml';
import type { FormField } from './form.ts';
import { isGroup, type Value, type Values } from './values.ts';

/** An entry with entries of its own is written on several lines when it would be longer than this on one. */
const LONGEST_LINE = 160;

/** Texts that YAML takes for something else when they stand plain. */
const NOTHING = /^(?:~|null)?$/i;

/** A value on one line. Inside braces and brackets more marks mean something else than outside them. */
export function onOneLine(value: Value, quoted: Scalar.Type | null = null): string {
  return typeof value === 'string' ? textAlone(value, quoted, false) : inBraces(value);
}

export function inBraces(value: Value, quoted: Scalar.Type | null = null): string {
  if (typeof value === 'string') return textAlone(value, quoted, true);
  if (Array.isArray(value)) return `[${value.map((item) => inBraces(item)).join(', ')}]`;
  return `{ ${Object.entries(value)
    .map(([name, one]) => `${inBraces(name)}: ${inBraces(one)}`)
    .join(', ')} }`;
}

function textAlone(text: string, quoted: Scalar.Type | null, braces: boolean): string {
  const document = new Document([text], { schema: 'failsafe' });
  const list = document.contents as YAMLSeq<Scalar>;
  const [scalar] = list.items;
  if (scalar && quoted !== null) scalar.type = quoted;
  if (scalar && (NOTHING.test(text) || text.includes('\n'))) scalar.type = Scalar.QUOTE_DOUBLE;
  list.flow = braces;
  return document
    .toString({ lineWidth: 0, minContentWidth: 0 })
    .trimEnd()
    .slice(2, braces ? -2 : undefined);
}

/** A value as it is written in its field: one of several words, or of several names, stands alone. */
export function asWritten(value: Value, field: FormField | undefined): Value {
  if (isGroup(value)) {
    const inside = (name: string) => (field?.of === 'table' ? field.fields[0] : field?.fields.find((one) => one.name === name));
    return Object.fromEntries(inOrder(value, field).map((name) => [name, asWritten(value[name] ?? '', inside(name))]));
  }
  if (!Array.isArray(value) || !field) return value;
  const items = value.map((item) => asWritten(item, { ...field, many: false, several: false }));
  const [only] = items;
  const alone = field.several || (field.of === 'text' && field.words !== null);
  return alone && items.length === 1 && only !== undefined ? only : items;
}

/** The names of fields in the order of the format. */
function inOrder(value: Values, field: FormField | undefined): string[] {
  const order = field?.of === 'fields' ? field.fields.map(({ name }) => name) : [];
  return [...order.filter((name) => value[name] !== undefined), ...Object.keys(value).filter((name) => !order.includes(name))];
}

/** An entry of a list as lines without an end, to stand at an indentation. */
export function entryLines(entry: Value, field: FormField | undefined, indent: string): string {
  const written = asWritten(entry, field);
  const line = `${indent}- ${onOneLine(written)}`;
  if (!isGroup(written) || line.length <= LONGEST_LINE || !Object.values(written).some(isListOfGroups)) return line;
  const lines = Object.entries(written).map(([name, value]) => fieldLines(name, value, undefined, `${indent}  `));
  return `${indent}- ${lines.join('\n').slice(indent.length + 2)}`;
}

/** A field with its value as lines without an end. */
export function fieldLines(name: string, value: Value, field: FormField | undefined, indent: string): string {
  const written = field ? asWritten(value, field) : value;
  if (!isListOfGroups(written)) return `${indent}${onOneLine(name)}: ${onOneLine(written)}`;
  return [`${indent}${name}:`, ...written.map((item) => entryLines(item, field && { ...field, many: false }, `${indent}  `))].join('\n');
}

function isListOfGroups(value: Value): value is Values[] {
  return Array.isArray(value) && value.some(isGroup);
}
