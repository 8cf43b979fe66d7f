/** Which firm an entry is of, where a copy says no names too. */
import { type Place, spotOf } from '../diagnostics/place.ts';
import type { Journal } from '../model.ts';
import { keptIn } from '../values/once.ts';
import type { Session } from './session.ts';

/** What names a firm. */
interface OfFirm {
  readonly place: Place;
  readonly firm: string | null;
}

/** The same text for the same firm: capitals and white space make no other; null where nobody said which. */
export function whichFirm({ unnamedFirms }: Pick<Journal, 'unnamedFirms'>, { place, firm }: OfFirm): string | null {
  if (unnamedFirms !== undefined) return unnamedFirms.get(spotOf(place))?.toString() ?? null;
  return firm === null ? null : folded(firm);
}

/** Every firm of a journal by a number, by the entries that name it: bills, what was sent out, what is waited for. */
export function numberedFirms(sessions: readonly Session[]): ReadonlyMap<string, number> {
  const numbers = new Map<string, number>();
  const numberOf = (firm: string): number => keptIn(numbers, folded(firm), () => numbers.size + 1);
  return new Map(sessions.flatMap(firmsIn).flatMap(({ place, firm }) => (firm === null ? [] : [[spotOf(place), numberOf(firm)] as const])));
}

/** What of a note names a firm: what was sent out, bills, what is waited for. */
export function firmsIn({ parts, bills, opens }: Session): readonly OfFirm[] {
  const out = parts.filter(({ did }) => did.includes('sent-out'));
  return [
    ...out.map(({ place, to }) => ({ place, firm: to?.name ?? null })),
    ...[...bills, ...opens].map(({ place, from }) => ({ place, firm: from })),
  ];
}

const folded = (name: string): string => name.normalize('NFC').toLowerCase().replace(/\s+/g, ' ').trim();
