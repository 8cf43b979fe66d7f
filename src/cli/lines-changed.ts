/** Each line of a file before and after a change that keeps to its lines. A tab is shown as an arrow. */
export function linesChanged(path: string, was: string, becomes: string): string {
  const [before, after] = [linesOf(was), linesOf(becomes)];
  return changedLines(was, becomes)
    .map((line) => `${path}:${line}\n  before  ${before[line - 1]}\n  after   ${after[line - 1]}\n`)
    .join('');
}

/** The numbers of the lines that such a change is on, from 1. */
export function changedLines(was: string, becomes: string): number[] {
  const after = linesOf(becomes);
  return linesOf(was).flatMap((line, n) => (line === after[n] ? [] : [n + 1]));
}

const linesOf = (text: string): string[] => text.split(/\r\n|[\r\n]/).map((line) => line.replaceAll('\t', '→').trimEnd());
