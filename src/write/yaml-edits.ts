/**
 * Changes of values as changes of the text they are written in. Only what is changed is written anew; every other letter,
 * comment and blank stays where it is.
 */
import { isMap, isScalar, isSeq, type Node, type Pair, type Scalar, type YAMLMap, type YAMLSeq } from 'yaml';
import type { FormField } from './form.ts';
import { isGroup, meantName, sameValue, type Value, type Values } from './values.ts';
import { asWritten, entryLines, fieldLines, inBraces, onOneLine } from './written.ts';

export interface TextEdit {
  readonly start: number;
  readonly end: number;
  readonly text: string;
}

/** What stands there is written in a way that cannot be changed from a form without touching what is none of its business. */
export class NotByForm extends Error {}

/** The text that is changed, and what has been found to change in it. */
export interface Editing {
  readonly text: string;
  readonly edits: TextEdit[];
}

type Written = Node | null;

/** Changes the fields at the top of a document. New ones go where the format has them. */
export function editTop(editing: Editing, map: YAMLMap | null, before: Values, after: Values, fields: readonly FormField[]): void {
  if (map?.flow) throw new NotByForm();
  const order = fields.map(({ name }) => name);
  for (const name of namesOf(before, after)) {
    const field = fields.find((one) => one.name === name);
    const pair = map ? pairOf(map, name, fields) : undefined;
    if (pair) editPair(editing, pair, before[name], after[name], field);
    else if (after[name] !== undefined) addTop(editing, map, name, `${fieldLines(name, after[name], field, '')}\n`, order);
  }
}

function addTop(editing: Editing, map: YAMLMap | null, name: string, text: string, order: readonly string[]): void {
  const place = order.indexOf(name);
  const earlier = (map?.items ?? []).filter((pair) => {
    const at = order.indexOf(meantOf(pair, order));
    return at !== -1 && (place === -1 || at < place);
  });
  const last = earlier.at(-1) ?? (place === -1 ? map?.items.at(-1) : undefined);
  insertLines(editing, last ? endOfLine(editing.text, endOfPair(last)) : 0, text);
}

function meantOf(pair: Pair, order: readonly string[]): string {
  const plain = keyOf(pair)
    .toLowerCase()
    .replaceAll(/[\s_]+/g, '-');
  return order.includes(plain) ? plain : keyOf(pair);
}

function editPair(editing: Editing, pair: Pair, before: Value | undefined, after: Value | undefined, field: FormField | undefined): void {
  if (sameValue(before, after)) return;
  const value = pair.value as Written;
  if (after === undefined) removeField(editing, pair);
  else if (isNothing(value)) fillField(editing, pair, after, field);
  else editValue(editing, value, before ?? '', after, field, false);
}

function isNothing(value: Written): value is null {
  return value === null || (isScalar(value) && (value.value === null || value.value === '') && value.range?.[0] === value.range?.[1]);
}

/** `hours:` with nothing behind it but, maybe, comments under it. */
function fillField(editing: Editing, pair: Pair, value: Value, field: FormField | undefined): void {
  const written = fieldLines(keyOf(pair), value, field, '');
  const colon = editing.text.indexOf(':', rangeOf(pair.key as Node)[1]) + 1;
  const rest = written.slice(written.indexOf(':', keyOf(pair).length) + 1);
  if (rest.startsWith('\n')) insertLines(editing, endOfLine(editing.text, colon), `${rest.slice(1)}\n`);
  else editing.edits.push({ start: colon, end: colon, text: rest });
}

function editValue(editing: Editing, node: Node, before: Value, after: Value, field: FormField | undefined, inFlow: boolean): void {
  if (sameValue(before, after)) return;
  if (isMap(node) && isGroup(before) && isGroup(after)) editGroup(editing, node, before, after, field, inFlow);
  else if (isSeq(node) && Array.isArray(before) && Array.isArray(after)) editList(editing, node, before, after, field, inFlow);
  else replace(editing, node, asWritten(after, field), inFlow);
}

