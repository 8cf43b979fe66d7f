/**
 * A page that would be too long to be read on a telephone goes on on further pages: `stores.2.html` after `stores.html`. No
 * other page has a dot in its name. The first says what stands on which, and has a line for every anchor of the others, so that
 * a link to the whole arrives where it did.
 */
import { basename } from 'node:path/posix';
import { type Element, elementAt, idsIn, wordsOf } from './elements.ts';
import { type Leaf, leavesOf } from './leaves.ts';

/** No page of the site is to have more bytes of HTML. */
export const MOST_BYTES = 300_000;
/** Characters of what is set on one; the rest is for its frame, for the list of the others, and for what takes several bytes. */
const MOST_ON_A_LEAF = 200_000;
const LONGEST_NAME = 40;
/** The list of anchors has no names where they would fill the page. */
const MOST_OF_NAMES = 220_000;
/** However long that list is, the page begins with something of its own. */
const LEAST_ON_THE_FIRST = 10_000;

/** @returns its files by name, the page itself first; the page as it is where it is short, or where there is no place to cut it */
export function cutPage(name: string, html: string): readonly (readonly [name: string, html: string])[] {
  const main = elementAt(html, Math.max(0, html.indexOf('<main')));
  if (main === null || main.name !== 'main') return [[name, html]];
  const leaves = leavesInRoom(name, html, main);
  if (leaves.length < 2) return [[name, html]];
  const names = leaves.map((_, n) => leafName(name, n));
  const files = names.map((one) => basename(one));
  const owner = new Map(leaves.flatMap(({ html: leaf }, n) => idsIn(leaf).map((id) => [id, n] as const)));
  const [before, after] = [html.slice(0, main.from) + main.open, html.slice(main.to - '</main>'.length)];
  const title = /<h1[^>]*>([\s\S]*?)<\/h1>/.exec(leaves[0]?.html ?? '')?.[1] ?? '';
  return leaves.map((leaf, n) => {
    const body =
      n === 0
        ? firstLeaf(leaves, files)
        : `<h1>${title}, ${n + 1} of ${leaves.length}</h1>${steps(files, n, 'Other pages of it')}${leaf.html}${steps(files, n, 'On from here')}`;
    const page = n === 0 ? withScript(before) : before.replace(/<title>/, `<title>${n + 1} of ${leaves.length}: `);
    return [names[n] ?? name, page + led(body, n, owner, files) + after] as const;
  });
}

/** The first leaf has the less room, the more anchors the others have. */
function leavesInRoom(name: string, html: string, main: Element): Leaf[] {
  const other = MOST_ON_A_LEAF;
  const leaves = leavesOf(html, main, { first: other, other });
  const list = anchorsOf(
    leaves,
    leaves.map((_, n) => leafName(name, n)),
  ).length;
  const room = MOST_BYTES - 40_000 - list * 1.1;
  return room >= other ? leaves : leavesOf(html, main, { first: Math.max(LEAST_ON_THE_FIRST, room), other });
}

/** The file of one leaf of a page; the first is that of the page. */
export const leafName = (name: string, n: number): string => (n === 0 ? name : name.replace(/\.html$/, `.${n + 1}.html`));

function firstLeaf(leaves: readonly Leaf[], files: readonly string[]): string {
  const [first] = leaves;
  const whole = (first?.html ?? '').replace(/<(form|p)(?=[^>]*\sdata-of-whole)[^>]*>[\s\S]*?<\/\1>/g, '');
  const list = leaves
    .map(({ html, under }, n) => (n === 0 ? '' : `<li><a href="${files[n]}">${n + 1}: ${beginningOf(html, under)}</a></li>`))
    .join('');
  const rest = `<nav class="goes-on" aria-label="The rest of it"><p class="note">This is the first of ${leaves.length} pages. It goes on with:</p><ul class="running">${list}</ul></nav>`;
  return `${whole.replace(/<\/h1>(?:\s*<p class="standfirst">[\s\S]*?<\/p>)?/, (head) => head + rest)}${anchorsOf(leaves, files)}<nav class="steps" aria-label="Other pages of it"><span></span><a rel="next" href="${files[1]}">It goes on: 2 of ${leaves.length}</a></nav>`;
}

