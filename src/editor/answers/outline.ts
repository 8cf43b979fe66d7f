/** What a file holds, one under the other, and what of it can be folded away. */
import { type DocumentSymbol, type FoldingRange, FoldingRangeKind, SymbolKind } from 'vscode-languageserver';
import { kindOfFile } from '../../journal/read/file-kinds.ts';
import type { SourceText } from '../../journal/read/source/text.ts';
import type { Path, Tree, Value } from '../../journal/read/source/tree.ts';
import type { State } from '../workspace.ts';
import { stepsIn, treeOfFile, yamlOf } from './fields.ts';
import { rangeOf } from './ranges.ts';

/** The fields with their entries, then the headings of the prose. */
export function outlineOf(state: State, path: string): DocumentSymbol[] {
  const text = state.textOf(path);
  if (text === null) return [];
  const read = treeOfFile(text);
  return [...(read ? symbolsIn(read.tree, [], read.tree.value, 2) : []), ...headings(text)];
}

/** @param depth how many levels of groups and lists are shown */
function symbolsIn(tree: Tree, path: Path, value: Value, depth: number): DocumentSymbol[] {
  return stepsIn(value).flatMap(([step, held]): DocumentSymbol[] => {
    if (typeof held === 'string' && path.length > 0) return [];
    const at = [...path, step];
    const range = rangeOf(tree.placeOf(at));
    const isEntry = typeof step === 'number';
    const selectionRange = isEntry ? { start: range.start, end: range.start } : rangeOf(tree.keyPlaceOf(at));
    const from = isEntry ? range.start : selectionRange.start;
    const children = depth > 1 ? symbolsIn(tree, at, held, depth - 1) : [];
    const detail = typeof held === 'string' ? held : '';
    const kind = isEntry ? SymbolKind.Object : SymbolKind.Field;
    return [
      { name: isEntry ? nameOf(held) : String(step), detail, kind, range: { start: from, end: range.end }, selectionRange, children },
    ];
  });
}

/** An entry is known by the first thing it says. */
function nameOf(entry: Value): string {
  const [first] = stepsIn(entry).flatMap(([, value]) =>
    typeof value === 'string' ? [value] : stepsIn(value).flatMap(([, one]) => (typeof one === 'string' ? [one] : [])),
  );
  return first?.trim() || 'entry';
}

interface Heading {
  readonly level: number;
  readonly words: string;
  readonly start: number;
  readonly end: number;
  /** Where what stands under it ends. */
  readonly until: number;
}

function headingsIn(text: SourceText): Heading[] {
  if (kindOfFile(text.file) !== 'note') return [];
  const from = yamlOf(text)?.span[1] ?? 0;
  // What is fenced is code, and keeps its length.
  const prose = text.text.slice(from).replace(/^(```|~~~)[\s\S]*?^\1/gm, (code) => code.replaceAll(/[^\n]/g, ' '));
  const found = [...prose.matchAll(/^ {0,3}(#{1,6})[ \t]+(.*?)[ \t#]*\r?$/gm)].map(({ 0: all, 1: marks = '', 2: words = '', index }) => ({
    level: marks.length,
    words,
    start: from + index,
    end: from + index + all.length,
  }));
  return found.map((one, n) => ({ ...one, until: found.slice(n + 1).find(({ level }) => level <= one.level)?.start ?? text.text.length }));
}

function headings(text: SourceText): DocumentSymbol[] {
  return headingsIn(text).map(({ words, start, end, until }) => ({
    name: words || '#',
    kind: SymbolKind.String,
    range: rangeOf(text.place(start, until)),
    selectionRange: rangeOf(text.place(start, end)),
  }));
}

/** The fields of a note as a whole, each field and entry of several lines, and what stands under a heading. */
export function foldingOf(state: State, path: string): FoldingRange[] {
  const text = state.textOf(path);
  if (text === null) return [];
  const yaml = kindOfFile(path) === 'note' ? yamlOf(text) : null;
  const front = yaml && yaml.span[1] < text.text.length ? [{ ...linesOf(text, 0, yaml.span[1]), kind: FoldingRangeKind.Region }] : [];
  const fields = symbolRanges(outlineOf(state, path));
  return [...front, ...fields].filter(({ startLine, endLine }) => endLine > startLine);
}

function symbolRanges(symbols: readonly DocumentSymbol[]): FoldingRange[] {
  return symbols.flatMap(({ range, children = [] }) => {
    // What ends at the beginning of a line ends on the line before.
    const endLine = range.end.character === 0 ? range.end.line - 1 : range.end.line;
    return [{ startLine: range.start.line, endLine }, ...symbolRanges(children)];
  });
}

function linesOf(text: SourceText, start: number, end: number): { startLine: number; endLine: number } {
  const { line, endLine } = text.place(start, end);
  return { startLine: line - 1, endLine: endLine - 1 };
}
