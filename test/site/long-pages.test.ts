import { describe, expect, it } from 'vitest';
import { cutPage, MOST_BYTES } from '../../src/site/long-pages/cut-page.ts';

const row = (n: number): string =>
  `<tr><th scope="row"><a href="parts/p-${n}.html">Position ${n}</a></th><td>${'kept as found, '.repeat(12)}</td></tr>`;
const rows = (from: number, to: number): string => Array.from({ length: to - from }, (_, n) => row(from + n)).join('');
const group = (id: string, from: number, to: number): string =>
  `<tbody id="${id}"><tr><th scope="rowgroup" colspan="2">The ${id}</th></tr>${rows(from, to)}</tbody>`;
const page = (inside: string): string =>
  `<!DOCTYPE html><html lang="en"><head><title>Register</title><link rel="stylesheet" href="css/page.css"></head><body><header>Head</header><main id="main" tabindex="-1"><h1>Register</h1>${inside}</main><footer>Foot</footer></body></html>`;
const table = (groups: string): string =>
  `<div class="scroll"><table><caption>Schedule</caption><thead><tr><th>Position</th><th>Outcome</th></tr></thead>${groups}</table></div>`;
const long = page(
  `<ul><li><a href="#brakes">Brakes</a></li><li><a href="#undecided">Undecided</a></li></ul><h2 id="schedule">Schedule</h2>${table(
    group('frame', 0, 900) + group('brakes', 900, 1800) + group('trim', 1800, 3000),
  )}<h2 id="undecided">Undecided</h2><p>None. See <a href="#frame">the frame</a>.</p>`,
);
const leaves = cutPage('register.html', long);
const rowsOf = (html: string): string[] => [...html.matchAll(/<a href="parts\/(p-\d+)\.html">/g)].map(([, id = '']) => id);

describe('a page that is too long', () => {
  it('goes on on pages that are short enough, and each row stands on one of them, in its order', () => {
    expect(long.length).toBeGreaterThan(2 * MOST_BYTES);
    expect(leaves.map(([name]) => name).slice(0, 3)).toEqual(['register.html', 'register.2.html', 'register.3.html']);
    for (const [, html] of leaves) expect(Buffer.byteLength(html)).toBeLessThan(MOST_BYTES);
    expect(leaves.flatMap(([, html]) => rowsOf(html))).toEqual(rowsOf(long));
  });

  it('has the frame of the page on each, every tag closed, and no id twice', () => {
    for (const [name, html] of leaves) {
      expect(html.startsWith('<!DOCTYPE html>') && html.endsWith('</footer></body></html>'), name).toBe(true);
      for (const tag of ['main', 'div', 'table', 'tbody', 'tr', 'ul', 'nav', 'li', 'a']) {
        expect(html.match(new RegExp(`<${tag}[\\s>]`, 'g'))?.length ?? 0, `${name} ${tag}`).toBe(
          html.match(new RegExp(`</${tag}>`, 'g'))?.length ?? 0,
        );
      }
      const ids = [...html.matchAll(/\sid="([^"]+)"/g)].map(([, id]) => id);
      expect(new Set(ids).size, name).toBe(ids.length);
    }
  });

  it('sets the head of a table and the name of a group again where they go on', () => {
    for (const [name, html] of leaves.filter(([, one]) => rowsOf(one).length > 0)) {
      expect(html, name).toContain('<caption>Schedule</caption><thead>');
      expect(html.slice(html.indexOf('<tbody')), name).toMatch(/^<tbody[^>]*><tr><th scope="rowgroup"/);
    }
  });

  it('keeps every anchor at its old address, as a line that leads to where it stands now', () => {
    const [first = ['', '']] = leaves;
    for (const id of ['schedule', 'frame', 'brakes', 'trim', 'undecided']) {
      const at = leaves.findLastIndex(([, html]) => html.includes(` id="${id}"`));
      if (at > 0) expect(first[1]).toContain(`<li id="${id}"><a href="register.${at + 1}.html#${id}">`);
      else expect(first[1]).toContain(` id="${id}"`);
    }
    expect(first[1]).toMatch(/<li id="brakes"><a href="register\.\d\.html#brakes">The brakes<\/a>/);
  });

  it('leads links within it to the page that a thing is on, from each', () => {
    const [, last = ''] = leaves.at(-1) ?? [];
    expect(last).toContain('<a href="register.html#frame">the frame</a>');
    expect(leaves[0]?.[1]).not.toMatch(/href="#(?:brakes|undecided)"/);
  });

  it('is left as it is where it is short, or where there is no place to cut it', () => {
    expect(cutPage('bags.html', page('<p>None.</p>'))).toEqual([['bags.html', page('<p>None.</p>')]]);
    const drawing = page(`<figure><svg>${'<path d="M0 0"></path>'.repeat(20_000)}</svg></figure>`);
    expect(cutPage('drawings.html', drawing)).toEqual([['drawings.html', drawing]]);
  });
});