/** A whole value is written anew only where no comment stands in it. */
function replace(editing: Editing, node: Node, value: Value, inFlow: boolean): void {
  const [start, end] = rangeOf(node);
  const old = editing.text.slice(start, end);
  if (!isScalar(node) && /(?:^|\s)#/.test(old)) throw new NotByForm();
  const quoted = isScalar(node) && node.type?.startsWith('QUOTE_') ? (node.type as Scalar.Type) : null;
  const text = inFlow ? inBraces(value, quoted) : onOneLine(value, quoted);
  editing.edits.push({ start, end, text: old.endsWith('\n') ? `${text}\n` : text });
}

function editGroup(editing: Editing, map: YAMLMap, before: Values, after: Values, field: FormField | undefined, inFlow: boolean): void {
  const fields = field?.of === 'fields' ? field.fields : [];
  const remove = map.flow ? removeFromBraces : removeFromBlock;
  for (const name of namesOf(before, after)) {
    const inside = field?.of === 'table' ? field.fields[0] : fields.find((one) => one.name === name);
    const pair = pairOf(map, name, fields);
    const value = after[name];
    if (sameValue(before[name], value)) continue;
    if (!pair && value !== undefined) addToGroup(editing, map, name, value, inside);
    else if (!pair) continue;
    else if (value === undefined) remove(editing, map, pair);
    else if (isNothing(pair.value as Written)) fillField(editing, pair, value, inside);
    else editValue(editing, pair.value as Node, before[name] ?? '', value, inside, inFlow || map.flow === true);
  }
}

function addToGroup(editing: Editing, map: YAMLMap, name: string, value: Value, field: FormField | undefined): void {
  const last = map.items.at(-1);
  if (!last) throw new NotByForm();
  if (map.flow) {
    const end = endOfPair(last);
    editing.edits.push({ start: end, end, text: `, ${inBraces(name)}: ${inBraces(asWritten(value, field))}` });
    return;
  }
  const indent = ' '.repeat(columnOf(editing.text, rangeOf(map.items[0]?.key as Node)[0]));
  insertLines(editing, endOfLine(editing.text, endOfPair(last)), `${fieldLines(name, value, field, indent)}\n`);
}

function removeFromBraces(editing: Editing, map: YAMLMap, pair: Pair): void {
  const at = map.items.indexOf(pair);
  const [previous, next] = [map.items[at - 1], map.items[at + 1]];
  const start = previous ? endOfPair(previous) : startOfPair(pair);
  const end = previous || !next ? endOfPair(pair) : startOfPair(next);
  removeText(editing, start, end);
}

/** The first field of an entry stands behind its hyphen, where the next one then goes. */
function removeFromBlock(editing: Editing, map: YAMLMap, pair: Pair): void {
  const next = map.items[1];
  if (map.items[0] !== pair) removeField(editing, pair);
  else if (next) removeText(editing, startOfPair(pair), startOfPair(next));
  else throw new NotByForm();
}

function editList(editing: Editing, seq: YAMLSeq, before: Value[], after: Value[], field: FormField | undefined, inFlow: boolean): void {
  const item = field && { ...field, many: false, several: false };
  const isPlain = before.every((one) => typeof one === 'string') && after.every((one) => typeof one === 'string');
  if (seq.flow && isPlain) replace(editing, seq, after, inFlow);
  else editEntries(editing, seq, before, after, item, inFlow || seq.flow === true);
}

function editEntries(editing: Editing, seq: YAMLSeq, before: Value[], after: Value[], item: FormField | undefined, inFlow: boolean): void {
  const { pairs, removed, added } = aligned(before, after);
  for (const [was, is] of pairs) {
    editValue(editing, seq.items[was] as Node, before[was] ?? '', after[is] ?? '', item, inFlow);
  }
  for (const at of removed) removeItem(editing, seq, at);
  for (const { behind, values } of added) addItems(editing, seq, behind, values, item);
}

/** New entries stand behind the one that they follow; -1 is the head of the list. */
function addItems(editing: Editing, seq: YAMLSeq, behind: number, values: readonly Value[], field: FormField | undefined): void {
  if (seq.flow) {
    const follows = seq.items[behind] as Node | undefined;
    const at = follows ? rangeOf(follows)[1] : rangeOf(seq)[0] + 1;
    const texts = values.map((value) => inBraces(asWritten(value, field)));
    const text = follows ? `, ${texts.join(', ')}` : seq.items.length > 0 ? ` ${texts.join(', ')},` : ` ${texts.join(', ')} `;
    editing.edits.push({ start: at, end: at, text });
    return;
  }
  const first = rangeOf(seq.items[0] as Node)[0];
  const hyphen = editing.text.lastIndexOf('-', first - 1);
  const indent = ' '.repeat(columnOf(editing.text, hyphen));
  const follows = seq.items[behind] as Node | undefined;
  const at = follows ? endOfLine(editing.text, rangeOf(follows)[1]) : startOfLine(editing.text, hyphen);
  insertLines(editing, at, values.map((value) => `${entryLines(value, field, indent)}\n`).join(''));
}

function removeItem(editing: Editing, seq: YAMLSeq, at: number): void {
  const [start, end] = rangeOf(seq.items[at] as Node);
  const [previous, next] = [seq.items[at - 1] as Node | undefined, seq.items[at + 1] as Node | undefined];
  if (seq.flow) removeText(editing, previous ? rangeOf(previous)[1] : start, previous || !next ? end : rangeOf(next)[0]);
  else removeText(editing, startOfLine(editing.text, editing.text.lastIndexOf('-', start - 1)), endOfLine(editing.text, end));
}

function removeField(editing: Editing, pair: Pair): void {
  removeText(editing, startOfLine(editing.text, startOfPair(pair)), endOfLine(editing.text, endOfPair(pair)));
}

function removeText(editing: Editing, start: number, end: number): void {
  editing.edits.push({ start, end, text: '' });
}

function insertLines(editing: Editing, at: number, text: string): void {
  const before = editing.text.slice(0, at);
  const begun = before !== '' && !before.endsWith('\n');
  editing.edits.push({ start: at, end: at, text: begun ? `\n${text}` : text });
}

interface Alignment {
  readonly pairs: readonly (readonly [was: number, is: number])[];
  readonly removed: readonly number[];
  readonly added: readonly { readonly behind: number; readonly values: readonly Value[] }[];
}

/** Which entry became which: equal ones belong together, and between them those of the same place in turn. */
export function aligned(before: readonly Value[], after: readonly Value[]): Alignment {
  const anchors = [...equalOnes(before, after), [before.length, after.length] as const];
  const pairs: [number, number][] = [];
  const removed: number[] = [];
  const added: { behind: number; values: Value[] }[] = [];
  let [was, is] = [0, 0];
  for (const [wasNext, isNext] of anchors) {
    while (was < wasNext && is < isNext) pairs.push([was++, is++]);
    const values = after.slice(is, isNext);
    if (values.length > 0) added.push({ behind: was - 1, values });
    while (was < wasNext) removed.push(was++);
    [was, is] = [wasNext + 1, isNext + 1];
  }
  return { pairs, removed, added };
}

/** The longest row of equal entries that both lists have in this order. */
function equalOnes(before: readonly Value[], after: readonly Value[]): (readonly [number, number])[] {
  const longest: number[][] = Array.from({ length: before.length + 1 }, () => Array(after.length + 1).fill(0));
  const lengthAt = (was: number, is: number): number => longest[was]?.[is] ?? 0;
  for (let was = before.length - 1; was >= 0; was -= 1) {
    for (let is = after.length - 1; is >= 0; is -= 1) {
      const row = longest[was] as number[];
      row[is] = sameValue(before[was], after[is]) ? lengthAt(was + 1, is + 1) + 1 : Math.max(lengthAt(was + 1, is), lengthAt(was, is + 1));
    }
  }
  const row: [number, number][] = [];
  for (let [was, is] = [0, 0]; was < before.length && is < after.length; ) {
    if (sameValue(before[was], after[is])) row.push([was++, is++]);
    else if (lengthAt(was + 1, is) >= lengthAt(was, is + 1)) was += 1;
    else is += 1;
  }
  return row;
}

/** The text with the edits made. */
export function edited({ text, edits }: Editing): string {
  const inOrder = edits.map((edit, n) => ({ ...edit, n })).sort((a, b) => a.start - b.start || a.end - b.end || a.n - b.n);
  let [made, at] = ['', 0];
  for (const { start, end, text: put } of inOrder) {
    if (start < at) throw new NotByForm();
    made += text.slice(at, start) + put;
    at = end;
  }
  return made + text.slice(at);
}

function namesOf(before: Values, after: Values): string[] {
  return [...new Set([...Object.keys(before), ...Object.keys(after)])];
}

function pairOf(map: YAMLMap, name: string, fields: readonly FormField[]): Pair | undefined {
  return map.items.find((pair) => keyOf(pair) === name) ?? map.items.find((pair) => meantName(keyOf(pair), fields) === name);
}

function keyOf({ key }: Pair): string {
  return isScalar(key) ? String(key.value) : '';
}

function rangeOf(node: Node): readonly [number, number] {
  if (!node.range) throw new NotByForm();
  return [node.range[0], node.range[1]];
}

function startOfPair(pair: Pair): number {
  return rangeOf(pair.key as Node)[0];
}

function endOfPair(pair: Pair): number {
  const value = pair.value as Written;
  return value?.range ? Math.max(value.range[1], rangeOf(pair.key as Node)[1] + 1) : rangeOf(pair.key as Node)[1] + 1;
}

function startOfLine(text: string, at: number): number {
  return text.lastIndexOf('\n', at - 1) + 1;
}

/** Behind the end of the line on which, or right behind which, something ends. */
function endOfLine(text: string, at: number): number {
  if (at > 0 && text[at - 1] === '\n') return at;
  const end = text.indexOf('\n', at);
  return end === -1 ? text.length : end + 1;
}

function columnOf(text: string, at: number): number {
  return at - startOfLine(text, at);
}
