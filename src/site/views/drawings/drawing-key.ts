import { toHtml } from 'hast-util-to-html';
import { html, type Markup } from '../page/html.ts';
import { capital } from '../page/words.ts';
import { hatchesIn } from './hatches.ts';
import type { PlacesInState } from './in-words.ts';

/** What each line and hatch of a drawing stands for, and how many places are so. */
export function drawingKey(states: readonly PlacesInState[]): Markup {
  const undecided = states.reduce((sum, { places }) => sum + places.filter(({ state }) => state.undecided).length, 0);
  const lines = states.map(({ hatch, kind, words, places }, n) => {
    const hatches = hatch !== null && { markup: toHtml(hatchesIn(`key${n}`, 5), { space: 'svg' }) };
    return lineOf(kind, hatches, hatch === null ? 'none' : `url(#key${n}-${hatch})`, capital(words), places.length);
  });
  const asks = undecided > 0 && lineOf('asks', false, 'none', 'Asks for a decision', undecided);
  return html`<ul class="drawing-key">${lines}${asks}</ul>`;
}

function lineOf(set: string, hatches: Markup | false, fill: string, words: string, places: number): Markup {
  return html`<li><svg viewBox="0 0 30 16" width="30" height="16" aria-hidden="true" class="drawn">${hatches}<g class="place ${set}"><rect x="1" y="1" width="28" height="14" fill="${fill}"></rect></g></svg> ${words} <span class="fact">${places}</span></li>`;
}
