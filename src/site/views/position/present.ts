/** The present state of a position as its page tells it: what stands there and in what condition, where the original is, what is open. */

import { CONDITION_WORDS, type PartId } from '../../../journal/model.ts';
import type { Moment } from '../../../journal/record.ts';
import { conditionDays, conditionInWords, conditionsAt } from '../../../journal/registers/condition.ts';
import type { Occupant } from '../../../journal/registers/occupant.ts';
import type { ItemRow } from '../../../journal/registers/open-items.ts';
import { staysOf, type Whereat, whereaboutsAt } from '../../../journal/registers/stays.ts';
import { stayedInWords } from '../../../journal/registers/where-now.ts';
import { someInWords } from '../../../journal/replay/words.ts';
import type { PositionTimeline } from '../../../journal/timelines/timelines.ts';
import { openItemsOn } from '../items/items-on.ts';
import type { RecordSheet } from '../page/sheet.ts';
import { ORIGIN_WORDS } from '../page/words.ts';
import { asOfWords } from '../stores/as-of-words.ts';

/** A part that stands at the position. */
export interface Standing {
  readonly part: PartId;
  /** `2 of 5: `; '' where there is but one place. */
  readonly many: string;
  readonly origin: string;
  /** `; condition 2, moderately strong symptoms, as of 9 November 2026`; '' where nobody classed it. */
  readonly condition: string;
}

export interface Present {
  /** `on`: since when it is on the vehicle, where what it stands in was off when or since it came there, and whether it had been on it before. */
  readonly fitted: readonly (Standing & { readonly since: Moment; readonly on: (Moment & { readonly words: string }) | null })[];
  /** In its place in something that is off the vehicle, and where that is. */
  readonly seated: readonly (Standing & {
    readonly place: (Pick<Whereat, 'where' | 'since' | 'last'> & { readonly stayed: string | null }) | null;
  })[];
  readonly items: readonly ItemRow[];
}

/** @param life of it, the position and its row of the register as they stand */
export function presentOf(sheet: RecordSheet, { position, now }: Pick<PositionTimeline, 'position' | 'now'>): Present {
  const standing = (at: Seated, one: Occupant) => {
    const { part, count, which, origin } = one;
    const place = whereaboutsAt(sheet.record, part, sheet.day).find(({ where }) => where.at === at && where.position === position.id);
    return {
      part,
      many: manyOf(position.count, count, which),
      origin: origin === null ? 'origin not known' : ORIGIN_WORDS[origin],
      condition: conditionWords(sheet, one, place),
      place:
        place === undefined
          ? null
          : { where: place.where, since: place.since, last: place.last, stayed: stayedInWords(sheet.record, part, place.where, sheet.day) },
    };
  };
  return {
    fitted: now.fitted.map((one) => {
      const { place, ...said } = standing('fitted', one);
      const moved = position.inside !== null && place !== null && place.since.session !== one.since.session;
      return { ...said, since: one.since, on: moved ? { ...place.since, words: onWords(sheet, one.part) } : null };
    }),
    seated: now.seated.map((one) => standing('in', one)),
    items: openItemsOn(sheet, position.parts),
  };
}

/** It may have come here in what was fitted later. */
function onWords({ record }: RecordSheet, part: PartId): string {
  const before = staysOf(record, part).some(({ where, to }) => where.at === 'fitted' && to !== null);
  return before ? 'on the vehicle again' : 'on the vehicle';
}

/** How a part stands: on the vehicle, or in a part that is off it. */
type Seated = 'fitted' | 'in';

/** How many, and of a numbered lot which: `2 of 5: `; '' for one place. */
export function manyOf(places: number, count: number, which: readonly number[] | null = null): string {
  return places > 1 ? `${someInWords(count, places, which) || `${count} of ${places}`}: ` : '';
}

/**
 * With the days of which it is told: what was written down once says nothing of what was done since. Of those that cannot
 * be told apart it is that of all that stand there, whenever they came.
 */
function conditionWords(sheet: RecordSheet, { part, count, which }: Occupant, place: Whereat | undefined): string {
  const { record } = sheet;
  const own = which === null ? place : place && { where: place.where, count, which };
  const conditions = own ? conditionsAt(record, part, own, record.day) : [];
  const words = conditionInWords(conditions, own?.count ?? count);
  const [only] = conditions;
  if (words === null) return '';
  const meaning = only && conditions.length === 1 ? `, ${CONDITION_WORDS[only.condition]}` : '';
  return `; condition ${words}${meaning}, ${asOfWords(sheet, conditionDays(record, part, conditions), sheet.date)}`;
}
