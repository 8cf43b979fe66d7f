/** Manifests of a bag of files and its lists of tags, as text (RFC 8493, sections 2.1.3 and 2.2). */

/** What a line of a manifest says. */
export interface ManifestLine {
  /** Hexadecimal, lower case. */
  readonly digest: string;
  /** From the folder of the bag, parts joined by `/`. */
  readonly path: string;
}

/** A name and its value. Names may come more than once; their order is kept. */
export type Tag = readonly [name: string, value: string];

/** Only the ends of lines and the per cent sign itself are encoded in a path (section 2.1.3). */
const MUST_BE_ENCODED = /[%\r\n]/g;
const ENCODED = /%(25|0[AaDd])/g;

export function encodePath(path: string): string {
  return path.replace(MUST_BE_ENCODED, (mark) => `%${mark.charCodeAt(0).toString(16).toUpperCase().padStart(2, '0')}`);
}

export function decodePath(written: string): string {
  return written.replace(ENCODED, (_, code: string) => String.fromCharCode(Number.parseInt(code, 16)));
}

/** @param files any order; the text lists them by path, so that the same files give the same bytes */
export function manifestText(files: readonly ManifestLine[]): string {
  const sorted = [...files].sort((a, b) => (a.path < b.path ? -1 : a.path > b.path ? 1 : 0));
  return sorted.map(({ digest, path }) => `${digest}  ${encodePath(path)}\n`).join('');
}

/** A manifest read: its lines, and those that are none. */
export interface ManifestRead {
  readonly lines: readonly ManifestLine[];
  /** Running numbers, from 1, of lines that cannot be understood. */
  readonly odd: readonly number[];
}

/** Lines end with LF, CR or both; between digest and path stand spaces or tabs. A leading `./` or `*` that checksum programs write is passed over. */
export function readManifest(text: string): ManifestRead {
  const lines: ManifestLine[] = [];
  const odd: number[] = [];
  for (const [n, line] of linesOf(text).entries()) {
    if (line.trim() === '') continue;
    const [, digest, written] = /^([0-9A-Fa-f]+)[ \t]+(.+)$/.exec(line) ?? [];
    if (digest === undefined || written === undefined) odd.push(n + 1);
    else lines.push({ digest: digest.toLowerCase(), path: decodePath(written.replace(/^\*(?=data\/)/, '').replace(/^\.\//, '')) });
  }
  return { lines, odd };
}

/** A tag file: `Name: value`, one a line. Values of ours are one line each. */
export function tagsText(tags: readonly Tag[]): string {
  return tags.map(([name, value]) => `${name}: ${value.replace(/\s*[\r\n]+\s*/g, ' ')}\n`).join('');
}

/** Reads a tag file; a line that begins with white space goes on with the value before it (section 2.2.2). */
export function readTags(text: string): Tag[] {
  const tags: [string, string][] = [];
  for (const line of linesOf(text)) {
    const last = tags.at(-1);
    if (/^[ \t]/.test(line) && last) last[1] = `${last[1]} ${line.trim()}`;
    const [, name, value] = /^([^:\s][^:]*?)\s*:\s*(.*?)\s*$/.exec(line) ?? [];
    if (name !== undefined && value !== undefined) tags.push([name, value]);
  }
  return tags;
}

function linesOf(text: string): string[] {
  return text.split(/\r\n|\r|\n/);
}
