/** Fasteners that a bag does not hold by what is written on it, and that came off with what it is about. */
import type { IsoDate, Part, PartEntry, PartId, Session } from '../../model.ts';
import { type BagRow, bagsAt } from '../bags.ts';
import { groupedBy, perRecord, type RegisterSource } from '../source.ts';
import { orderedSessions } from '../stays.ts';

export interface MissingFromBag {
  readonly row: BagRow;
  /** What of it is missing, to follow the name of the bag: `had 5 of Wheel studs put into it, and 3 are written on it`. */
  readonly words: string;
  /** What to add under `holds`. */
  readonly add: string;
}

/** Words of the trade for what is bagged, in the singular. */
const FASTENERS = 'bolt nut washer screw stud pin clip shim rivet circlip cotter key collar spacer ferrule grommet nail spring'.split(' ');

/** What is missing from bags that are filled at the end of a day. */
export function missingFromBags(record: RegisterSource, date: IsoDate): readonly MissingFromBag[] {
  return bagsAt(record, date)
    .filter(({ emptied, filled }) => emptied === null && filled.session !== null)
    .flatMap((row) => [...tooFew(record, row), ...notHeld(record, row)]);
}

/** Parts of a lot that went into the bag, where what is written on it counts fewer of them. */
function tooFew(record: RegisterSource, row: BagRow): MissingFromBag[] {
  const put = (deedsInto(record).get(`${row.filled.session} ${row.bag}`) ?? []).filter(({ count }) => count > 1);
  return put.flatMap(({ part, count }) => {
    const name = nounOf(record.journal.parts.get(part));
    const held = row.filling.holds.map(heldIn).filter(({ nouns }) => nouns.includes(name));
    const sum = held.reduce((total, one) => total + one.count, 0);
    if (held.length === 0 || sum >= count) return [];
    const words = `had ${count} of ${nameOf(record, part)} put into it, and ${sum} ${sum === 1 ? 'is' : 'are'} written on it`;
    return [{ row, words, add: `${count - sum} ${name}` }];
  });
}

/** Fasteners of a stack that came off, where no bag of the evening about that part holds any of the kind. */
function notHeld(record: RegisterSource, row: BagRow): MissingFromBag[] {
  const session = sessionsById(record).get(row.filled.session ?? '')?.[0];
  if (!session) return [];
  return session.parts
    .filter((entry) => entry.stack.length > 0 && isAbout(row, entry, session))
    .flatMap((entry) => {
      const held = new Set(
        session.bags.filter((bag) => isOf(bag, entry)).flatMap(({ holds }) => holds.flatMap((one) => heldIn(one).nouns)),
      );
      const kinds = new Map(
        entry.stack.flatMap((one) =>
          heldIn(one)
            .nouns.filter((noun) => FASTENERS.includes(noun))
            .slice(-1)
            .map((noun) => [noun, one]),
        ),
      );
      return [...kinds].flatMap(([noun, written]) =>
        held.has(noun)
          ? []
          : [
              {
                row,
                words: `names no ${written}, nor does any bag of that evening: one came off with ${nameOf(record, entry.part)}`,
                add: written,
              },
            ],
      );
    });
}

const nameOf = ({ journal }: RegisterSource, part: PartId): string => journal.parts.get(part)?.name ?? part;

type Bagged = Pick<BagRow['filling'], 'bag' | 'off'>;

function isOf({ bag, off }: Bagged, { part, to }: PartEntry): boolean {
  return off === part || to?.bag === bag;
}

/** Of several bags about one part the first is where something is missing from. */
function isAbout({ bag }: BagRow, entry: PartEntry, { bags }: Session): boolean {
  return bags.find((one) => isOf(one, entry))?.bag === bag;
}

const sessionsById = perRecord((record) => groupedBy(orderedSessions(record), ({ id }) => id));

/** How many of each part went into a bag in a session, by session and bag. */
const deedsInto = perRecord((record) => {
  const into = record.history.deeds.flatMap(({ part, count, session, to, from }) =>
    to.at === 'bag' && from.at !== 'bag' ? [{ key: `${session} ${to.bag}`, part, count }] : [],
  );
  return groupedBy(into, ({ key }) => key);
});

/** `5 wheel nuts 7/16 BSF` is five, of wheels and nuts; what has no number is one. */
function heldIn(text: string): { readonly count: number; readonly nouns: readonly string[] } {
  const [, number = '1'] = /^\s*(\d+)\s+(?!\/)/.exec(text) ?? [];
  return { count: Number(number), nouns: (text.toLowerCase().match(/\p{L}{2,}/gu) ?? []).map(singular) };
}

/** What a part is, of all its names: `Wheel studs, nearside` is a stud. */
function nounOf(part: Part | undefined): string {
  return singular(
    (part?.name.split(',')[0] ?? '')
      .toLowerCase()
      .match(/\p{L}{2,}/gu)
      ?.at(-1) ?? '',
  );
}

function singular(word: string): string {
  return /ss$/.test(word) ? word : word.replace(/(?<=[^aeiou]|[aeiou][^s])s$/, '').replace(/(sh|ch|x)e$/, '$1');
}
