import type { Decision } from '../../../journal/model.ts';
import { html, type Markup } from '../page/html.ts';
import { partLink } from '../page/links.ts';
import type { Sheet } from '../page/sheet.ts';
import { VERDICT_WORDS } from '../page/words.ts';

/** A verdict in a line: how many, and what with; the reason is set by whoever shows it. */
export function decisionWords(sheet: Sheet, { verdict, count, position, with: other }: Decision): Markup {
  const of = sheet.record.journal.positions.get(position)?.count ?? 1;
  return html`<b>${VERDICT_WORDS[verdict]}</b>${count < of && ` (${count} of ${of})`}${other !== null && html` with ${partLink(sheet, other)}`}`;
}
