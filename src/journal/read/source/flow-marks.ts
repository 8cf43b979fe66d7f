/** What a person reads in the marks between the fields of an entry in braces. */

/** Fields whose values are prose, in which a comma is likelier than a forgotten colon. */
const PROSE: ReadonlySet<string> = new Set(
  'note because how what private marks finish goes-back caption alt name evidence title unpaid refund material from words'.split(' '),
);

/** The name of a field, with a colon or without. */
export const NAME = /^(?:"[^"]*"|'[^']*'|[\p{L}\d_][\p{L}\d_-]*(?=\s*(?:[:：=,}]|\s)|$)|[^\s,{}[\]"'][^,{}[\]]*?(?=:(?:\s|$)))/u;

/** Whether a comma inside braces ends a value: another field, or the end, comes after it. */
export function endsValue(rest: string, field: string | null, known: ReadonlySet<string>): boolean {
  return isBeforeField(rest) || (!PROSE.has(field ?? '') && isBareFieldAfterComma(rest, known));
}

function isBeforeField(rest: string): boolean {
  return /^,\s*(?:$|[,}\]]|"[^"]*"\s*:|[\p{Ll}\d_][\p{L}\d_-]*\s*(?:[:：](?:\s|$)|=\s)|[a-z-]+:[^\s/])/u.test(rest);
}

export function isFieldAfterComma(rest: string, known: ReadonlySet<string>): boolean {
  const name = /^,\s*([a-z-]+)\s*:\s/.exec(rest)?.[1];
  return name !== undefined && known.has(name);
}

/** A field whose colon was forgotten; words of prose may look the same. */
function isBareFieldAfterComma(rest: string, known: ReadonlySet<string>): boolean {
  const name = /^,\s*([a-z-]+)\s+[^\s:,}\]]/.exec(rest)?.[1];
  return name !== undefined && known.has(name);
}
