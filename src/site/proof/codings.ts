/** How a text may be coded in a file: the marks of markup, of scripts, of tables and of addresses. */

const ENTITIES: ReadonlyMap<string, string> = new Map(Object.entries({ amp: '&', lt: '<', gt: '>', quot: '"', apos: "'", nbsp: '\u00a0' }));
const ENTITY = /&(?:#(\d+)|#x([0-9a-f]+)|(\w+));/gi;
const ELEMENT = /<[^>]*>/g;
/** The last code point of Unicode. */
const LAST = 0x10ffff;

/** A text as it stands and with the marks of each coding undone; each that differs. Between elements words do not touch. */
export function codings(text: string): ReadonlySet<string> {
  const entities = withoutEntities(text);
  const plain = entities.replace(ELEMENT, '');
  const script = text
    .replace(/\\u([0-9a-f]{4})/gi, (_, hex: string) => String.fromCharCode(Number.parseInt(hex, 16)))
    .replace(/\\(["'\\/])/g, '$1')
    .replace(/\\[nrt]/g, ' ');
  return new Set([text, entities, plain, script, text.replaceAll('""', '"'), decodedAddress(text)]);
}

/** A page as people read it. */
export const readAsPage = (text: string): string => withoutEntities(text).replace(ELEMENT, ' ');

/** A reference that nothing is known of, and one to no character, stay as they are. */
export function withoutEntities(text: string): string {
  return text.replace(ENTITY, (whole, decimal: string, hex: string, name: string) => {
    if (name !== undefined) return ENTITIES.get(name) ?? whole;
    const code = decimal === undefined ? Number.parseInt(hex, 16) : Number(decimal);
    return code > LAST ? whole : String.fromCodePoint(code);
  });
}

export function decodedAddress(text: string): string {
  return text.replace(/(?:%[0-9a-f]{2})+/gi, (coded) => {
    try {
      return decodeURIComponent(coded);
    } catch {
      return coded;
    }
  });
}
