import { type Diagnostic, diagnostic, unknownName } from '../diagnostics/diagnostic.ts';
import { linkTarget } from '../model/link-target.ts';
import type { ProseLink } from '../model.ts';
import type { JournalRecord } from '../record.ts';
import type { LinkScheme } from '../values/link.ts';
import type { CheckedAgainst } from './check.ts';

/** A link in the prose leads to something the journal has. */
export function proseLinks({ journal: { sessions } }: JournalRecord, { whole: { journal, history } }: CheckedAgainst): Diagnostic[] {
  const names: Readonly<Record<LinkScheme, () => Iterable<string>>> = {
    part: () => journal.parts.keys(),
    consumable: () => journal.consumables.keys(),
    item: () => history.items.keys(),
    bag: () => [...history.bags.keys()].map(String),
    session: () => journal.sessions.map((session) => session.id),
  };
  return sessions.flatMap((session) =>
    session.links
      .filter((link) => linkTarget({ journal, history }, link) === null)
      .map((link) =>
        diagnostic('A903', link.place, `There is no ${link.scheme} \`${link.id}\`.`, {
          ...unknownName(link.scheme, link.id, names[link.scheme]()),
          ...severalThatDay(link, journal),
        }),
      ),
  );
}

/** A day is no name of a session where several are of that day. */
function severalThatDay({ scheme, id }: ProseLink, { sessions }: JournalRecord['journal']): { hint?: string } {
  const thatDay = scheme === 'session' ? sessions.filter((session) => session.date === id) : [];
  if (thatDay.length < 2) return {};
  return { hint: `That day has ${thatDay.length}: ${thatDay.map((session) => `\`${session.id}\``).join(', ')}.` };
}
