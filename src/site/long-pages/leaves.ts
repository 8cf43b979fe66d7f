/**
 * Cuts what stands on a long page into leaves. A cut falls between sections, groups of a table, rows or items of a list, as
 * high up as fits; what was open is closed and opened again on the next leaf, with the headings it stands under.
 */
import { type Element, wordsOf } from './elements.ts';

export interface Leaf {
  readonly html: string;
  /** The headings it begins under, from the widest; none where it begins with a heading of its own. */
  readonly under: readonly string[];
}

/** Between whose children a page may be cut. */
const MAY_BE_CUT = new Set(['main', 'section', 'div', 'table', 'tbody', 'ul', 'ol', 'dl', 'dd', 'details', 'p']);
const HEADING = /^(?:h[2-6]|dt)$/;
/** What stands once at the head of a table or of what unfolds, and again on each leaf. */
const HEAD = new Set(['caption', 'colgroup', 'thead', 'summary']);
/** So much of the next thing stands with its heading. */
const WITH_HEADING = 4000;
/** A heading alone is no leaf. */
const LEAST = 2000;
/** A leaf emptier than this is filled before another is begun. */
const FULL_ENOUGH = 0.35;

interface Open {
  readonly element: Element;
  /** What is set again where it goes on: the head of a table, the name of a group of rows, headings. */
  again: readonly { readonly name: string; readonly html: string }[];
}

/**
 * @param html the page
 * @param main the element whose children are set into leaves
 * @param room characters to a leaf, and to the first
 */
export function leavesOf(html: string, main: Element, room: { readonly first: number; readonly other: number }): Leaf[] {
  const leaves: Leaf[] = [];
  const open: Open[] = [];
  let text = '';
  let under: readonly string[] = [];
  let fresh = true;
  let most = room.first;

  const turn = (next: Element): void => {
    // `main` itself is written by whoever sets the leaves into pages.
    const ends = open.slice(1).toReversed();
    leaves.push({ html: text + ends.map(({ element }) => `</${element.name}>`).join(''), under });
    const last = open.at(-1);
    // A heading ends what stood under its like.
    if (last && HEADING.test(next.name)) last.again = last.again.filter(({ name }) => name < next.name || HEAD.has(name));
    under = open.flatMap(({ again }) => again.flatMap(({ name, html: head }) => (HEAD.has(name) ? [] : [wordsOf(head)])));
    text = open.map(({ element, again }) => againAs(element) + again.map((one) => withoutIds(one.html)).join('')).join('');
    fresh = true;
    most = room.other;
  };
  const set = (element: Element): void => {
    text += html.slice(element.from, element.to);
    fresh = false;
    const last = open.at(-1);
    if (last) last.again = remembered(html, last, element);
  };
  const place = (element: Element, next: Element | undefined): void => {
    const size = element.to - element.from;
    const needed = HEADING.test(element.name) && next ? size + Math.min(next.to - next.from, WITH_HEADING) : size;
    if (text.length + needed <= most) {
      set(element);
      return;
    }
    const cuts = MAY_BE_CUT.has(element.name) && element.children.length > 1;
    const descends =
      (MAY_BE_CUT.has(element.name) && element.children.length > 0 && size > most) || (cuts && text.length < most * FULL_ENOUGH);
    if (!descends) {
      if (!fresh && text.length > LEAST) turn(element);
      set(element);
      return;
    }
    if (text.length > most * (1 - FULL_ENOUGH / 2) && !fresh) turn(element);
    into(element);
  };
  const into = (element: Element): void => {
    text += element.open;
    open.push({ element, again: [] });
    let at = element.from + element.open.length;
    for (const [n, child] of element.children.entries()) {
      text += html.slice(at, child.from);
      place(child, element.children[n + 1]);
      at = child.to;
    }
    text += html.slice(at, element.to);
    open.pop();
  };

  into({ ...main, open: '', to: main.to - '</main>'.length, from: main.from + main.open.length });
  return [...leaves, { html: text, under }];
}

function remembered(html: string, { element: parent, again }: Open, element: Element): Open['again'] {
  const one = { name: element.name, html: html.slice(element.from, element.to) };
  if (HEADING.test(element.name)) return [...again.filter(({ name }) => name < element.name), one];
  if (HEAD.has(element.name)) return [...again, one];
  if (parent.name === 'tbody' && /^<tr[^>]*>\s*<th[^>]*scope="rowgroup"/.test(one.html)) return [one];
  return again;
}

/** The tag again, without what stands once on a page. */
function againAs({ open }: Element): string {
  return withoutIds(open);
}

function withoutIds(html: string): string {
  return html.replace(/\s(?:id|aria-labelledby)="[^"]*"/g, '');
}
