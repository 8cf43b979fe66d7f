import { type Identity, identityAt } from '../../../journal/registers/identity.ts';
import { viewDates } from '../../../journal/registers/view-dates.ts';
import { type AnyQuestion, shown } from '../../kept/question.ts';
import type { Sheet } from '../page/sheet.ts';
import type { IdentityThen } from './identity-table.ts';

/** A points table as it is answered now, and at each milestone that was reached, oldest first. */
export interface IdentityAnswers {
  readonly identity: Identity;
  readonly before: readonly IdentityThen[];
}

const ANSWERS = shown('identity', ({ record }): readonly IdentityAnswers[] => {
  const reached = viewDates(record).filter(({ milestones }) => milestones.length > 0);
  return record.journal.identityTables.map((table) => ({
    identity: identityAt(record, table, null),
    before: reached.map(({ date, milestones }) => ({
      identity: identityAt(record, table, date),
      milestones: milestones.map(({ name }) => name),
    })),
  }));
});

export const IDENTITY_QUESTIONS: readonly AnyQuestion[] = [ANSWERS];

export const identityAnswers = (sheet: Sheet): readonly IdentityAnswers[] => sheet.ask(ANSWERS);
