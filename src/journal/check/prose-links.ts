import { type Diagnostic, diagnostic } from '../diagnostics/diagnostic.ts';
import { didYouMean } from '../diagnostics/nearest.ts';
import { sessionNamed } from '../model/session-named.ts';
import type { ProseLink } from '../model.ts';
import type { JournalRecord } from '../record.ts';
import type { CheckedAgainst } from './check.ts';

/** A link in the prose leads to something the journal has. */
export function proseLinks({ journal: { sessions } }: JournalRecord, { whole: { journal, history } }: CheckedAgainst): Diagnostic[] {
  const known: Readonly<Record<ProseLink['scheme'], { has(id: string): boolean; keys(): Iterable<string> }>> = {
    part: journal.parts,
    consumable: journal.consumables,
    item: history.items,
    bag: { has: (id) => history.bags.has(Number(id)), keys: () => [...history.bags.keys()].map(String) },
    session: { has: (id) => sessionNamed(journal, id) !== null, keys: () => journal.sessions.map((session) => session.id) },
  };
  return sessions.flatMap((session) =>
    session.links.flatMap((link) => {
      if (known[link.scheme].has(link.id)) return [];
      return [
        diagnostic('A903', link.place, `There is no ${link.scheme} \`${link.id}\`.`, {
          hint: hintFor(link, journal, known[link.scheme].keys()),
        }),
      ];
    }),
  );
}

function hintFor(link: ProseLink, journal: JournalRecord['journal'], keys: Iterable<string>): string | null {
  const thatDay = journal.sessions.filter((session) => session.date === link.id);
  if (link.scheme === 'session' && thatDay.length > 1) {
    return `That day has ${thatDay.length}: ${thatDay.map((session) => `\`${session.id}\``).join(', ')}.`;
  }
  return didYouMean(link.id, keys);
}
