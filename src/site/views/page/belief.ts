/** What somebody came to believe of where a part comes from, as a sentence says it. */
import type { Attribution, Origin } from '../../../journal/model.ts';
import { partFacts } from './facts.ts';
import type { Sheet } from './sheet.ts';

/** After `to be`: of one part, and of a lot where that is said otherwise. */
const TO_BE: Readonly<Record<Exclude<Origin, 'unknown'>, readonly [one: string, lot?: string]>> = {
  original: ['original'],
  'earlier-replacement': ['an earlier replacement', 'earlier replacements'],
  donor: ['off another vehicle of its kind'],
  'new-old-stock': ['new old stock'],
  period: ['of the period, by another make'],
  reproduction: ['a reproduction', 'reproductions'],
  new: ['new'],
  made: ['made for this job'],
  borrowed: ['borrowed'],
};

export interface Belief {
  readonly lead: string;
  readonly origin: string;
}

/** `believed by Ruth to be ` and `an earlier replacement`; of what nobody can say it is told that somebody looked. */
export function beliefOf(
  sheet: Pick<Sheet, 'ask' | 'personName'>,
  { part, origin, by }: Pick<Attribution, 'part' | 'origin' | 'by'>,
): Belief {
  const who = by === null ? '' : ` by ${sheet.personName(by)}`;
  if (origin === 'unknown') return { lead: `looked into${who}, and `, origin: 'nobody can say of what origin' };
  const [one, lot = one] = TO_BE[origin];
  const isLot = (partFacts(sheet, part)?.count ?? 1) > 1;
  return { lead: `believed${who} to be `, origin: isLot ? lot : one };
}

/** The whole of it in one text. */
export function beliefWords(sheet: Parameters<typeof beliefOf>[0], attribution: Parameters<typeof beliefOf>[1]): string {
  const { lead, origin } = beliefOf(sheet, attribution);
  return lead + origin;
}
