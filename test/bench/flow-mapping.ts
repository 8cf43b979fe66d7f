/** A value of one front-matter entry: text as it is to be read, or a list of such texts. */
export type Value = string | readonly string[];
/** One entry, `{ key: value }`, in the order it is to be written. */
export type Line = Readonly<Record<string, Value | null>>;

const UNSAFE = /^[^A-Za-z0-9]|[,[\]{}"#]|: |:$|^\s|\s$/;

/** Writes a text as a YAML scalar in flow context, quoted where it has to be. */
export function scalar(text: string): string {
  return UNSAFE.test(text) || text === '' ? JSON.stringify(text) : text;
}

/** Writes an entry as a YAML flow mapping; keys without a value are left out. */
export function flowMapping(line: Line): string {
  const pairs = Object.entries(line).flatMap(([key, value]) =>
    value === null ? [] : [`${key}: ${typeof value === 'string' ? scalar(value) : flowList(value)}`],
  );
  return `{ ${pairs.join(', ')} }`;
}

/** Writes a YAML flow sequence. */
export function flowList(values: readonly string[]): string {
  return `[${values.map(scalar).join(', ')}]`;
}
