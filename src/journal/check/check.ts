/**
 * The checks that read a compiled record: one rule a file, in this order. What concerns whereabouts, bags,
 * items, gates and stock is found where it happens, by the replay and the ledger; what the register finds against
 * the facts comes after these.
 */
import type { Diagnostic } from '../diagnostics/diagnostic.ts';
import type { IsoDate } from '../model.ts';
import type { JournalRecord } from '../record.ts';
import { acquiredOnTwoDays } from './acquired-on-two-days.ts';
import { billsOnce } from './bills-once.ts';
import { closedStatements } from './closed-statements.ts';
import { correctedSessions } from './corrected-sessions.ts';
import { datesInTime } from './dates-in-time.ts';
import { folderDates } from './folder-dates.ts';
import { handOvers } from './hand-overs.ts';
import { hoursOfADay } from './hours-of-a-day.ts';
import { overlappingHours } from './overlapping-hours.ts';
import { pictureWords } from './picture-words.ts';
import { proseLinks } from './prose-links.ts';
import { quotedOfEach } from './quoted-of-each.ts';
import { soldParts } from './sold-parts.ts';
import { veryLongEvenings } from './very-long-evenings.ts';

export interface CheckedAgainst {
  /** The day of checking: no note is of a later one. */
  readonly today: IsoDate;
  /** The record of every note, those after the record's day among them: what a link may lead to. */
  readonly whole: Pick<JournalRecord, 'journal' | 'history'>;
}

export type Check = (record: JournalRecord, against: CheckedAgainst) => Diagnostic[];

export const CHECKS: readonly Check[] = [
  datesInTime,
  folderDates,
  correctedSessions,
  acquiredOnTwoDays,
  overlappingHours,
  veryLongEvenings,
  hoursOfADay,
  soldParts,
  quotedOfEach,
  handOvers,
  billsOnce,
  closedStatements,
  pictureWords,
  proseLinks,
];
