/**
 * What a record says of its own warnings: how many there are of which sort. Their words go to whoever keeps the
 * journal: they name files, times and whatever else may not be for everybody.
 */
import { CATALOGUE } from '../../../journal/diagnostics/catalogue.ts';
import type { Diagnostic } from '../../../journal/diagnostics/diagnostic.ts';

/** In the order of their codes. */
export function warningCounts(warnings: readonly Diagnostic[]): readonly { readonly title: string; readonly count: number }[] {
  const codes = [...Map.groupBy(warnings, ({ code }) => code)].sort(([a], [b]) => (a < b ? -1 : 1));
  return codes.map(([code, each]) => ({ title: CATALOGUE[code].title, count: each.length }));
}
