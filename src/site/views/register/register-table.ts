/**
 * The surveyor's schedule: a row a position, grouped by subsystem, decision beside fact. A row that did not
 * change between two dates is the same object in both registers, so what was set for it once is used again:
 * views of every month cost what changed.
 */

import { together } from '../../../journal/registers/occupant.ts';
import type { Originality } from '../../../journal/registers/originality.ts';
import type { Occupant, OriginalPlace, RegisterRow } from '../../../journal/registers/register.ts';
import { someInWords } from '../../../journal/replay/words.ts';
import { keptIn } from '../../../journal/values/once.ts';
import type { Shared } from '../../kept/asking.ts';
import { subsystemsInOrder } from '../page/facts.ts';
import { html, joined, type Markup } from '../page/html.ts';
import { linked, partLink, positionLink } from '../page/links.ts';
import type { Sheet } from '../page/sheet.ts';
import { capital, counted, ORIGIN_WORDS, VERDICT_WORDS } from '../page/words.ts';
import { whereNowLink } from '../stores/where.ts';
import { type Column, type Group, type SetTable, setTable } from '../tables/table.ts';
import { facetsOf } from './narrowing.ts';

/** @param setAlike names the pages whose links are alike, as they stand in one folder: they share what was set before */
export function registerTable(
  sheet: Sheet,
  list: readonly RegisterRow[],
  originality: Originality,
  label: string,
  setAlike: string,
): SetTable {
  const rows = keptIn(rowsByPages, setAlike, () => new WeakMap());
  return setTable<RegisterRow>({
    label,
    caption: html`<span class="seen-by-readers-only">${label}</span>`,
    set: 'schedule register',
    columns: columnsOf(sheet),
    groups: groupsOf(sheet, list, originality),
    data: (row) => ({ ...facetsOf(row) }),
    shared: (row, make) => sheet.shared(rows, row, make),
  });
}

/** Rows are made for one record, so they tell records apart. */
const rowsByPages = new Map<string, Shared<string>>();

function groupsOf(sheet: Sheet, list: readonly RegisterRow[], { bySubsystem }: Originality): Group<RegisterRow>[] {
  const rows = Map.groupBy(list, ({ subsystem }) => subsystem);
  const order = new Set([...subsystemsInOrder(sheet), ...rows.keys()]);
  return [...order].flatMap((id) => {
    const share = bySubsystem.get(id);
    const inPlace =
      share &&
      share.places > 0 &&
      html`<span class="note"> ${share.fitted} of ${counted(share.places, 'piece')} original and in place</span>`;
    const of = rows.get(id);
    return of ? [{ id, head: { words: html`${sheet.subsystemName(id)}${inPlace}`, sum: null }, rows: of }] : [];
  });
}

function columnsOf(sheet: Sheet): readonly Column<RegisterRow>[] {
  return [
    {
      head: 'Position',
      names: true,
      set: 'position',
      cell: ({ position, count }) =>
        html`${positionLink(sheet, position)}${count > 1 && html` <span class="nowrap">×\u00a0${count}</span>`}`,
    },
    { head: 'Outcome', set: 'outcome', bare: true, cell: ({ outcome }) => capital(outcome.words) },
    { head: 'Decided', set: 'decided', cell: (row) => decided(sheet, row) },
    { head: 'On the vehicle', set: 'fitted', cell: (row) => fitted(sheet, row) },
    { head: 'Where the original is, if off', set: 'away', cell: (row) => away(sheet, row) },
    { head: 'Remarks', bare: true, cell: remarks },
  ];
}

function decided(sheet: Sheet, { inForce, position, count: places, undecided }: RegisterRow): Markup {
  if (inForce.length === 0) return html`<span class="zero">${undecided > 0 ? 'undecided' : 'none'}</span>`;
  const page = `${sheet.toPosition(position)}#decisions`;
  return lines(
    inForce.map(({ decision: { verdict, with: other }, count, which }) => {
      const some = count < places && `${someInWords(count, places, which)}: `;
      return html`${some}${linked(VERDICT_WORDS[verdict], page)}${other !== null && html` with ${partLink(sheet, other)}`}`;
    }),
  );
}

function fitted(sheet: Sheet, row: RegisterRow): Markup {
  const nothing = row.fitted.length === 0 ? [html`<span class="zero">nothing</span>`] : [];
  const seated = row.seated.map((one) => html`off with ${partLink(sheet, one.carrier)}: ${standing(sheet, row, one)}`);
  return lines([...nothing, ...together(row.fitted).map((one) => standing(sheet, row, one)), ...seated]);
}

function standing(sheet: Sheet, row: RegisterRow, { part, count, origin }: Pick<Occupant, 'part' | 'count' | 'origin'>): Markup {
  const some = count < row.count && `${count} of ${row.count}: `;
  const asDecided = row.inForce.some(({ decision }) => decision.with === part);
  const named = part !== row.position && (asDecided ? ', as decided' : html`, ${partLink(sheet, part)}`);
  return html`${some}${origin === null ? 'origin not known' : ORIGIN_WORDS[origin]}${named}`;
}

/** Where originals are that do not stand at their position. */
function away(sheet: Sheet, row: RegisterRow): Markup {
  const off = row.originals.filter(({ where }) => where.at !== 'fitted' || where.position !== row.position);
  return lines(off.map((place) => placeOf(sheet, row, place)));
}

function placeOf(sheet: Sheet, row: RegisterRow, { where, count, which, part, stayed }: OriginalPlace): Markup {
  const some = row.count > 1 && `${someInWords(count, row.count, which) || `${count} of ${row.count}`}: `;
  return html`${some}${part !== row.position && `${sheet.partName(part)}, `}${whereNowLink(sheet, where, stayed)}`;
}

function remarks({ mismatches, otherwise, pending }: RegisterRow): Markup {
  const against = mismatches.map(({ words }) => html`<span class="attention">${words}</span>`);
  return lines([...against, ...[...otherwise, ...pending].map(({ words }) => html`${capital(words)}`)]);
}

function lines(pieces: readonly Markup[]): Markup {
  return joined(pieces, html`<br>`);
}
