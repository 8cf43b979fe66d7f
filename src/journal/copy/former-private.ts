/**
 * Private matter belongs to who kept the vehicle when it was written, the note of a hand-over to who hands over. A copy for
 * the present keeper is without that of the others; before any hand-over it is for who comes next, and without all of it.
 */
import type { Journal, Part, SessionId } from '../model.ts';
import { keepingsOf } from '../replay/keepers.ts';
import { sessionsInOrder } from '../replay/order.ts';

/** @param withoutAny the journal without any private matter */
export function withoutFormerPrivate(journal: Journal, withoutAny: (journal: Journal) => Journal): Journal {
  const now = keepingsOf(journal).at(-1);
  if (now === undefined || now.by === null) return withoutAny(journal);
  const own = ownSessions(journal);
  const came = cameIn(journal, own);
  const isOwn = (part: Part): boolean => came.has(part.id) || (part.acquired !== null && part.acquired > now.from);
  return {
    ...journal,
    sessions: journal.sessions.map((session) => (own.has(session.id) ? session : { ...session, private: null })),
    // What a catalogue says has no date; it is the present keeper's where the part came in his time.
    parts: new Map([...journal.parts].map(([id, part]) => [id, isOwn(part) ? part : { ...part, private: null }])),
  };
}

/** The notes that were written while the present keeper had the vehicle, now or before. */
function ownSessions(journal: Journal): ReadonlySet<SessionId> {
  const all = keepingsOf(journal);
  const now = all.at(-1)?.keeper ?? null;
  const own = new Set<SessionId>();
  let nth = 0;
  for (const { id, handedOver } of sessionsInOrder(journal.sessions)) {
    if (nth === all.length - 1 || (now !== null && all[nth]?.keeper === now)) own.add(id);
    nth += handedOver.length;
  }
  return own;
}

/** Parts that some notes brought. */
function cameIn({ sessions }: Journal, some: ReadonlySet<SessionId>): ReadonlySet<string> {
  const brought = sessions.flatMap(({ id, parts }) =>
    some.has(id) ? parts.filter(({ did }) => did.includes('acquired') || did.includes('made')).map(({ part }) => part) : [],
  );
  return new Set(brought);
}
