/** Drawings: which of their shapes stand for a position. */
import type { Element } from 'hast';
import { visit } from 'unist-util-visit';
import { didYouMean, nearest } from '../diagnostics/nearest.ts';
import type { Drawing } from '../model/drawing.ts';
import type { Position, PositionId } from '../model.ts';
import type { DrawingSource } from '../read/drawing.ts';
import type { Reporter } from '../read/reporter.ts';

/** Resolves the names of shapes. One that names nothing is told where a position was surely, or almost surely, meant. In the order of their files. */
export function compileDrawings(
  drawings: readonly DrawingSource[],
  positions: ReadonlyMap<PositionId, Position>,
  out: Reporter,
): Drawing[] {
  const inOrder = drawings.toSorted((a, b) => (a.file < b.file ? -1 : 1));
  return inOrder.map(({ shapes, ...drawing }) => {
    for (const { name, certain, place } of shapes) {
      if (positions.has(name) || (!certain && nearest(name, positions.keys()) === null)) continue;
      out.report('A914', place, `The shape \`${name}\` stands for no place on the vehicle: no part makes a position of that id.`, {
        hint: didYouMean(name, positions.keys()),
      });
    }
    const drawn = [...new Set(shapes.map(({ name }) => name).filter((name) => positions.has(name)))];
    return { ...drawing, positions: drawn, svg: onlyNamed(drawing.svg, new Set(drawn)) };
  });
}

/** A copy in which only shapes of positions carry a name. */
function onlyNamed(svg: Element, drawn: ReadonlySet<string>): Element {
  const copy = structuredClone(svg);
  visit(copy, 'element', ({ properties }) => {
    if (!drawn.has(String(properties.dataPart))) delete properties.dataPart;
  });
  return copy;
}
