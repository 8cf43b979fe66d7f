/**
 * Checked against the examples of the CommonMark specification 0.31.2 (npm `commonmark-spec`): a note that
 * uses nothing of ours comes out as plain CommonMark would.
 */
import commonmark from 'commonmark-spec';
import { rehype } from 'rehype';
import { describe, expect, test } from 'vitest';
import { renderNote } from '../../src/markdown/render.ts';
import { EMPTY } from './context.ts';

interface Example {
  readonly number: number;
  readonly section: string;
  readonly markdown: string;
  readonly html: string;
}

/** Why an example is meant to come out otherwise. */
const OTHERWISE: Readonly<Record<string, (example: Example) => boolean>> = {
  'raw HTML is cleaned': ({ section, markdown }) => /HTML/.test(section) || /<(?!https?:|mailto:|[\w.+-]+@)[a-z/!?]/i.test(markdown),
  'only addresses of the web, and our own, are kept': ({ html }) => /(?:href|src)="(?!https?:|mailto:)[^"/?#]*:/i.test(html),
  'a bare address is a link': ({ section, markdown, html }) =>
    /https?:\/\/|@/.test(markdown) && !(section === 'Autolinks' && html.includes('href')),
  'no request leaves the site for a picture': ({ html }) => /src="https?:/.test(html),
};

const parser = rehype().data('settings', { fragment: true });

/** The tree of some HTML, without positions and without white space between blocks. */
function treeOf(html: string): unknown {
  return JSON.parse(JSON.stringify(parser.parse(html)), (key, value) => {
    if (key === 'position' || key === 'data') return undefined;
    const isBlank = (node: { type: string; value?: string }) => node.type === 'text' && /^\n*$/.test(node.value ?? '');
    return key === 'children' ? value.filter((node: { type: string; value?: string }) => !isBlank(node)) : value;
  });
}

/** The specification's HTML with its highest heading brought under the title of a page. */
function belowTitle(html: string): string {
  const highest = Math.min(...[...html.matchAll(/<h([1-6])>/g)].map((match) => Number(match[1])));
  return html.replace(/<(\/?)h([1-6])>/g, (_, slash, level) => `<${slash}h${Math.min(6, Number(level) - highest + 2)}>`);
}

const reasonFor = (example: Example): string | undefined => Object.keys(OTHERWISE).find((reason) => OTHERWISE[reason]?.(example));
/** The specification prints a tab as an arrow. */
const tabs = (text: string): string => text.replaceAll('→', '\t');
const examples = commonmark.tests.map((one) => ({ ...one, markdown: tabs(one.markdown), html: tabs(one.html) }));
const kept = examples.filter((example) => reasonFor(example) === undefined);

describe('CommonMark 0.31.2', () => {
  test('is covered but for what is meant to differ', () => {
    expect(examples).toHaveLength(652);
    expect(kept.length).toBeGreaterThan(500);
    for (const section of [
      'Links',
      'Images',
      'ATX headings',
      'Setext headings',
      'Emphasis and strong emphasis',
      'List items',
      'Code spans',
    ]) {
      expect(
        kept.some((example) => example.section === section),
        section,
      ).toBe(true);
    }
  });

  test.each(kept.map((example) => [example.number, example.section, example] as const))('example %i, %s', (_number, _section, example) => {
    expect(treeOf(renderNote(example.markdown, EMPTY).html)).toEqual(treeOf(belowTitle(example.html)));
  });
});
