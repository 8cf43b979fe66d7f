import type { JournalRecord } from '../../journal/record.ts';
import { decisionHistory } from '../../journal/timelines/decision-history.ts';
import { capital, counted } from '../../site/views/page/words.ts';

/**
 * How many decisions there are, those on spares that never stood anywhere among them, how many took the place of an earlier
 * one on the same pieces, and how many say no reason.
 */
export function planWords({ journal, history }: Pick<JournalRecord, 'journal' | 'history'>): string {
  const onPlaces = [...history.decisions].flatMap(([position, decisions]) =>
    decisionHistory(decisions, journal.positions.get(position)?.count ?? 1),
  );
  const all = [...onPlaces.map(({ decision }) => decision), ...history.aside];
  if (all.length === 0) return 'No decision is written down.';
  const later = onPlaces.filter(({ superseded }) => superseded.length > 0).length;
  const bare = all.filter(({ because }) => because === null || because.trim() === '').length;
  return capital(`${counted(all.length, 'decision')}, ${placeWords(all.length, later)}; ${reasonWords(all.length, bare)}.`);
}

function placeWords(all: number, later: number): string {
  if (all === 1) return 'in place of no earlier one';
  return `${later === 0 ? 'none' : later} of them in place of an earlier one`;
}

function reasonWords(all: number, bare: number): string {
  if (all === 1) return bare === 0 ? 'it stays with its reason' : 'it stays, without a reason';
  return bare === 0 ? 'each stays with its reason' : `each stays, ${bare} without a reason`;
}
