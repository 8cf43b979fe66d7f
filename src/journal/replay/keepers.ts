/** In whose keeping the vehicle stood: the notes passed it on, one after the other. */
import type { HandedOver, IsoDate, Journal, MilestoneId, PersonId, Session } from '../model.ts';
import { sessionsInOrder } from './order.ts';

/** One keeping, from one hand-over to the next. */
export interface Keeping {
  /** Null where the journal does not say who kept it at first. */
  readonly keeper: PersonId | null;
  readonly from: IsoDate;
  /** The hand-over that began it; null for the first. */
  readonly by: HandOver | null;
}

/** A hand-over as it was recorded. */
export interface HandOver {
  readonly entry: HandedOver;
  readonly session: Session;
  readonly from: PersonId | null;
  /** Milestones that the same note reached. */
  readonly milestones: readonly MilestoneId[];
}

/** Every keeping, oldest first; never empty. */
export function keepingsOf({ settings, sessions }: Pick<Journal, 'settings' | 'sessions'>): readonly Keeping[] {
  const all: Keeping[] = [{ keeper: settings.keeper, from: settings.arrived, by: null }];
  for (const session of sessionsInOrder(sessions)) {
    for (const entry of session.handedOver) {
      const from = all.at(-1)?.keeper ?? null;
      const by = { entry, session, from, milestones: session.reached.map(({ milestone }) => milestone) };
      all.push({ keeper: entry.to, from: session.date, by });
    }
  }
  return all;
}
