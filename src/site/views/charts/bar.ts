import { html, type Markup } from '../page/html.ts';

/** A share as a plain bar beside its number: the outline is the whole; what is over it is in the attention colour. */
export function shareBar(part: number, whole: number): Markup {
  const share = whole <= 0 ? 0 : part / whole;
  const scale = Math.max(1, share);
  const at = (of: number): number => Math.round((of / scale) * 1000) / 10;
  const over = share > 1 && html`<rect class="over" x="${at(1)}" y="0" width="${at(share - 1)}" height="8"></rect>`;
  return html`<svg class="bar" viewBox="0 0 100 8" preserveAspectRatio="none" aria-hidden="true"><rect class="part" x="0" y="0" width="${at(Math.min(share, 1))}" height="8"></rect>${over}<rect class="whole" x="0" y="0" width="${at(1)}" height="8"></rect></svg>`;
}
