import type { Decision } from '../../../journal/model.ts';
import type { InForce } from '../../../journal/registers/decisions-in-force.ts';
import { someInWords } from '../../../journal/replay/words.ts';
import { positionCount } from '../page/facts.ts';
import { html, type Markup } from '../page/html.ts';
import { partLink } from '../page/links.ts';
import type { Sheet } from '../page/sheet.ts';
import { VERDICT_WORDS } from '../page/words.ts';

/** A verdict in a line: how many and which, and what with; the reason is set by whoever shows it. */
export function decisionWords(sheet: Sheet, { verdict, count, which, position, with: other }: Decision): Markup {
  const of = positionCount(sheet, position);
  const some = someInWords(count, of, which);
  return html`<b>${VERDICT_WORDS[verdict]}</b>${some !== '' && ` (${some})`}${other !== null && html` with ${partLink(sheet, other)}`}`;
}

/** What still holds of a decision, of which a later one may have taken some. */
export function inForceWords(sheet: Sheet, { decision, count, which }: InForce): Markup {
  const rest = count < decision.count && `, the rest of ${decision.count} superseded since`;
  return html`${decisionWords(sheet, { ...decision, count, which })}${rest}`;
}
