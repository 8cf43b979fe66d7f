import type { Hazard, IsoDate, PartId } from '../../../journal/model.ts';
import type { OffVehicle } from '../../../journal/registers/stores.ts';
import { numbersInWords, whereKey } from '../../../journal/replay/words.ts';
import { hazardMark } from '../cautions/hazard-mark.ts';
import { cameShortOn, errandOn, hazardsOn, partFacts } from '../page/facts.ts';
import { html, type Markup } from '../page/html.ts';
import { partLink, sinceLinks, sub } from '../page/links.ts';
import type { Sheet } from '../page/sheet.ts';
import { capital, ORIGIN_WORDS } from '../page/words.ts';
import { type Column, rows, type SetTable, setTable } from '../tables/table.ts';
import { tickBox } from '../tables/tick-box.ts';
import { asOfWords } from './as-of-words.ts';
import { shortWords } from './short-words.ts';
import { whereLink } from './where.ts';

/** What the last column says: whether it goes with the vehicle, where it is, or nothing. */
export type StoreSays = 'goes' | 'where' | null;

/** The hazards of what lies somewhere; what is gone or missing carries none here. */
function hazardsHere(sheet: Sheet, { part, where }: OffVehicle, at: IsoDate): readonly Hazard[] {
  return where.at === 'gone' || where.at === 'missing' ? [] : hazardsOn(sheet, [{ part, place: whereKey(where) }], at);
}

/** For what is out: what is to be done, by when and for how much, or that it is lent. */
function errandLine(sheet: Sheet, { part, where }: OffVehicle, at: IsoDate): string {
  const errand = where.at === 'out' ? errandOn(sheet, part, at) : null;
  if (errand === null) return '';
  const { loan, work, due, overdue, quoted } = errand;
  const said = [
    loan && 'on loan',
    work,
    due !== null && `due ${sheet.figures.shortDate(due)}${overdue ? ', which is past' : ''}`,
    quoted !== null && `quoted ${sheet.figures.money(quoted)}`,
  ];
  return capital(said.filter((words) => typeof words === 'string').join('; '));
}

/** What of it came back short from the firm it is with. */
function shortLine(sheet: Sheet, { part, where }: OffVehicle, at: IsoDate): Markup | false {
  const firm = where.at === 'out' ? where.firm : null;
  const short = cameShortOn(sheet, part, at).filter((one) => one.firm === firm);
  return (
    short.length > 0 && html`<span class="sub attention">Came back short: ${short.map((one) => shortWords(sheet, one)).join('; ')}</span>`
  );
}

/** Which of a numbered lot, where it is not all of it. */
function numbersOf(sheet: Sheet, part: PartId, count: number, which: readonly number[] | null): string {
  const all = partFacts(sheet, part)?.count ?? count;
  return which === null || count >= all ? '' : numbersInWords(which);
}

/** What it is in, where it lies in another part. */
function carrierWords(sheet: Sheet, { where }: OffVehicle): Markup | false {
  return where.at === 'in' && html`in ${partLink(sheet, where.part)}`;
}

/** Things off the vehicle: what, how many, origin, condition, since when. `ticked` gives each a box on paper. */
export function storeTable(
  sheet: Sheet,
  things: readonly OffVehicle[],
  label: string,
  {
    says = 'goes',
    ticked = false,
    at = sheet.day,
  }: { readonly says?: StoreSays; readonly ticked?: boolean /** The day that the things lay so. */; readonly at?: IsoDate } = {},
): SetTable {
  const last: Readonly<Record<'goes' | 'where', Column<OffVehicle>>> = {
    goes: { head: 'Goes with the vehicle', cell: ({ goesWithVehicle }) => goesWithVehicle && 'yes' },
    where: { head: 'Where', bare: true, cell: ({ where }) => whereLink(sheet, where) },
  };
  return setTable<OffVehicle>({
    label,
    set: says === 'where' ? 'store placed' : 'store',
    columns: [
      {
        head: 'Part',
        names: true,
        set: 'part',
        cell: (thing) =>
          html`${partLink(sheet, thing.part)}${sub(carrierWords(sheet, thing))}${sub(thing.note)}${sub(errandLine(sheet, thing, at))}${shortLine(sheet, thing, at)}${hazardMark(sheet, hazardsHere(sheet, thing, at))}`,
      },
      { head: 'How many', set: 'num', cell: ({ part, count, which }) => html`${count}${sub(numbersOf(sheet, part, count, which))}` },
      { head: 'Origin', set: 'origin', bare: true, cell: ({ origin }) => (origin === null ? 'not known' : ORIGIN_WORDS[origin]) },
      {
        head: 'Condition',
        set: 'condition',
        cell: ({ condition, conditionOf }) =>
          condition !== null && html`${condition}${sub(asOfWords(sheet, conditionOf, sheet.figures.shortDate))}`,
      },
      { head: 'Since', set: 'date', cell: (thing) => sinceLinks(sheet, thing) },
      ...(says === null ? [] : [last[says]]),
      ...(ticked ? [tickBox('Seen')] : []),
    ],
    groups: rows(things),
  });
}
