/** What a note says was bought. */
import Fraction from 'fraction.js';
import type { Bill, BillLine } from '../model.ts';
import { GENERAL } from '../model.ts';
import { isDoubtful } from '../read/doubtful.ts';
import type { Path } from '../read/source/tree.ts';
import type { SessionSource } from '../schema/session.ts';
import { convertTo } from '../values/quantity.ts';
import { type BillSource, type LineSource, readBill } from './bill-source.ts';
import { billOf } from './bills.ts';
import { paperNamed } from './media.ts';
import type { NoteContext } from './session.ts';
import { each } from './work.ts';

type BoughtSource = NonNullable<SessionSource['bought']>[number];
type BillEntry = NonNullable<SessionSource['bills']>[number];
type LineEntry = BillEntry['lines'][number];

/** The bills of a note: each `bought` line is one, and each entry under `bills`. */
export function billsOf(source: SessionSource, context: NoteContext): Bill[] {
  const single = each(source.bought, (entry, i) => singleLine(entry, i, context));
  const several = each(source.bills, (entry, i) => severalLines(entry, i, context));
  return [...single, ...several];
}

function singleLine(entry: BoughtSource, i: number, context: NoteContext): Bill | null {
  const path: Path = ['bought', i];
  const line = lineOf(entry, path, context);
  return finish(
    {
      from: entry.from ?? null,
      paper: paperOf(entry.paper, path, context),
      currency: null,
      total: null,
      discount: null,
      carriage: null,
      tax: null,
      lines: [line ?? textOf(entry)],
      placeOf: (field, at) => (field === '' && at === undefined ? context.place(...path) : context.place(...path, field)),
    },
    line !== null,
    `${context.id}#bought-${i + 1}`,
    context,
  );
}

function severalLines(entry: BillEntry, i: number, context: NoteContext): Bill | null {
  const path: Path = ['bills', i];
  const paper = paperOf(entry.paper, path, context);
  if (entry.lines.length === 0) {
    if (isDoubtful(entry)) return null;
    context.out.report('A302', context.place(...path, 'lines'), 'The bill has no line.', { hint: 'Write what was bought and its cost.' });
    return null;
  }
  const lines = entry.lines.map((line, j) => lineOf(line, [...path, 'lines', j], context));
  const lineAt = (at: number | undefined): Path => (at === undefined ? path : [...path, 'lines', at]);
  return finish(
    {
      from: entry.from ?? null,
      paper,
      currency: entry.currency ?? null,
      total: entry.total ?? null,
      discount: entry.discount ?? null,
      carriage: entry.carriage ?? null,
      tax: entry.tax ?? null,
      lines: lines.map((line, j) => line ?? textOf(entry.lines[j])),
      placeOf: (field, at) => (field === '' ? context.place(...lineAt(at)) : context.place(...lineAt(at), field)),
    },
    !lines.includes(null),
    `${context.id}#bill-${i + 1}`,
    context,
  );
}

/** What a line that names something unknown still says in figures, so that what is wrong in them is told in the same run. */
function textOf(entry: LineEntry | undefined): LineSource {
  const { cost = '0', tax = null, refund = null } = entry ?? {};
  return { what: '', as: 'part', consumable: null, amount: null, charges: [], cost, tax, refund };
}

/** @param known whether everything that the lines name is known; of others only the figures are read, and there is no bill */
function finish(source: BillSource, known: boolean, id: string, context: NoteContext): Bill | null {
  const { settings } = context.catalogues;
  if (!known) {
    readBill(source, settings, context.out.diagnostics);
    return null;
  }
  const { bill, diagnostics } = billOf(source, { id, session: context.id, date: context.date }, settings);
  context.out.diagnostics.push(...diagnostics);
  return bill;
}

function paperOf(written: string | undefined, path: Path, context: NoteContext): string | null {
  return written === undefined ? null : paperNamed(written, context, context.place(...path, 'paper'));
}

function lineOf(entry: LineEntry, path: Path, context: NoteContext): LineSource | null {
  const { names, out, place } = context;
  const consumable = entry.consumable === undefined ? null : names.consumable(entry.consumable, place(...path, 'consumable'));
  const charges = chargesOf(entry, path, context);
  if (entry.consumable !== undefined && consumable === null) return null;
  if (consumable !== null) {
    if (entry.amount === undefined) {
      const hint = `Say how much: \`amount: 1 ${consumable.unit}\`.`;
      out.report('A302', place(...path), 'The field `amount` is missing.', { hint });
      return null;
    }
    if (out.take(convertTo(entry.amount, consumable.unit), place(...path, 'amount')) === null) return null;
  }
  if (charges === null || isDoubtful(entry)) return null;
  const what = entry.what ?? consumable?.name;
  if (what === undefined) {
    out.report('A302', place(...path), 'The field `what` is missing.', { hint: 'Say what was bought, or name a `consumable`.' });
    return null;
  }
  return {
    what,
    as: entry.as ?? (consumable ? 'consumable' : 'part'),
    consumable: consumable?.id ?? null,
    amount: entry.amount ?? null,
    charges,
    cost: entry.cost,
    tax: entry.tax ?? null,
    refund: entry.refund ?? null,
  };
}

/** A split says where a line is laid; what it is `for` must then be known all the same. */
function chargesOf(entry: LineEntry, path: Path, { names, place, out }: NoteContext): BillLine['charges'] | null {
  const charge = entry.for === undefined ? { part: null, subsystem: GENERAL } : names.charge(entry.for, place(...path, 'for'));
  if (charge === null) return null;
  if (entry.split !== undefined) {
    const shares = each(Object.entries(entry.split), ([id, weight]) => {
      const to = names.charge(id, place(...path, 'split', id));
      const share = /^\d{1,9}(?:\.\d{1,6})?$/.test(weight) ? new Fraction(weight) : null;
      if (share === null) out.report('A303', place(...path, 'split', id), `\`${weight}\` is not a weight.`, { hint: 'A number from 0.' });
      return to === null || share === null ? null : { charge: to, weight: share };
    });
    return shares.length === Object.keys(entry.split).length ? shares : null;
  }
  return [{ charge, weight: new Fraction(1) }];
}
