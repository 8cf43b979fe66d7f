import { CONDITION_WORDS, type Paper, type Part } from '../../../journal/model.ts';
import type { Stay } from '../../../journal/record.ts';
import { notedSince } from '../../../journal/registers/observations.ts';
import { opinionsOf } from '../../../journal/registers/origins.ts';
import { stayedInWords } from '../../../journal/registers/where-now.ts';
import { numbersInWords } from '../../../journal/replay/words.ts';
import { type CustodySpell, partTimeline } from '../../../journal/timelines/timelines.ts';
import { html, type Markup } from '../page/html.ts';
import { linked } from '../page/links.ts';
import type { InSession } from '../page/record-index.ts';
import type { RecordSheet, Sheet } from '../page/sheet.ts';
import { capital, HAZARD_WORDS, listed, ORIGIN_WORDS } from '../page/words.ts';

export interface PartPage {
  /** What is known of it, a name and a value each; what nobody knows is left out. */
  readonly facts: readonly (readonly [name: string, value: string])[];
  /** What later notes saw, by what it is. */
  readonly since: ReturnType<typeof notedSince>;
  readonly papers: readonly InSession<Paper>[];
  /** Every place it has been, and with whom it stayed there; what began and ended within one session is passed over: it was on its way. */
  readonly stays: readonly (Stay & { readonly stayed: string | null })[];
  readonly custody: readonly CustodySpell[];
}

export function partPage(sheet: RecordSheet, part: Part): PartPage {
  const { record, index } = sheet;
  const life = partTimeline(record, part.id);
  return {
    facts: factsOf(sheet, part).flatMap(([name, value]) => (value === null ? [] : [[name, capital(value)] as const])),
    since: notedSince(record, part.id),
    papers: index.papersOf.get(part.id) ?? [],
    stays: life.stays
      .filter(({ from, to }) => to === null || to.session === null || to.session !== from.session)
      .map((stay) => ({ ...stay, stayed: stay.to === null ? stayedInWords(record, part.id, stay.where, null) : null })),
    custody: life.custody,
  };
}

function factsOf({ record }: RecordSheet, part: Part): readonly (readonly [string, string | null])[] {
  const last = opinionsOf(record, part.id).at(-1);
  const origin = last?.origin ?? null;
  return [
    ['Origin', origin === null ? 'not known' : ORIGIN_WORDS[origin]],
    ['Why believed', last?.because ?? null],
    ['Marks', part.marks],
    ['Finish', part.finish],
    ['Condition as found', part.condition === null ? null : `${part.condition}, ${CONDITION_WORDS[part.condition]}`],
    ['How many', part.count === 1 ? null : String(part.count)],
    ['Hazards', part.hazards.length === 0 ? null : listed(part.hazards.map((hazard) => HAZARD_WORDS[hazard]))],
    ['Note', part.makesPosition ? null : part.note],
    ['Private', part.private],
  ];
}

/**
 * From when to when, with a link to the session where `withLink` asks for it: `since it was found`, `until 2 May 2031`,
 * `since 12 March 2031`, `from 12 March 2031 to 2 May 2031`.
 */
export function spellWords(sheet: Sheet, { from, to }: Pick<Stay, 'from' | 'to'>, withLink = false): Markup {
  const ended = to === null ? null : sheet.date(to.date);
  if (from.session === null && from.date === sheet.settings.arrived)
    return html`${ended === null ? 'since it was found' : `until ${ended}`}`;
  const begun =
    withLink && from.session !== null ? linked(sheet.date(from.date), sheet.toSession(from.session)) : html`${sheet.date(from.date)}`;
  return ended === null ? html`since ${begun}` : html`from ${begun} to ${ended}`;
}

/** Of a lot how many there were in turn: ` (4, then 2 of 5)`; '' where it was all of it all the time. */
export function someOfLot(steps: readonly { readonly count: number }[], { count: all }: Pick<Part, 'count'>): string {
  return steps.every(({ count }) => count === all) ? '' : ` (${countsInTurn(steps)} of ${all})`;
}

/** Which of a lot, at the head of a line: `Numbers 2 and 4`. */
export const whichOf = (numbers: readonly number[]): string => capital(numbersInWords(numbers));

/** How many of a lot there were in turn: `4, then 2, then 3`. */
export function countsInTurn(steps: readonly { readonly count: number }[]): string {
  return steps
    .map(({ count }) => count)
    .filter((count, n, all) => count !== all[n - 1])
    .join(', then ');
}
