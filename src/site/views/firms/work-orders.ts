/** Work orders: what is out with which firm, as it went, what was asked, promised and quoted. The page and the printed order say the same. */
import type { Hazard, PartEntry, PartId, Picture, Session } from '../../../journal/model.ts';
import { cameShortOf } from '../../../journal/registers/came-short.ts';
import { hazardsOfLying } from '../../../journal/registers/hazards.ts';
import { seriesOf } from '../../../journal/registers/measurements.ts';
import { marksOf } from '../../../journal/registers/observations.ts';
import { type OffVehicle, outAt } from '../../../journal/registers/stores.ts';
import { numbersInWords, whereKey } from '../../../journal/replay/words.ts';
import type { RecordSheet } from '../page/sheet.ts';
import { capital } from '../page/words.ts';
import { asOfWords } from '../stores/as-of-words.ts';
import { shortWords } from '../stores/short-words.ts';

/** What one thing that is out is said of on its order. */
export interface OrderedThing {
  readonly part: PartId;
  readonly count: number;
  /** It is lent, and nothing is to be done to it. */
  readonly loan: boolean;
  /** Names and what stands beside them, in the order of the form. */
  readonly facts: readonly (readonly [name: string, words: string])[];
  /** What came back short of it and is still owed, in words. */
  readonly short: readonly string[];
  /** The last two pictures that were named for it. */
  readonly pictures: readonly { readonly picture: Picture; readonly session: Session }[];
  readonly hazards: readonly Hazard[];
}

export interface WorkOrder {
  readonly firm: string;
  /** The anchor of its section. */
  readonly anchor: string;
  /** Who sends it, in one line; '' where the journal does not say. */
  readonly from: string;
  readonly things: readonly OrderedThing[];
  /** How many things in all. */
  readonly count: number;
}

/** What a firm does unless it is asked to. */
const NOT_TO_BE_DONE = 'Nothing else without asking. No blasting, no polishing, no paint and no marks beyond what is asked for.';

/** An order for each firm that has something, on the record's day. */
export function workOrders(sheet: RecordSheet): readonly WorkOrder[] {
  const { workshop } = sheet.settings;
  const from = [workshop.name, workshop.address].filter((one) => one !== null).join(', ');
  return outAt(sheet.record, null).map(({ firm, things }) => ({
    firm,
    anchor: orderAnchor(firm),
    from,
    things: things.map((thing) => orderedThing(sheet, firm, thing)),
    count: things.reduce((sum, { count }) => sum + count, 0),
  }));
}

/** The anchor of a firm on the page of work orders. */
export function orderAnchor(firm: string): string {
  return `with-${firm.toLowerCase().replaceAll(/[^\p{L}\p{N}]+/gu, '-')}`;
}

function orderedThing(sheet: RecordSheet, firm: string, thing: OffVehicle): OrderedThing {
  const { record } = sheet;
  const { part, count } = thing;
  const sent = sentWith(sheet, thing);
  const loan = sent?.how === 'loan';
  return {
    part,
    count,
    loan,
    facts: factsOf(sheet, thing, sent, loan),
    short: cameShortOf(record, part, null)
      .filter((one) => one.firm === firm)
      .map((one) => shortWords(sheet, one)),
    pictures: record.journal.sessions
      .flatMap((session) => session.pictures.filter(({ named }) => named.includes(part)).map((picture) => ({ picture, session })))
      .slice(-2),
    hazards: hazardsOfLying(record, [{ part, place: whereKey(thing.where) }], record.day),
  };
}

function factsOf(
  sheet: RecordSheet,
  { part, count, which, since, condition, conditionOf }: OffVehicle,
  sent: PartEntry | null,
  loan: boolean,
): readonly (readonly [string, string])[] {
  const { record } = sheet;
  const thing = record.journal.parts.get(part);
  const own = sent?.part === part ? sent : null;
  const asked =
    own === null && sent !== null
      ? (['Goes along', `in ${sheet.partName(sent.part)}; what is to be done is said of that`] as const)
      : (['To be done', own?.work ?? null] as const);
  const all: readonly (readonly [string, string | null])[] = [
    ['How many', which === null || count >= (thing?.count ?? count) ? String(count) : `${count}, ${numbersInWords(which)}`],
    ...(loan ? [['Lent', 'Nothing is to be done to it.'] as const] : [asked, ['Not to be done', NOT_TO_BE_DONE] as const]),
    [
      loan ? 'Due back' : 'Promised for',
      sent?.due == null ? null : `${sheet.date(sent.due)}${sent.due < record.day ? ', which is past' : ''}`,
    ],
    ['Quoted', own && quotedWords(sheet, own, count)],
    ['Sent', sheet.date(since.date)],
    ['Marks', own?.marks ?? (marksOf(record, part, which).join('; ') || null)],
    ['Finish', own?.finish ?? thing?.finish ?? null],
    ['Condition', condition === null ? null : `${condition}, ${asOfWords(sheet, conditionOf, sheet.date)}`],
    ['Note', own?.note ?? null],
    ...seriesOf(record, part).map((series): readonly [string, string | null] => {
      const last = series.readings.at(-1)?.measurement;
      return [capital(series.what), last ? `${last.value.text}${last.limitsText === null ? '' : `, limits ${last.limitsText}`}` : null];
    }),
  ];
  return all.flatMap(([name, words]) => (words === null ? [] : [[name, words] as const]));
}

/** What was quoted is for all that went out: where some of it came back, it says so. */
function quotedWords({ record, figures }: RecordSheet, sent: PartEntry, left: number): string | null {
  if (sent.quoted === null) return null;
  const went = record.history.deeds.reduce((sum, { did, entry, count }) => (did === 'sent-out' && entry === sent ? sum + count : sum), 0);
  const price = figures.money(sent.quoted);
  return went <= left ? price : `${price} for the ${went} that were sent, of which ${left} ${left === 1 ? 'is' : 'are'} still out`;
}

/** The entry that sent it out; of what went along in another thing, the entry of that. */
function sentWith({ record }: RecordSheet, { part, since, where }: OffVehicle): PartEntry | null {
  const sentAs = where.at === 'in' ? where.part : part;
  const found = record.journal.sessions.find(({ id }) => id === since.session);
  return found?.parts.findLast((entry) => entry.part === sentAs && entry.did.includes('sent-out')) ?? null;
}
