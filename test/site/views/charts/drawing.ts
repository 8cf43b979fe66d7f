/** Drawings read back: as a document, and the line in one as shares of its height. */
import { parseHTML } from 'linkedom';
import { expect, test } from 'vitest';

export function readDrawing(svg: string | null): Document {
  if (svg === null) throw new Error('nothing is drawn');
  return parseHTML(`<html><body>${svg}</body></html>`).document;
}

/** The points of the line of a drawing, in px of its viewBox. */
export function pointsOfLine(svg: string | null): { readonly x: number; readonly y: number }[] {
  const path = readDrawing(svg).querySelector('.line path')?.getAttribute('d') ?? '';
  return [...path.matchAll(/(-?[\d.]+),(-?[\d.]+)/g)].map(([, x, y]) => ({ x: Number(x), y: Number(y) }));
}

/** What every drawing must be: without style, as the policy of the pages wants, and one picture with its words. */
export function keepsToThePages(svg: string | null): void {
  test('has no style of its own, as the policy of the pages wants', () => {
    expect(svg).not.toMatch(/<style|\sstyle=/i);
  });

  test('sets its figures by the style sheet: SVG 1.1 knows no tabular figures, and a checker of HTML refuses them as an attribute', () => {
    expect(svg).not.toMatch(/\sfont-variant=/);
  });

  test('is one picture with its words, and fits any width', () => {
    const labels = [...readDrawing(svg).querySelectorAll('[aria-label], [role]')];
    expect(labels.map((each) => [each.localName, each.getAttribute('role')])).toEqual([['svg', 'img']]);
    expect(labels[0]?.hasAttribute('width')).toBe(false);
    expect(labels[0]?.getAttribute('viewBox')).toMatch(/^0 0 (760|350|230) \d+$/);
  });
}
