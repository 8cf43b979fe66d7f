import type { Hazard } from '../../../journal/model.ts';
import { html, joined, type Markup } from '../page/html.ts';
import { linked } from '../page/links.ts';
import type { Sheet } from '../page/sheet.ts';
import { HAZARD_WORDS } from '../page/words.ts';

/** The hazards that parts carry where they lie now, in words beside them; nothing when they carry none. */
export function hazardMark(sheet: Sheet, hazards: readonly Hazard[]): Markup | false {
  const named = hazards.map((hazard) => linked(HAZARD_WORDS[hazard], sheet.link(`cautions.html#${hazard}`)));
  return named.length > 0 && html`<span class="sub attention">Caution: ${joined(named, ', ')}</span>`;
}
