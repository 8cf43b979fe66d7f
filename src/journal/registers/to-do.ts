import type { Decision, IsoDate, Position, PositionId, Verdict } from '../model.ts';
import type { Judged, Standing } from './judgement.ts';
import { lackingFor } from './mismatch.ts';
import type { RegisterSource } from './source.ts';
import { deedsOf } from './stays.ts';
import { type WorkKind, workOf } from './work-done.ts';

/** A decision in force that has not been carried out, or not on all it speaks of. */
export interface Pending {
  readonly position: PositionId;
  readonly decision: Decision;
  /** On how many it is still to be carried out. */
  readonly count: number;
  /** `replace`: not fitted yet; `take-off`: still on; `work`: the work is not done; `refit`: nothing stands there yet. */
  readonly todo: 'replace' | 'take-off' | 'work' | 'refit';
  readonly words: string;
}

/** The work that a verdict asks for. */
const WORK: Partial<Record<Verdict, WorkKind>> = { conserve: 'conserved', repair: 'repaired', refinish: 'refinished' };

/** What of the decisions in force on one position is still to do. */
export function pendingOf(record: RegisterSource, position: Position, judgement: readonly Judged[], date: IsoDate): readonly Pending[] {
  return judgement.flatMap((judged) => {
    const found = todoOf(record, judged, lackingFor(record, judged.inForce, date), date);
    if (found === null) return [];
    const { decision } = judged.inForce;
    const some = found.count < position.count ? ` (${found.count} of ${position.count})` : '';
    return [{ position: position.id, decision, count: found.count, todo: found.todo, words: found.words + some }];
  });
}

type Todo = Pick<Pending, 'count' | 'todo' | 'words'>;

function todoOf(record: RegisterSource, judged: Judged, lacking: number, date: IsoDate): Todo | null {
  const { decision } = judged.inForce;
  const count = judged.inForce.count - lacking;
  const against = laidCount(judged, 'against');
  const open = count - against - laidCount(judged, 'as-decided');
  switch (decision.verdict) {
    case 'defer':
      return null;
    case 'omit':
      return some(laidCount(judged, 'not-yet'), 'take-off', 'still on');
    case 'replace':
      return some(open, 'replace', 'not yet replaced');
    case 'keep':
      return some(open, 'refit', 'not back on');
    default: {
      const left = count - against - doneOn(record, decision, (day) => day >= decision.date && day <= date);
      const done = WORK[decision.verdict] ?? '';
      // What was done before is not said to be undone: the decision may be about doing it again, or have been written down late.
      const words = doneOn(record, decision, (day) => day < decision.date) > 0 ? `not ${done} since that was decided` : `not yet ${done}`;
      return some(left, 'work', words) ?? some(open, 'refit', `${done}, not back on`);
    }
  }
}

function some(count: number, todo: Pending['todo'], words: string): Todo | null {
  return count > 0 ? { count, todo, words } : null;
}

function laidCount(judged: Judged, standing: Standing): number {
  return judged.laid.reduce((sum, laid) => (laid.standing === standing ? sum + laid.count : sum), 0);
}

/** On how many the decided work was done, on such days. */
function doneOn(record: RegisterSource, decision: Decision, such: (day: IsoDate) => boolean): number {
  return deedsOf(record, decision.part)
    .filter((deed) => such(deed.date) && workOf(record, deed) === WORK[decision.verdict])
    .reduce((sum, deed) => sum + deed.count, 0);
}
