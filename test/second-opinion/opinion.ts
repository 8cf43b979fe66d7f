/** What a journal says of every day, as lines of text: once as this replay has it, once as the record has it. */
import type { IsoDate, Journal, Session, Whereabouts } from '../../src/journal/model.ts';
import { Bags } from './bags.ts';
import { Items } from './items.ts';
import { Outcomes } from './outcomes.ts';
import { type LeftOpen, type Piece, type Refusal, type When, Workshop } from './workshop.ts';

export interface Opinion {
  /** By day, oldest first: a day on which something may have changed. */
  readonly days: ReadonlyMap<IsoDate, readonly string[]>;
  /** What the rules forbid; nothing of a sound journal. */
  readonly refused: readonly Refusal[];
  readonly leftOpen: readonly LeftOpen[];
}

/** Replays a journal note by note. */
export function secondOpinion(journal: Journal): Opinion {
  const { arrived } = journal.settings;
  let tick = 0;
  const moment = (date: IsoDate, session: string | null): When => ({ date, session, tick: tick++ });
  const start = moment(arrived, null);
  const told = {
    journal,
    shop: new Workshop(journal, start),
    bags: new Bags(journal, start),
    items: new Items(journal),
    outcomes: new Outcomes(journal),
  };
  told.bags.look(told.shop);
  const days = new Map<IsoDate, readonly string[]>();
  for (const date of daysOf(journal)) {
    told.shop.catalogueDay(moment(date, null));
    for (const session of journal.sessions.filter((one) => one.date === date).sort(inOrder)) {
      const when = moment(date, session.id);
      told.bags.evening(session, when);
      told.shop.evening(session, when);
      told.bags.look(told.shop, session.emptied);
      told.items.evening(session, when);
      told.outcomes.evening(session, told.shop);
    }
    days.set(date, linesOf(told));
  }
  const refused = [...told.shop.refused, ...told.bags.refused, ...told.items.refused];
  return { days, refused, leftOpen: told.shop.leftOpen };
}

/** The arrival, every day of a note, and every day that the catalogue names. */
function daysOf({ settings, sessions, parts }: Journal): readonly IsoDate[] {
  const acquired = [...parts.values()].flatMap((part) => part.acquired ?? []).filter((date) => date > settings.arrived);
  return [...new Set([settings.arrived, ...sessions.map(({ date }) => date), ...acquired])].sort();
}

/** Two notes of a day by their names, the numbers in them as numbers. */
export function inOrder(a: Session, b: Session): number {
  const [ours, theirs] = [a, b].map(({ id }) => id.match(/\d+|\D+/g) ?? []) as unknown as [string[], string[]];
  for (let n = 0; n < Math.max(ours.length, theirs.length); n += 1) {
    const [x = '', y = ''] = [ours[n], theirs[n]];
    if (x === y) continue;
    const order = Number(x) - Number(y);
    return Number.isNaN(order) || x === '' || y === '' ? (x < y ? -1 : 1) : order;
  }
  return 0;
}

interface Told {
  readonly journal: Journal;
  readonly shop: Workshop;
  readonly bags: Bags;
  readonly items: Items;
  readonly outcomes: Outcomes;
}

function linesOf({ journal, shop, bags, items, outcomes }: Told): string[] {
  return [
    ...[...journal.parts.keys()].map((id) => `part ${id}: ${piecesAsText(shop, shop.of(id))}`),
    ...[...journal.positions.values()].map((position) => {
      const standing = shop.at(position.id);
      const on = standing.filter((piece) => shop.endOf(piece) === null);
      const off = standing.filter((piece) => ['stores', 'bag', 'out'].includes(shop.endOf(piece)?.at ?? ''));
      const kind = outcomes.kindOf(position, shop);
      return `position ${position.id}: ${kind}, ${outcomes.undecided(position, shop)} undecided, on ${partsAsText(on)}, in what is off ${partsAsText(off)}`;
    }),
    ...[...bags.fillings].flatMap(([bag, fillings]) =>
      fillings.map(({ filled, emptied, held }, n) => {
        const now = n < fillings.length - 1 || emptied ? [] : shop.all().filter(({ spot }) => spot.at === 'bag' && spot.bag === bag);
        return `bag ${bag}: filled ${filled.session}, emptied ${emptied?.session ?? 'no'}, now ${partsAsText(now)}, held ${[...held].sort()}`;
      }),
    ),
    ...[...items.items].map(
      ([id, { opened, due, closed }]) => `item ${id}: opened ${opened.session}, due ${due}, closed ${closed?.session ?? 'no'}`,
    ),
    ...journal.milestones.map(({ id }) => {
      const own = items.ownOf(id);
      const temporary = own.filter((one) => items.items.get(one)?.kind === 'temporary');
      const earlier = items.holding(id).filter((one) => !own.includes(one));
      const others = own.filter((one) => !temporary.includes(one));
      const reached = items.reached.get(id)?.session ?? 'no';
      const passes = reached !== 'no' || items.holding(id).length === 0;
      return `milestone ${id}: reached ${reached}, holds ${others.sort()}, temporary ${temporary.sort()}, earlier ${earlier.sort()}, passes ${passes}`;
    }),
  ].sort();
}

/** How many where; of a single one, or of numbered ones, more. */
function piecesAsText(shop: Workshop, pieces: readonly Piece[]): string {
  const places = Map.groupBy(pieces, (piece) => shop.whereIs(piece));
  return [...places]
    .map(([where, those]) => `${those.length} ${where}${more(those)}`)
    .sort()
    .join('; ');
}

function more(those: readonly Piece[]): string {
  const [first] = those as [Piece];
  if (first.part.numbered !== null) return ` (${those.map(({ number }) => number)})`;
  if (first.part.count > 1) return '';
  const { date, session } = first.since;
  return ` since ${date} ${session}`;
}

function partsAsText(pieces: readonly Piece[]): string {
  return countsAsText([...Map.groupBy(pieces, ({ part }) => part.id)].map(([part, those]) => [part, those.length]));
}

/** @param counts of parts; one that stands there twice is added up */
export function countsAsText(counts: readonly (readonly [string, number])[]): string {
  const sums = Map.groupBy(counts, ([part]) => part);
  const texts = [...sums].map(([part, all]) => `${all.reduce((sum, [, count]) => sum + count, 0)} ${part}`);
  return texts.length === 0 ? 'nothing' : texts.sort().join(' and ');
}

/** The whereabouts of the record, as this replay words its own. */
export function whereAsText(where: Whereabouts): string {
  if (where.at === 'fitted') return `on the vehicle at ${where.position}${where.within === undefined ? '' : ` in ${where.within}`}`;
  if (where.at === 'in') return `at ${where.position} in ${where.part}, ${whereAsText(where.where)}`;
  return Object.values(where).join(' ');
}
