/** Places of ours and positions of the protocol, which count from 0. Both count the letters of a line in UTF-16. */
import type { Position, Range } from 'vscode-languageserver';
import type { Place } from '../../journal/diagnostics/place.ts';
import type { Mention } from '../../journal/mentions/mentions.ts';
import type { SourceText } from '../../journal/read/source/text.ts';
import type { State } from '../workspace.ts';

/** What is asked about: a spot in a file of the journal. */
export interface Spot {
  readonly path: string;
  readonly position: Position;
}

export function rangeOf({ line, column, endLine, endColumn }: Place): Range {
  return { start: { line: line - 1, character: column - 1 }, end: { line: endLine - 1, character: endColumn - 1 } };
}

export function offsetAt(text: SourceText, { line, character }: Position): number {
  return text.offset(line + 1, character + 1);
}

/** The text at a place. */
export function textAt(text: SourceText, { line, column, endLine, endColumn }: Place): string {
  return text.text.slice(text.offset(line, column), text.offset(endLine, endColumn));
}

/** Whether a place begins at or before a position and ends at or after it. */
export function holds({ line, column, endLine, endColumn }: Place, position: Position): boolean {
  const [at, letter] = [position.line + 1, position.character + 1];
  return (line < at || (line === at && column <= letter)) && (at < endLine || (at === endLine && letter <= endColumn));
}

/** The thing that is named where one stands. */
export function mentionAt({ mentions }: State, { path, position }: Spot): Mention | null {
  return mentions.all.find(({ place }) => place.file === path && holds(place, position)) ?? null;
}
