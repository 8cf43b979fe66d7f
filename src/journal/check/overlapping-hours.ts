import { type Diagnostic, diagnostic } from '../diagnostics/diagnostic.ts';
import type { WorkedTime } from '../model.ts';
import type { JournalRecord } from '../record.ts';

type Ranged = WorkedTime & { readonly span: NonNullable<WorkedTime['span']> };

/** One person's clock ranges never overlap, over midnight into the next note too. */
export function overlappingHours({ journal }: JournalRecord): Diagnostic[] {
  const byPerson = Map.groupBy(
    journal.sessions.flatMap((session) => session.hours.filter((worked): worked is Ranged => worked.span !== null)),
    (worked) => worked.by,
  );
  return [...byPerson].flatMap(([person, ranges]) => overlaps(journal.people.get(person)?.name ?? person, ranges));
}

function overlaps(name: string, ranges: readonly Ranged[]): Diagnostic[] {
  const sorted = [...ranges].sort((a, b) => a.span.start - b.span.start || a.span.end - b.span.end);
  const found: Diagnostic[] = [];
  let last = sorted[0];
  for (const worked of sorted.slice(1)) {
    if (last && worked.span.start < last.span.end) {
      const message = `${name} is already at work then: ${worked.text} overlaps ${last.text}.`;
      found.push(
        diagnostic('A803', worked.place, message, {
          hint: 'Make one end where the other begins.',
          related: [{ place: last.place, message: 'The time it overlaps is here.' }],
        }),
      );
    }
    if (!last || worked.span.end > last.span.end) last = worked;
  }
  return found;
}
