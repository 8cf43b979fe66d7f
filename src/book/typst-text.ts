/** Text into Typst source. Whatever comes from a journal goes in as a string, so that nothing in it is markup. */

/** Any text as a Typst string. Line ends and other controls become spaces. */
export function literal(text: string): string {
  return `"${text.replace(/[\\"]/g, '\\$&').replace(/[\p{Cc}\s]+/gu, ' ')}"`;
}

/** A text set as it stands, in the midst of markup. */
export function words(text: string): string {
  return text === '' ? '' : `#${literal(text)};`;
}

/** A call of one of the book's own functions, in the midst of markup. */
export function call(name: string, named: Readonly<Record<string, string>>, ...content: readonly string[]): string {
  const given = Object.entries(named).map(([key, value]) => `${key}: ${value}`);
  return `#${name}(${given.join(', ')})${content.map((one) => `[${one}]`).join('')}`;
}

/** A Typst array of strings or other values. One element needs its comma. */
export function list(values: readonly string[]): string {
  return `(${values.join(', ')}${values.length === 1 ? ',' : ''})`;
}
