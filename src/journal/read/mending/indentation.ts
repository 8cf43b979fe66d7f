/** Lines that begin in a column where nothing else of their block does. */
import type { Line } from './line-slips.ts';
import type { Edit } from './mended-text.ts';
import type { Slip } from './slip.ts';

/** Where the entries of lists and where the fields begin that a line may belong to. */
interface Columns {
  readonly dashes: readonly number[];
  readonly fields: readonly number[];
}

/**
 * @param lines every line of the text
 * @param at which of them
 * @returns what would put the line, and what hangs on it, where its block is; null when it stands well
 */
export function indentationSlip(text: string, lines: readonly Line[], at: number): Slip | null {
  const line = lines[at];
  if (!line) return null;
  const [, indent = '', dash, name] = /^( *)(?:(- )|([A-Za-z][\w-]*\s*:(?:\s|$)))?/.exec(text.slice(line.start, line.end)) ?? [];
  if (dash === undefined && name === undefined) return null;
  const { dashes, fields } = columnsAbove(text, lines, at);
  const column = indent.length;
  const allowed = dash === undefined ? fields : dashes;
  if (allowed.length === 0 || allowed.includes(column)) return null;
  const odd = dash === undefined ? null : oddAbove(text, lines, at);
  if (odd) return moved(text, lines, odd.line, odd.column, column);
  const wanted = allowed.reduce((best, each) => (Math.abs(each - column) < Math.abs(best - column) ? each : best));
  return moved(text, lines, at, column, wanted);
}

/** A line that goes on from one with an open brace or bracket, and begins where a block does. */
export function continuationSlip(text: string, lines: readonly Line[], at: number): Slip | null {
  const [above, line] = [lines[at - 1], lines[at]];
  if (!above || !line) return null;
  const [before, content] = [text.slice(above.start, above.end), text.slice(line.start, line.end)];
  const open = (before.match(/[{[]/g)?.length ?? 0) - (before.match(/[}\]]/g)?.length ?? 0);
  if (open <= 0 || /^\s*- /.test(content) || !/[}\]]\s*(?:#.*)?$/.test(content)) return null;
  const column = content.search(/\S/);
  return {
    ...moved(text, lines, at, column, before.search(/\S/) + 4),
    message: 'This line goes on from the one above, and must be indented deeper than it.',
    hint: 'Or write the whole entry on one line.',
  };
}

/** The entry above, where that one is out of line: the next stands as this one does, and none before it as that. */
function oddAbove(text: string, lines: readonly Line[], at: number): { readonly line: number; readonly column: number } | null {
  const entries = lines
    .map(({ start, end }, line) => ({ line, column: /^ *(?=- )/.exec(text.slice(start, end))?.[0].length ?? -1 }))
    .filter(({ column }) => column !== -1);
  const n = entries.findIndex(({ line }) => line === at);
  const [before, above, here, next] = [-2, -1, 0, 1].map((by) => entries[n + by]);
  const isOdd = n > 0 && here?.column === next?.column && above?.column !== here?.column && before?.column !== above?.column;
  return isOdd && above ? above : null;
}

function moved(text: string, lines: readonly Line[], at: number, column: number, wanted: number): Slip {
  const line = lines[at] as Line;
  return {
    code: 'A201',
    start: line.start + column,
    end: line.end,
    message: 'The indentation is not what YAML expects here.',
    hint: `Begin it with ${spaces(wanted)}: entries of one list begin in the same column; fields of one entry do too.`,
    edits: shifted(text, lines, at, column, wanted - column),
  };
}

function spaces(n: number): string {
  return n === 0 ? 'no space' : n === 1 ? '1 space' : `${n} spaces`;
}

/** The blocks that are open above a line. */
function columnsAbove(text: string, lines: readonly Line[], at: number): Columns {
  const dashes: number[] = [];
  const fields: number[] = [];
  let least = Number.POSITIVE_INFINITY;
  for (let n = at - 1; n >= 0 && least > 0; n -= 1) {
    const { start, end } = lines[n] as Line;
    const [, indent = '', dash, name, ends] = /^( *)(- +)?([A-Za-z][\w-]*\s*:(?=\s|$))?(\s*(?:#.*)?$)?/.exec(text.slice(start, end)) ?? [];
    if (indent.length >= least || (dash === undefined && name === undefined)) continue;
    const nearest = least === Number.POSITIVE_INFINITY;
    least = indent.length;
    if (dash !== undefined) dashes.push(least);
    if (name !== undefined) fields.push(least + (dash?.length ?? 0));
    if (nearest && name !== undefined && ends !== undefined) {
      const under = least + (dash?.length ?? 0) + 2;
      dashes.push(under);
      fields.push(under);
    }
  }
  if (!/^\s*- /.test(text) && !fields.includes(0)) fields.push(0);
  return { dashes, fields };
}

/** The line and those that are deeper after it, all moved by as much. */
function shifted(text: string, lines: readonly Line[], at: number, column: number, by: number): Edit[] {
  const edits: Edit[] = [];
  for (let n = at; n < lines.length; n += 1) {
    const { start, end } = lines[n] as Line;
    const indent = /^ */.exec(text.slice(start, end))?.[0].length ?? 0;
    if (n > at && indent <= Math.max(column, column + by)) break;
    const wanted = Math.max(0, indent + by);
    edits.push({ start, end: start + indent, text: ' '.repeat(wanted) });
  }
  return edits;
}
