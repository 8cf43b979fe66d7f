/** The figures of a session that stand in its margin and beside its title in lists. */

import { totalsOf } from '../../../journal/ledger/totals.ts';
import { labelOfLink } from '../../../journal/model/link-target.ts';
import type { GoneHow, PartEntry, Session } from '../../../journal/model.ts';
import { deedCount } from '../../../journal/registers/deed-count.ts';
import { deedsOf } from '../../../journal/registers/stays.ts';
import { GOES_TO } from '../../../journal/replay/destinations.ts';
import { openingWords } from '../home/opening-words.ts';
import type { RecordSheet, Sheet } from '../page/sheet.ts';
import { ACTION_WORDS, capital, GONE_WORDS, listed, listedNames, sentence } from '../page/words.ts';
import { destinationWords } from '../stores/where.ts';

export interface SessionFigures {
  readonly people: readonly { readonly id: string; readonly name: string; readonly minutes: number }[];
  readonly minutes: number;
  readonly cost: number;
  readonly paid: number;
  /** How many ledger entries the session made. */
  readonly entries: number;
}

export function sessionFigures(sheet: RecordSheet, session: Session): SessionFigures {
  const minutes = new Map<string, number>();
  for (const { by, minutes: worked } of session.hours) minutes.set(by, (minutes.get(by) ?? 0) + worked);
  const entries = sheet.index.entriesOf.get(session.id) ?? [];
  const totals = totalsOf(entries);
  return {
    people: [...minutes].map(([id, worked]) => ({ id, name: sheet.personName(id), minutes: worked })),
    minutes: session.hours.reduce((sum, one) => sum + one.minutes, 0),
    cost: totals.cost,
    paid: totals.paid,
    entries: entries.length,
  };
}

/** `3 removed and inspected, to shelf B2`; a place in the stores that a copy does not tell is not said of where from. Where it was fitted is told by the position's name. */
export function deedWords({ positionName, partName }: Pick<Sheet, 'positionName' | 'partName'>, entry: PartEntry): string {
  const { did, count, to, at, from } = entry;
  // What went somewhere and was then fitted is not there, so that the place stands with the action that took it there.
  const mover = did.includes('fitted') ? did.findLast((word) => GOES_TO.includes(word)) : undefined;
  const there = to === null ? '' : `to ${destinationWords(to)}`;
  const words = listed(did.map((word) => (word === mover && there !== '' ? `${ACTION_WORDS[word]} ${there}` : ACTION_WORDS[word])));
  const many = count === null || words === '' ? '' : `${count} `;
  const source =
    from !== null && from.name !== null ? partName(from.name) : from !== null && from.bag !== null ? destinationWords(from) : null;
  const places = [
    source === null ? '' : `from ${source}`,
    mover === undefined ? there : '',
    at === null ? '' : `at ${positionName(at)}`,
  ].filter((place) => place !== '');
  return [many + words, ...places].filter((piece) => piece !== '').join(', ');
}

/** The first words of an evening, for a list; a link without words is called by what it leads to. */
export function eveningWords(sheet: RecordSheet, session: Session, most: number): string {
  return openingWords(session.body, most, { nameOf: (address) => labelOfLink(sheet.record, address), title: session.title });
}

/** The same; of an evening that nobody wrote words of, what was done, as far as there is room. */
export function eveningTold(sheet: RecordSheet, session: Session, most: number): string {
  const words = eveningWords(sheet, session, most);
  return words === '' ? doneWords(sheet, session, most) : words;
}

/** So many things are named of those that the same was done to. */
const NAMED = 3;

/** `Came back and fitted: Front wheel, nearside; Front wheel, offside. Cleaned: Lamp.` */
function doneWords(sheet: RecordSheet, { parts }: Session, most: number): string {
  const groups = Map.groupBy(
    parts.filter(({ did }) => did.length > 0),
    ({ did, how }) => listed(did.map((word) => (word === 'gone' && isGone(how) ? GONE_WORDS[how] : ACTION_WORDS[word]))),
  );
  const said = [...groups].map(([done, entries]) => {
    const names = [...new Set(entries.map((entry) => someOf(sheet, entry)))];
    const named = names.length <= NAMED + 1 ? names : [...names.slice(0, NAMED), `${names.length - NAMED} more`];
    return sentence(`${capital(done)}: ${listedNames(named)}`);
  });
  return said.reduce((told, next) => (told !== '' && told.length + next.length >= most ? told : `${told} ${next}`.trim()), '');
}

/** `Carved plumes (1 of 6)`, where the entry is of some of a lot. */
function someOf(sheet: RecordSheet, entry: PartEntry): string {
  const { part, count, which } = entry;
  const all = sheet.record.journal.parts.get(part)?.count ?? 1;
  const done = deedsOf(sheet.record, part).filter((deed) => deed.entry === entry);
  const many = done.length > 0 ? deedCount(done) : (which?.length ?? count ?? all);
  return `${sheet.partName(part)}${many < all ? ` (${many} of ${all})` : ''}`;
}

const isGone = (how: PartEntry['how']): how is GoneHow => how !== null && how in GONE_WORDS;
