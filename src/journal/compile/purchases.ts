/** What a note says was bought. */
import Fraction from 'fraction.js';
import { entryId } from '../model/entry-id.ts';
import type { Bill, BillLine } from '../model.ts';
import type { NoteFields } from '../read/journal-source.ts';
import type { WrittenEntry } from '../read/written-entry.ts';
import { stockAmount } from '../values/packs.ts';
import { believed, given, known } from './believed.ts';
import { type BillSource, type LineSource, readBill } from './bill-source.ts';
import { billOf } from './bills.ts';
import { UNDER_GENERAL } from './context.ts';
import { paperNamed } from './media.ts';
import type { NoteAtHand } from './session.ts';

type BillEntry = NoteFields['bills'][number];
type LineEntry = BillEntry['says']['lines'][number];

/** Each line under `bought` is a bill of its own. */
export function boughtOf(list: NoteFields['bought'], context: NoteAtHand): Bill[] {
  return believed(list, (entry, i) => {
    const { from, paper: written } = entry.says;
    const paper = paperOf(written, entry, context);
    const line = lineOf(entry, context);
    const placeOf: BillSource['placeOf'] = (field, at) => (field === '' && at === undefined ? entry.place : entry.placeOf(field));
    const whole = { currency: null, total: null, discount: null, carriage: null, rounding: null, tax: null };
    const source = { ...whole, from, paper, lines: [line ?? figuresOf(entry)], placeOf };
    return finish(source, line !== null, entryId(context.id, 'bought', i), context);
  });
}

export function billsOf(list: NoteFields['bills'], context: NoteAtHand): Bill[] {
  return believed(list, (entry, i) => {
    const { says, place, placeOf: inBill } = entry;
    const paper = paperOf(says.paper, entry, context);
    if (says.lines.length === 0) {
      if (entry.doubtful) return null;
      context.out.report('A302', inBill('lines'), 'The bill has no line.', { hint: 'Write what was bought and its cost.' });
      return null;
    }
    const lines = says.lines.map((line) => lineOf(line, context));
    const placeOf: BillSource['placeOf'] = (field, at) => {
      const line = at === undefined ? entry : says.lines[at];
      return (field === '' ? line?.place : line?.placeOf(field)) ?? place;
    };
    const source = { ...says, paper, lines: says.lines.map((line, n) => lines[n] ?? figuresOf(line)), placeOf };
    return finish(source, !lines.includes(null), entryId(context.id, 'bill', i), context);
  });
}

/** What a line that names something unknown still says in figures, so that what is wrong in them is told in the same run. */
function figuresOf({ says: { cost, tax, refund, refundOf } }: LineEntry): LineSource {
  const nothing = { consumable: null, amount: null, charges: [], notCharged: null, deductible: null };
  return { what: '', as: 'part', ...nothing, cost: cost ?? '0', tax, refund, refundOf };
}

/** @param complete whether everything that the lines name is known; of others only the figures are read, and there is no bill */
function finish(source: BillSource, complete: boolean, id: string, context: NoteAtHand): Bill | null {
  const { settings } = context.catalogues;
  if (!complete) {
    readBill(source, settings, context.out.diagnostics);
    return null;
  }
  const { bill, diagnostics } = billOf(source, { id, session: context.id, date: context.date }, settings);
  context.out.diagnostics.push(...diagnostics);
  return bill;
}

function paperOf(written: string | null, { placeOf }: WrittenEntry<unknown>, context: NoteAtHand): string | null {
  return given(written, (name) => paperNamed(name, context, placeOf('paper')));
}

function lineOf(entry: LineEntry, context: NoteAtHand): LineSource | null {
  const { names, out } = context;
  const { says, place, placeOf } = entry;
  const consumable = given(says.consumable, (id) => names.consumable(id, placeOf('consumable')));
  const charges = chargesOf(entry, context);
  const cost = costOf(entry, context);
  if (says.consumable !== null && consumable === null) return null;
  if (consumable !== null) {
    if (says.amount === null) {
      const hint = `Say how much: \`amount: 1 ${consumable.unit}\`.`;
      out.report('A302', place, 'The field `amount` is missing.', { hint });
      return null;
    }
    if (out.take(stockAmount(says.amount, consumable), placeOf('amount')) === null) return null;
  }
  if (charges === null || entry.doubtful) return null;
  if (cost === null) return null;
  const what = says.what ?? consumable?.name;
  if (what === undefined) {
    out.report('A302', place, 'The field `what` is missing.', { hint: 'Say what was bought, or name a `consumable`.' });
    return null;
  }
  const { amount, tax, refund, refundOf, notCharged, deductible } = says;
  if (consumable !== null && says.as !== null && says.as !== 'consumable') {
    const hint = 'Leave `as` out: a consumable goes onto its shelf, and costs the job as it is used.';
    out.report('A813', placeOf('as'), `${consumable.name} is a consumable, and is bought here as ${says.as}.`, { hint });
    return null;
  }
  if (refundOf !== null && refund === null) {
    out.report('A302', place, 'The field `refund` is missing.', {
      hint: '`refund` says why money came back, `refund-of` from which purchase.',
    });
    return null;
  }
  const as = says.as ?? (consumable ? 'consumable' : 'part');
  return { what, as, consumable: consumable?.id ?? null, amount, charges, cost, tax, refund, refundOf, notCharged, deductible };
}

/** What a line cost; without money nothing. A302 where it does not say. */
function costOf({ says, place }: LineEntry, { catalogues, out }: NoteAtHand): string | null {
  if (says.cost !== null) return says.cost;
  if (catalogues.settings.currency === null) return '0';
  out.report('A302', place, 'The field `cost` is missing.', { hint: 'Write what it cost, as the paper has it.' });
  return null;
}

/** A set is laid to the parts it brings, to each by how many there are of it. */
function chargesOfMade(makes: LineEntry['says']['makes'], names: NoteAtHand['names']): BillLine['charges'] | null {
  const shares = makes.map(({ says, placeOf }) => {
    const charge = names.charge(says.id, placeOf('id'));
    return charge && { charge, weight: new Fraction(says.count) };
  });
  return shares.includes(null) ? null : known(shares);
}

/** A split says where a line is laid; what it is `for` must then be known all the same. */
function chargesOf({ says, placeOf }: LineEntry, { names, out }: NoteAtHand): BillLine['charges'] | null {
  const charge = says.for === null ? UNDER_GENERAL : names.charge(says.for, placeOf('for'));
  if (charge === null) return null;
  if (says.split === null && says.makes.length > 0) return chargesOfMade(says.makes, names);
  if (says.split === null) return [{ charge, weight: new Fraction(1) }];
  const shares = Object.entries(says.split).map(([id, weight]) => {
    const to = names.charge(id, placeOf('split', id));
    const share = /^\d{1,9}(?:\.\d{1,6})?$/.test(weight) ? new Fraction(weight) : null;
    if (share === null) out.report('A303', placeOf('split', id), `\`${weight}\` is not a weight.`, { hint: 'A number from 0.' });
    return to === null || share === null ? null : { charge: to, weight: share };
  });
  return shares.includes(null) ? null : known(shares);
}
