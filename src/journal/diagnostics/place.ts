/** Where something is written: a file of the journal and a range in it, lines and columns from 1. */
export interface Place {
  readonly file: string;
  readonly line: number;
  readonly column: number;
  readonly endLine: number;
  readonly endColumn: number;
}

/** Whether one place begins within another of the same file. */
export function beginsWithin(inner: Place, outer: Place): boolean {
  const after = inner.line > outer.line || (inner.line === outer.line && inner.column >= outer.column);
  const before = inner.line < outer.endLine || (inner.line === outer.endLine && inner.column < outer.endColumn);
  return inner.file === outer.file && after && before;
}

/** Whether two places begin at the same spot of the same file. */
export function beginsAt(a: Place, b: Place): boolean {
  return a.file === b.file && a.line === b.line && a.column === b.column;
}

/** A text for where a place begins, the same of two that begin at the same spot. */
export function spotOf({ file, line, column }: Place): string {
  return `${file}:${line}:${column}`;
}
