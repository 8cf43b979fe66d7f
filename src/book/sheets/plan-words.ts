import type { JournalRecord } from '../../journal/record.ts';
import { decisionHistory } from '../../journal/timelines/decision-history.ts';
import { capital, counted } from '../../site/views/page/words.ts';

/** How many decisions there are, how many took the place of an earlier one on the same pieces, and how many say no reason. */
export function planWords({ journal, history }: Pick<JournalRecord, 'journal' | 'history'>): string {
  const all = [...history.decisions].flatMap(([position, decisions]) =>
    decisionHistory(decisions, journal.positions.get(position)?.count ?? 1),
  );
  if (all.length === 0) return 'No decision is written down.';
  const later = all.filter(({ superseded }) => superseded.length > 0).length;
  const bare = all.filter(({ decision: { because } }) => because === null || because.trim() === '').length;
  const reasons = bare === 0 ? 'each stays with its reason' : `each stays, ${bare} without a reason`;
  return capital(`${counted(all.length, 'decision')}, ${later === 0 ? 'none' : later} of them in place of an earlier one; ${reasons}.`);
}
