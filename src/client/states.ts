/**
 * Where a text names a position, its state stands beside the link while a pointer rests on it or the keyboard is on it.
 * By WCAG 2.2, 1.4.13: Escape puts it away without moving, a pointer may go onto it, and it stays until one leaves.
 * Without this script, and by touch, the link leads to the page that says the same.
 */
import type { StateLine } from '../site/views/register/state-words.ts';

declare global {
  /** By position; loaded when the first is asked for. */
  var asfoundStates: Readonly<Record<string, StateLine>> | undefined;
}

/** A pointer that only passes over asks for nothing, and one on its way from the link to the words has time to arrive. */
const REST_MS = 250;
const NAMED = '.prose a[href*="parts/"]:not(:has(img))';
const DATA = new URL('../states/positions.js', (document.currentScript as HTMLScriptElement).src).href;

const words = document.createElement('div');
let link: HTMLAnchorElement | null = null;
let waiting = 0;

function loaded(then: () => void): void {
  if (globalThis.asfoundStates) {
    then();
    return;
  }
  const script = document.createElement('script');
  script.src = DATA;
  script.addEventListener('load', then);
  document.head.append(script);
}

function show(of: HTMLAnchorElement): void {
  const id = /\/?([^/]+)\.html$/.exec(new URL(of.href).pathname)?.[1] ?? '';
  const states = globalThis.asfoundStates ?? {};
  const state = Object.hasOwn(states, id) ? states[id] : undefined;
  if (state === undefined || of !== link) return;
  const name = document.createElement('b');
  name.textContent = state[0];
  words.replaceChildren(name, ` ${state[1]}`);
  words.hidden = false;
  of.setAttribute('aria-describedby', words.id);
  place(of);
}

/** Under the link, or above it where the window ends; never past its edges. */
function place(of: HTMLAnchorElement): void {
  const { left, top, bottom } = of.getBoundingClientRect();
  const below = bottom + words.offsetHeight <= document.documentElement.clientHeight;
  const most = document.documentElement.clientWidth - words.offsetWidth - 8;
  words.style.setProperty('left', `${Math.max(8, Math.min(left, most)) + scrollX}px`);
  words.style.setProperty('top', `${(below ? bottom : top - words.offsetHeight) + scrollY}px`);
}

function hide(): void {
  clearTimeout(waiting);
  words.hidden = true;
  link?.removeAttribute('aria-describedby');
  link = null;
}

function ask(of: HTMLAnchorElement, after: number): void {
  clearTimeout(waiting);
  waiting = window.setTimeout(() => {
    if (of === link) return;
    hide();
    link = of;
    loaded(() => show(of));
  }, after);
}

const later = (): void => {
  clearTimeout(waiting);
  waiting = window.setTimeout(hide, REST_MS);
};

words.id = 'state-of-it';
words.className = 'state-of-it on-screen';
words.role = 'tooltip';
words.hidden = true;
words.addEventListener('pointerenter', () => clearTimeout(waiting));
words.addEventListener('pointerleave', later);

for (const named of document.querySelectorAll<HTMLAnchorElement>(NAMED)) {
  named.addEventListener('pointerenter', ({ pointerType }) => pointerType !== 'touch' && ask(named, REST_MS));
  named.addEventListener('pointerleave', () => (named === document.activeElement && named === link ? undefined : later()));
  named.addEventListener('focus', () => named.matches(':focus-visible') && ask(named, 0));
  named.addEventListener('blur', later);
}
addEventListener('keydown', ({ key }) => {
  if (key === 'Escape') hide();
});
document.body.append(words);
