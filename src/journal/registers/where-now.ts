/** Where something is for whoever has the vehicle now: what stayed behind when it passed on is not on a shelf of theirs. */
import type { PartId, PersonId, Whereabouts } from '../model.ts';
import { whereInWords } from '../replay/words.ts';
import { stayedWith } from './keepers.ts';
import { type At, dateOf, type RegisterSource } from './source.ts';

/** Who has or had the vehicle, or stayed with a thing of it; a copy without names numbers its keepers. */
export function keeperInWords({ journal }: Pick<RegisterSource, 'journal'>, keeper: PersonId | null): string {
  if (keeper === null) return 'a keeper whom the journal does not name';
  return journal.people.get(keeper)?.name ?? keeper.charAt(0).toUpperCase() + keeper.slice(1).replaceAll('-', ' ');
}

/** `with Ruth, where it stayed behind`; null for what is with whoever has the vehicle. */
export function stayedInWords(record: RegisterSource, part: PartId, where: Whereabouts, at: At): string | null {
  const stayed = stayedWith(record, part, where, at);
  return stayed === null ? null : `with ${keeperInWords(record, stayed.keeper)}, where it stayed behind`;
}

/** `in stores, shelf A1`, or `with Ruth, where it stayed behind (shelf A1)`. */
export function whereNowInWords(record: RegisterSource, part: PartId, where: Whereabouts, at: At = null): string {
  const stayed = stayedInWords(record, part, where, dateOf(record, at));
  return stayed === null ? whereInWords(where) : stayed + inBrackets(thereInWords(where));
}

/** Where it lies with them, behind the words of who that is; '' where nobody said. */
export const inBrackets = (words: string): string => (words === '' ? '' : ` (${words})`);

function thereInWords(where: Whereabouts): string {
  if (where.at === 'stores') return where.store ?? '';
  return where.at === 'bag' ? `bag ${where.bag}` : whereInWords(where);
}
