/**
 * What limits say to a reader: `9.000..9.060 in` in a note is `9.000 to 9.060 in`, `3.0.. mm` is `at least 3.0 mm`,
 * `..2.0 in` is `at most 2.0 in`.
 */
export function limitWords(text: string | null): string {
  if (text === null) return 'none given';
  const [, low = '', high = ''] = /^(.*?)\.\.(.*)$/.exec(text.trim()) ?? [];
  if (low === '' && high === '') return text;
  if (low === '') return `at most ${high.trim()}`;
  return /^[\d.]/.test(high.trim()) ? `${low.trim()} to ${high.trim()}` : `at least ${low.trim()} ${high.trim()}`.trim();
}
