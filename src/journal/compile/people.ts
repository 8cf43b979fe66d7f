/** Those who work on the vehicle, and what their hour costs. */
import type { Minor, Person, PersonId, Rate } from '../model.ts';
import type { JournalFields } from '../read/journal-source.ts';
import type { Reporter } from '../read/reporter.ts';
import type { Path, Tree } from '../read/source/tree.ts';

type PersonSource = JournalFields['people'][string];

/** Reads an amount of the journal's currency that is not negative; what it is not is reported at its path. */
export type ReadMoney = (text: string, path: Path) => Minor | null;

export function peopleOf({ people }: JournalFields, tree: Tree, money: ReadMoney, out: Reporter): ReadonlyMap<PersonId, Person> {
  return new Map(
    Object.entries(people).map(([id, source]) => [id, { id, name: source.name, rates: ratesOf(id, source, tree, money, out) }]),
  );
}

/** Oldest first; nobody has two rates from one day. */
function ratesOf(id: string, { rate }: PersonSource, tree: Tree, money: ReadMoney, out: Reporter): Rate[] {
  const path = ['people', id, 'rate'];
  if (typeof rate === 'string') return [{ from: null, perHour: money(rate, path) ?? 0 }];
  const days = new Set<string>();
  const rates = rate.map(({ says: { from, perHour } }, i): Rate => {
    if (days.has(from))
      out.report('A303', tree.placeOf([...path, i, 'from']), `Two rates begin on ${from}.`, { hint: 'Leave one of them out.' });
    days.add(from);
    return { from, perHour: money(perHour, [...path, i, 'per-hour']) ?? 0 };
  });
  return rates.sort((a, b) => ((a.from ?? '') < (b.from ?? '') ? -1 : 1));
}