function beginningOf(html: string, under: readonly string[]): string {
  const head = under.at(-1) ?? wordsOf(/<h[2-6][^>]*>([\s\S]*?)<\/h[2-6]>/.exec(html)?.[1] ?? '');
  return head === '' ? 'what follows' : shortened(head);
}

/** A line for each anchor of the further pages, at home under its old name. */
function anchorsOf(leaves: readonly Leaf[], files: readonly string[]): string {
  const found = leaves.flatMap(({ html }, n) => (n === 0 ? [] : anchorsIn(html).map((one) => ({ ...one, file: files[n] ?? '' }))));
  if (found.length === 0) return '';
  const named = found.reduce((sum, { id, name }) => sum + 2 * id.length + name.length + 50, 0) <= MOST_OF_NAMES;
  const lines = found.map(
    ({ id, name, file }) => `<li id="${id}"><a href="${basename(file)}#${encodeURIComponent(id)}">${named ? name : id}</a></li>`,
  );
  return `<nav class="goes-on" aria-label="What stands where on them"><h2>On the further pages</h2><ul class="running">${lines.join('')}</ul></nav>`;
}

function anchorsIn(html: string): { readonly id: string; readonly name: string }[] {
  return [...html.matchAll(/<([a-z][a-z0-9]*)\b[^>]*?\sid="([^"]+)"[^>]*>/g)].flatMap((found) =>
    IN_DRAWINGS.has(found[1] ?? '') ? [] : [{ id: found[2] ?? '', name: nameAt(html, found) }],
  );
}

/** What only the drawing that it is in refers to. */
const IN_DRAWINGS = new Set([
  'pattern',
  'marker',
  'symbol',
  'defs',
  'path',
  'g',
  'rect',
  'line',
  'circle',
  'use',
  'mask',
  'filter',
  'stop',
]);

/** What an element with an anchor begins with. */
function nameAt(html: string, found: RegExpExecArray): string {
  const rest = html.slice(found.index, found.index + 1500);
  const words = wordsOf(
    /^<(?:section|div|li|tbody)[^>]*>[\s\S]*?<(h[2-6]|th|a|b|summary)\b[^>]*>([\s\S]*?)<\/\1>/.exec(rest)?.[2] ??
      rest.replace(/<[^>]*$/, ''),
  );
  return words === '' ? (found[2] ?? '') : shortened(words);
}

/** At a space, and never within an escaped character. */
function shortened(words: string): string {
  return words.length <= LONGEST_NAME
    ? words
    : `${words.slice(0, words.lastIndexOf(' ', LONGEST_NAME) || LONGEST_NAME).replace(/&[^;\s]*$/, '')} …`;
}

function steps(files: readonly string[], n: number, label: string): string {
  const [back, on] = [files[n - 1], files[n + 1]];
  const next = on === undefined ? '<span></span>' : `<a rel="next" href="${on}">After: ${n + 2} of ${files.length}</a>`;
  return `<nav class="steps" aria-label="${label}"><a rel="prev" href="${back}">Before: ${n} of ${files.length}</a><a href="${files[0]}">All of them</a>${next}</nav>`;
}

/** Links to what stands on another leaf lead there. */
function led(html: string, here: number, owner: ReadonlyMap<string, number>, files: readonly string[]): string {
  return html.replace(/\shref="#([^"]+)"/g, (link, fragment: string) => {
    const there = owner.get(decodeURIComponent(fragment));
    return there === undefined || there === here ? link : ` href="${files[there]}#${fragment}"`;
  });
}

/** Whoever comes by a link to what stands further on is led there at once. */
function withScript(before: string): string {
  const [, up = ''] = /<link[^>]*href="((?:\.\.\/)*)css\//.exec(before) ?? [];
  return before.replace('</head>', () => `<script defer src="${up}scripts/go-on.js"></script></head>`);
}
