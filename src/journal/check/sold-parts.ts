import { type Diagnostic, diagnostic } from '../diagnostics/diagnostic.ts';
import type { IsoDate, PartId, Sale, Session } from '../model.ts';
import type { JournalRecord, Stay } from '../record.ts';
import { whereInWords } from '../replay/words.ts';

interface SaleOfPart {
  readonly sale: Sale;
  readonly session: Session;
  readonly part: PartId;
  /** With the sales before it. */
  readonly soFar: number;
  readonly first: Sale | null;
}

/** What is sold is there to be sold, is off the vehicle, and goes. */
export function soldParts(record: JournalRecord): Diagnostic[] {
  return salesOfParts(record).flatMap((one) => stillHere(one, record));
}

function salesOfParts({ journal }: JournalRecord): SaleOfPart[] {
  const known = new Map<PartId, { soFar: number; first: Sale }>();
  return journal.sessions.flatMap((session) =>
    session.sold.flatMap((sale): SaleOfPart[] => {
      const { part } = sale.charge;
      if (part === null) return [];
      const before = known.get(part);
      const soFar = (before?.soFar ?? 0) + (sale.count ?? goneIn(session, part) ?? journal.parts.get(part)?.count ?? 1);
      known.set(part, { soFar, first: before?.first ?? sale });
      return [{ sale, session, part, soFar, first: before?.first ?? null }];
    }),
  );
}

/** How many of it the note of the sale lets go; null where it does not say. */
function goneIn({ parts }: Session, part: PartId): number | null {
  return parts.find((entry) => entry.part === part && entry.did.includes('gone'))?.count ?? null;
}

function stillHere({ sale, session, part, soFar, first }: SaleOfPart, { journal, history, day }: JournalRecord): Diagnostic[] {
  const { name = part, count = 1 } = journal.parts.get(part) ?? {};
  const stays = history.stays.get(part) ?? [];
  const away = soFar - backBy(stays, session.date);
  if (away > count) {
    const related = first === null ? [] : [{ place: first.place, message: 'It was sold here.' }];
    const message = first === null ? `${away} of ${name} are sold, and there are ${count}.` : `${name} was sold before.`;
    return [diagnostic('A815', sale.place, message, { related, hint: 'Take one of the sales out, or name the part that was sold.' })];
  }
  const fitted = stays.find((stay) => covers(stay, session.date) && stay.where.at === 'fitted');
  if (fitted && count - fittedCount(stays, session.date) < away) {
    const hint = `Say under \`parts\` what happened to it: \`{ part: ${part}, did: [removed, gone], how: sold }\`.`;
    return [diagnostic('A815', sale.place, `${name} is sold, but it is still ${whereInWords(fitted.where)}.`, { hint })];
  }
  const here = stays.find((stay) => covers(stay, day) && stay.where.at !== 'gone');
  const gone = stays.filter((stay) => covers(stay, day) && stay.where.at === 'gone').reduce((all, stay) => all + stay.count, 0);
  if (!here || gone >= soFar - backBy(stays, day)) return [];
  const hint = `Say under \`parts\` that it went: \`{ part: ${part}, did: gone, how: sold }\`.`;
  return [diagnostic('A816', sale.place, `${name} is sold, and the notes still have it ${whereInWords(here.where)}.`, { hint })];
}

/** How many that were sold had come back by the end of that day. */
function backBy(stays: readonly Stay[], date: IsoDate): number {
  const back = stays.filter(({ where, to }) => where.at === 'gone' && where.how === 'sold' && to !== null && to.date <= date);
  return back.reduce((all, stay) => all + stay.count, 0);
}

function fittedCount(stays: readonly Stay[], date: IsoDate): number {
  return stays.filter((stay) => covers(stay, date) && stay.where.at === 'fitted').reduce((all, stay) => all + stay.count, 0);
}

/** True when the stay is what holds at the end of that day. */
function covers({ from, to }: Stay, date: IsoDate): boolean {
  return from.date <= date && (to === null || to.date > date);
}
