import type { Deed } from '../record.ts';
import { groupedBy } from './source.ts';

/**
 * Of how many the deeds of one entry speak. A lot that came together from several places has a deed for each; what an
 * entry says in several words is of the same ones.
 */
export function deedCount(deeds: readonly Deed[]): number {
  const byWord = [...groupedBy(deeds, ({ did }) => did).values()];
  return Math.max(0, ...byWord.map((list) => list.reduce((sum, { count }) => sum + count, 0)));
}
