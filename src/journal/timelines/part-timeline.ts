import type { GoneHow, Part, PartId, Whereabouts } from '../model.ts';
import type { JournalRecord, Stay } from '../record.ts';
import { stayedWith } from '../registers/keepers.ts';
import { type MeasurementSeries, seriesOf } from '../registers/measurements.ts';
import { groupedBy } from '../registers/source.ts';
import { compareMoments, staysOf, type Whereat, whereaboutsAt } from '../registers/stays.ts';
import { keeperInWords } from '../registers/where-now.ts';
import { endOf } from '../replay/seat.ts';
import { isHere } from '../replay/words.ts';
import type { TimelineEvent } from './event.ts';
import { eventsOfPart } from './events.ts';
import { type Spell, spellsOf } from './spells.ts';

/** Who has a part: the workshop (on the vehicle, on a shelf, in a bag), a firm, somebody else for good, or nobody knows. */
export type Custody =
  | { readonly by: 'workshop' }
  | { readonly by: 'firm'; readonly firm: string }
  /** It stayed behind with them when the vehicle passed on; `who` in words. */
  | { readonly by: 'former-keeper'; readonly who: string }
  | { readonly by: 'gone'; readonly how: GoneHow }
  | { readonly by: 'unknown' };

export interface CustodySpell extends Spell {
  readonly custody: Custody;
}

/** One thing through every place it has been. */
export interface PartTimeline {
  readonly part: Part;
  /** Where it is now. */
  readonly now: readonly Whereat[];
  /** Every place it was in, by beginning; a lot spread about has several at a time. What was not yet here is left out. */
  readonly stays: readonly Stay[];
  /** Who had it when, by beginning (CIDOC CRM E10 Transfer of Custody lies between two spells). */
  readonly custody: readonly CustodySpell[];
  readonly measurements: readonly MeasurementSeries[];
  readonly events: readonly TimelineEvent[];
}

/**
 * The life of one part.
 *
 * @throws RangeError when the record has no such part
 */
export function partTimeline(record: JournalRecord, id: PartId): PartTimeline {
  const part = record.journal.parts.get(id);
  if (!part) throw new RangeError(`no part ${id}`);
  const stays = staysOf(record, id).filter(({ where }) => isHere(where));
  return {
    part,
    now: whereaboutsAt(record, id, record.day),
    stays,
    custody: custodyOf(record, stays),
    measurements: seriesOf(record, id),
    events: eventsOfPart(record, id),
  };
}

function custodyOf(record: JournalRecord, stays: readonly Stay[]): readonly CustodySpell[] {
  const order = compareMoments(record);
  const held = stays.flatMap((stay) => heldIn(record, stay));
  const groups = groupedBy(held, ({ custody }) => JSON.stringify(custody));
  const spells = [...groups].flatMap(([key, group]) =>
    spellsOf(group, order).map((spell) => ({ custody: JSON.parse(key) as Custody, ...spell })),
  );
  return spells.sort((a, b) => order(a.from, b.from));
}

/** Who had it in one stay: of what stayed behind when the vehicle passed on it is one and then another. */
function heldIn(record: JournalRecord, stay: Stay): readonly (Stay & { readonly custody: Custody })[] {
  const custody = custodyAt(stay.where);
  const stayed = stay.to === null && custody.by === 'workshop' ? stayedWith(record, stay.part, stay.where, null) : null;
  if (stayed === null) return [{ ...stay, custody }];
  const passed = { date: stayed.since, session: null };
  const then: Custody = { by: 'former-keeper', who: keeperInWords(record, stayed.keeper) };
  const before = stayed.since > stay.from.date ? [{ ...stay, to: passed, custody }] : [];
  return [...before, { ...stay, from: before.length === 0 ? stay.from : passed, custody: then }];
}

/** Who has what a part is in has the part. */
function custodyAt(place: Whereabouts): Custody {
  const where = endOf(place);
  switch (where.at) {
    case 'out':
      return { by: 'firm', firm: where.firm };
    case 'gone':
      return { by: 'gone', how: where.how };
    case 'missing':
    case 'not-yet':
    case 'considered':
      return { by: 'unknown' };
    default:
      return { by: 'workshop' };
  }
}
