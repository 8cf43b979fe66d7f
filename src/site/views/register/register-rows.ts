/**
 * The register's rows as markup. A row that did not change between two dates is the same object in both
 * registers, so what was set for it once is used again: views of every month cost what changed.
 */

import type { JournalRecord } from '../../../journal/record.ts';
import type { OriginalPlace, RegisterRow } from '../../../journal/registers/register.ts';
import { html, joined, type Markup } from '../page/html.ts';
import type { Sheet } from '../page/sheet.ts';
import { capital, ORIGIN_WORDS, VERDICT_WORDS } from '../page/words.ts';
import { spotOf } from '../stores/where.ts';

const made = new WeakMap<JournalRecord['history'], Map<string, WeakMap<RegisterRow, string>>>();

/**
 * The rows of one group. Pages in the same folder share what was set before, as their links are alike.
 *
 * @param shelf names the pages that may share
 */
export function registerRows(sheet: Sheet, rows: readonly RegisterRow[], shelf: string): string {
  const shelves = made.get(sheet.record.history) ?? new Map<string, WeakMap<RegisterRow, string>>();
  made.set(sheet.record.history, shelves);
  const known = shelves.get(shelf) ?? new WeakMap<RegisterRow, string>();
  shelves.set(shelf, known);
  return rows
    .map((row) => {
      const markup = known.get(row) ?? rowOf(sheet, row).markup;
      known.set(row, markup);
      return markup;
    })
    .join('');
}

function rowOf(sheet: Sheet, row: RegisterRow): Markup {
  const name = sheet.positionName(row.position);
  const count = row.count > 1 && html` <span class="nowrap">×\u00a0${row.count}</span>`;
  return html`<tr><th scope="row"><a href="${sheet.toPosition(row.position)}">${name}</a>${count}</th><td>${decided(sheet, row)}</td><td>${fitted(sheet, row)}</td><td>${capital(row.outcome.words)}</td><td>${away(sheet, row)}</td><td>${remarks(row)}</td></tr>`;
}

function decided(sheet: Sheet, row: RegisterRow): Markup | string {
  if (row.inForce.length === 0) return html`<span class="zero">${row.undecided > 0 ? 'undecided' : 'none'}</span>`;
  return lines(
    row.inForce.map(({ decision, count }) => {
      const some = count < row.count && `${count} of ${row.count}: `;
      const replaced = decision.with !== null && html` with <a href="${sheet.toPart(decision.with)}">${sheet.partName(decision.with)}</a>`;
      const page = `${sheet.toPosition(row.position)}#decisions`;
      return html`${some}<a href="${page}">${VERDICT_WORDS[decision.verdict]}</a>${replaced}`;
    }),
  );
}

function fitted(sheet: Sheet, row: RegisterRow): Markup {
  const here = row.fitted.map(({ part, count, origin }) => {
    const some = (row.fitted.length > 1 || count < row.count) && `${count} of ${row.count}: `;
    const asDecided = row.inForce.some(({ decision }) => decision.with === part);
    const named =
      part !== row.position && (asDecided ? ', as decided' : html`, <a href="${sheet.toPart(part)}">${sheet.partName(part)}</a>`);
    return html`${some}${origin === null ? 'origin not known' : ORIGIN_WORDS[origin]}${named}`;
  });
  const none = row.fitted.length === 0 ? [html`<span class="zero">nothing</span>`] : [];
  return lines([...here, ...none]);
}

/** Where originals are that do not stand at their position. */
function away(sheet: Sheet, row: RegisterRow): Markup {
  const off = row.originals.filter(({ where }) => where.at !== 'fitted' || where.position !== row.position);
  return lines(off.map((place) => placeOf(sheet, row, place)));
}

function placeOf(sheet: Sheet, row: RegisterRow, { where, count, part }: OriginalPlace): Markup {
  const spot = spotOf(sheet, where);
  const some = row.count > 1 && `${count} of ${row.count}: `;
  const named = part !== row.position && `${sheet.partName(part)}, `;
  return html`${some}${named}${spot.before}${spot.href === null ? spot.name : html`<a href="${spot.href}">${spot.name}</a>`}`;
}

function remarks(row: RegisterRow): Markup {
  const against = row.mismatches.map(({ words }) => html`<span class="attention">${words}</span>`);
  return lines([...against, ...row.pending.map(({ words }) => html`${capital(words)}`)]);
}

function lines(pieces: readonly Markup[]): Markup {
  return pieces.length === 1 ? (pieces[0] as Markup) : { markup: joined(pieces, '\u0000').markup.replaceAll('\u0000', '<br>') };
}
