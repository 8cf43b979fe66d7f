/** The stretch of a text around the first of the words asked for, about `length` characters, cut at words. */
export function excerpt(text: string, asked: readonly string[], length: number): string {
  if (text.length <= length) return text;
  const lower = text.toLowerCase();
  const places = asked.map((word) => lower.indexOf(word.toLowerCase())).filter((place) => place >= 0);
  const middle = places.length === 0 ? 0 : Math.min(...places);
  const start = Math.max(0, middle - Math.round(length / 3));
  const from = start === 0 ? 0 : text.indexOf(' ', start) + 1;
  const end = text.lastIndexOf(' ', from + length);
  const to = from + length >= text.length || end <= from ? text.length : end;
  return `${from > 0 ? '… ' : ''}${text.slice(from, to)}${to < text.length ? ' …' : ''}`;
}
