/** A name as YAML takes it inside braces: in quotation marks where it needs them. */
export function asText(name: string): string {
  return /^[\p{L}\p{N}][\p{L}\p{N} ./-]*$/u.test(name) ? name : JSON.stringify(name);
}
