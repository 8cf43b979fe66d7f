import { type Diagnostic, diagnostic } from '../diagnostics/diagnostic.ts';
import { didYouMean } from '../diagnostics/nearest.ts';
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
          hint: hintFor(link, journal, names[link.scheme]()),
        }),
      ),
  );
}

function hintFor(link: ProseLink, journal: JournalRecord['journal'], keys: Iterable<string>): string | null {
  const thatDay = journal.sessions.filter((session) => session.date === link.id);
  if (link.scheme === 'session' && thatDay.length > 1) {
    return `That day has ${thatDay.length}: ${thatDay.map((session) => `\`${session.id}\``).join(', ')}.`;
  }
  return didYouMean(link.id, keys);
}
