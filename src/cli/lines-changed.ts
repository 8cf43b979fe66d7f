/** Each line of a file before and after a change that keeps to its lines. A tab is shown as an arrow. */
export function linesChanged(path: string, was: string, becomes: string): string {
  const linesOf = (text: string): string[] => text.split(/\r\n|[\r\n]/).map((line) => line.replaceAll('\t', '→').trimEnd());
  const after = linesOf(becomes);
  return linesOf(was)
    .flatMap((line, n) => (line === after[n] ? [] : [`${path}:${n + 1}\n  before  ${line}\n  after   ${after[n]}\n`]))
    .join('');
}
