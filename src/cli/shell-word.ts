/** A word of a command line as one types it: in quotation marks where it needs them. */
export function shellWord(text: string): string {
  return /^[\w./:@%+=,-]+$/.test(text) ? text : `'${text.replaceAll("'", "'\\''")}'`;
}
