/** The hatches of drawings and strips: one for each state, told apart without any colour. */
import type { Element, ElementContent } from 'hast';
import type { Origin } from '../../../journal/model.ts';
import type { PlaceKind } from '../../../journal/registers/place-state.ts';

/** Lines of a square of ten units that is set side by side. */
const HATCHES: Readonly<Record<string, readonly string[]>> = {
  original: [],
  partly: ['M0 10L10 0'],
  donor: ['M0 10L10 0', 'M0 0L10 10'],
  'earlier-replacement': ['M0 3.3L3.3 0', 'M0 10L10 0', 'M6.7 10L10 6.7'],
  reproduction: ['M0 5H10'],
  period: ['M5 0V10'],
  'new-old-stock': ['M0 5H10', 'M5 0V10'],
  new: ['M0 2.5H10', 'M0 7.5H10'],
  made: ['M2.5 0V10', 'M7.5 0V10'],
  unknown: ['M2 2H4', 'M7 7H9'],
  borrowed: ['M2 5H8'],
};

/** The origins that have a hatch, in the order in which a key lists them. */
export const HATCHED: readonly string[] = Object.keys(HATCHES);

/** @returns null for what is drawn open: nothing stands there */
export function hatchName(kind: PlaceKind, origin: Origin | null): string | null {
  switch (kind) {
    case 'original':
    case 'partly':
      return kind;
    case 'stand-in':
      return origin !== null && origin in HATCHES ? origin : 'unknown';
    default:
      return null;
  }
}

/**
 * The patterns, as they stand in a drawing.
 *
 * @param unit the side of a tile, in the drawing's own units
 */
export function hatchesIn(prefix: string, unit: number): Element {
  const children = HATCHED.map((name) => pattern(`${prefix}-${name}`, HATCHES[name] ?? [], unit, name === 'original'));
  return { type: 'element', tagName: 'defs', properties: {}, children };
}

function pattern(id: string, lines: readonly string[], unit: number, solid: boolean): Element {
  const ground: ElementContent = {
    type: 'element',
    tagName: 'rect',
    properties: { width: 10, height: 10, className: [solid ? 'solid' : 'ground'] },
    children: [],
  };
  const strokes = lines.map(
    (d): ElementContent => ({ type: 'element', tagName: 'path', properties: { d, className: ['hatch'] }, children: [] }),
  );
  return {
    type: 'element',
    tagName: 'pattern',
    properties: {
      id,
      width: 10,
      height: 10,
      patternUnits: 'userSpaceOnUse',
      patternTransform: `scale(${Number((unit / 10).toPrecision(4))})`,
    },
    children: [ground, ...strokes],
  };
}
