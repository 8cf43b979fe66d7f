import type { Decision, IsoDate, PartId, Position, Whereabouts } from '../model.ts';
import type { InForce } from './decisions-in-force.ts';
import { stayedWith } from './keepers.ts';
import { seriesOf } from './measurements.ts';
import { observationsOf } from './observations.ts';
import { groupedBy, perRecord, type RegisterSource } from './source.ts';
import { whereaboutsAt } from './stays.ts';

/**
 * Whether a position asks for a verdict at the end of a day: something of it was taken off or lies off the vehicle, it
 * failed, a candidate for it is here or considered, or the question was put off.
 */
export function isInQuestion(record: RegisterSource, position: Position, inForce: readonly InForce[], date: IsoDate): boolean {
  return (
    inForce.some(({ decision }) => decision.verdict === 'defer') ||
    (firstRemoval(record).get(position.id) ?? NEVER) <= date ||
    liesHere(record, position.id, date) ||
    hasFailed(record, position.id, date) ||
    position.parts.some((part) => part !== position.id && isCandidate(record, part, date))
  );
}

/** Later than any day. */
const NEVER: IsoDate = '9999-99-99';

const firstRemoval = perRecord((record) => {
  const found = new Map<string, IsoDate>();
  for (const { did, from, date } of record.history.deeds) {
    if (did === 'removed' && (from.at === 'fitted' || from.at === 'in') && !found.has(from.position)) found.set(from.position, date);
  }
  return found;
});

function liesHere(record: RegisterSource, part: PartId, date: IsoDate): boolean {
  return whereaboutsAt(record, part, date).some(({ where }) => where.at === 'stores' || where.at === 'bag' || where.at === 'out');
}

/** Measured out of its limits when it was last measured, or seen with major symptoms (class 3) when it was last looked at. */
function hasFailed(record: RegisterSource, part: PartId, date: IsoDate): boolean {
  const seen = observationsOf(record, part).findLast((one) => one.entry.condition !== null && one.date <= date);
  return seen?.entry.condition === 3 || seriesOf(record, part, date).some(({ within }) => within === false);
}

/** What was decided on a part that had never stood anywhere, oldest first. */
export const asideOf = (record: RegisterSource, part: PartId): readonly Decision[] => asideByPart(record).get(part) ?? [];

const asideByPart = perRecord(({ history }) => groupedBy(history.aside, ({ part }) => part));

/** A part that could stand there: it is here, or thought of, neither gone nor still to come, did not stay with a former keeper, and was not ruled out. */
export function isCandidate(record: RegisterSource, part: PartId, date: IsoDate): boolean {
  const last = asideOf(record, part).findLast((one) => one.date <= date);
  if (last?.verdict === 'omit') return false;
  return whereaboutsAt(record, part, date).some(({ where }) => !AWAY.has(where.at) && stayedWith(record, part, where, date) === null);
}

const AWAY: ReadonlySet<Whereabouts['at']> = new Set(['gone', 'missing', 'not-yet']);
