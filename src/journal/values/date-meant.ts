/** What to type for a date in another order: both ways where either number may be the month. */

const MONTHS = 'jan feb mar apr may jun jul aug sep oct nov dec'.split(' ');

/** @returns dates as they are written here, the likelier first; none where it may be anything */
export function datesMeant(text: string): string[] {
  const written = text.trim().toLowerCase();
  const [, year, second, third] = /^(\d{4})[-/. ](\d{1,2})[-/. ](\d{1,2})$/.exec(written) ?? [];
  if (year !== undefined) return [dateOf(year, second, third)].flat();
  const [, day, month, last] = /^(\d{1,2})[-/. ](\d{1,2})[-/. ](\d{4})$/.exec(written) ?? [];
  if (last !== undefined) return [...new Set([...dateOf(last, month, day), ...dateOf(last, day, month)])];
  const named =
    /^(?:\p{L}+,? )?(\d{1,2})(?:st|nd|rd|th)?\.?[- ](\p{L}{3,})\.?,?[- ](\d{4})$/u.exec(written) ??
    /^(?:\p{L}+,? )?(\p{L}{3,})\.? (\d{1,2})(?:st|nd|rd|th)?,? (\d{4})$/u.exec(written);
  if (!named) return [];
  const [, a = '', b = '', of = ''] = named;
  const [number, name] = /^\d/.test(a) ? [a, b] : [b, a];
  return dateOf(of, String(MONTHS.indexOf(name.slice(0, 3)) + 1), number);
}

function dateOf(year = '', month = '', day = ''): string[] {
  const [m, d] = [Number(month), Number(day)];
  return m >= 1 && m <= 12 && d >= 1 && d <= 31 ? [`${year}-${String(m).padStart(2, '0')}-${String(d).padStart(2, '0')}`] : [];
}
