/**
 * A drawing of the vehicle as markup: each shape of a position is a link to it, filled by what stands there. State is
 * told by line and hatch and by the title of the shape, never by colour alone.
 */
import type { Element, ElementContent, Properties } from 'hast';
import { toHtml } from 'hast-util-to-html';
import { SKIP, visit } from 'unist-util-visit';
import type { Drawing } from '../../../journal/model/drawing.ts';
import type { IsoDate, Origin, PositionId } from '../../../journal/model.ts';
import { type PlaceKind, type PlaceState, placeStateOf } from '../../../journal/registers/place-state.ts';
import { registerRowAt } from '../../../journal/registers/register.ts';
import { once } from '../../../journal/values/once.ts';
import type { RecordSheet, Sheet } from '../page/sheet.ts';
import { hatchesIn, hatchName } from './hatches.ts';

export interface DrawnOptions {
  /** The state shown is that at the end of this day; null: of the record's day. */
  readonly at: IsoDate | null;
  /** Stands before the ids in the markup, so that two drawings on a page have none in common. */
  readonly prefix: string;
}

/** @returns an `<svg>` */
export function drawnMarkup(sheet: RecordSheet, drawing: Drawing, options: DrawnOptions): string {
  const svg = structuredClone(drawing.svg);
  const [left, top, width, height] = drawing.box;
  const states = new Map(drawing.positions.map((id) => [id, placeStateOf(registerRowAt(sheet.record, id, options.at))]));
  visit(svg, 'element', (node, index, parent) => {
    const id = node.properties.dataPart;
    const state = typeof id === 'string' ? states.get(id) : undefined;
    if (typeof id !== 'string' || state === undefined || parent === undefined || index === undefined) return true;
    parent.children[index] = linked(sheet, node, id, state, options);
    return SKIP;
  });
  svg.properties = {
    ...outlines(drawing),
    viewBox: `${left} ${top} ${width} ${height}`,
    role: 'group',
    ariaLabel: drawing.title ?? drawing.name,
    className: ['drawn'],
  };
  svg.children.unshift(hatchesIn(options.prefix, width / 110));
  return toHtml(svg, { space: 'svg' });
}

function linked(sheet: Sheet, shape: Element, id: PositionId, state: PlaceState, options: DrawnOptions): Element {
  const name = `${sheet.positionName(id)}: ${state.words}`;
  fill(shape, fillOf(state.kind, state.origin, options.prefix));
  delete shape.properties.dataPart;
  const className = ['place', state.kind, ...(state.undecided ? ['asks'] : [])];
  const title: Element = { type: 'element', tagName: 'title', properties: {}, children: [{ type: 'text', value: name }] };
  return {
    type: 'element',
    tagName: 'a',
    properties: { href: sheet.toPosition(id), className },
    children: [title, shape] as ElementContent[],
  };
}

/** What has no line of its own gets a thin one: the page fills it like paper, on which it would not be seen. */
function outlines({ box: [, , width] }: Drawing): Properties {
  return { stroke: 'currentColor', strokeWidth: String(Number((width / 600).toFixed(3))) };
}

/** Markup of a drawing above this many characters is not put on the page of every position. */
const LARGEST_ON_EVERY_PAGE = 60_000;

/**
 * Where one position is: the drawing in outline, its shape made to stand out.
 *
 * @returns an `<svg>`; null where the drawing does not show it, or is too large to stand on every page
 */
export function whereDrawn(sheet: Sheet, drawing: Drawing, position: PositionId): string | null {
  if (!drawing.positions.includes(position)) return null;
  // What is in front of it would hide it, so it is drawn once more, on top of all.
  const marked: Element = {
    type: 'element',
    tagName: 'g',
    properties: { className: ['marked'] },
    children: shapesOf(drawing.svg, position),
  };
  const label = `${sheet.positionName(position)}: where it is. ${drawing.title ?? drawing.name}`;
  const properties = {
    ...outlines(drawing),
    viewBox: drawing.box.join(' '),
    preserveAspectRatio: 'xMinYMid',
    role: 'img',
    ariaLabel: label,
    className: ['drawn'],
  };
  const whole = { type: 'raw' as const, value: outlineOf(drawing) };
  const svg: Element = { ...drawing.svg, properties, children: [whole, unnamed(marked)] };
  const markup = toHtml(svg, { space: 'svg', allowDangerousHtml: true });
  return markup.length > LARGEST_ON_EVERY_PAGE ? null : markup;
}

/** All that is drawn, as markup: the same for every position. */
const outlineOf = once(({ svg }: Drawing): string => toHtml(unnamed(structuredClone(svg)).children, { space: 'svg' }));

/** Shapes that no longer say what they stand for; it is done in place. */
function unnamed(shape: Element): Element {
  visit(shape, 'element', (node) => {
    delete node.properties.dataPart;
  });
  return shape;
}

/** Where one position is, on every drawing that shows it. */
export function wherever(sheet: RecordSheet, position: PositionId): readonly string[] {
  return sheet.record.journal.drawings.flatMap((drawing) => whereDrawn(sheet, drawing, position) ?? []);
}

/** Copies of the shapes of a position, each moved as what it lies in is. */
function shapesOf(within: Element, position: PositionId): Element[] {
  return within.children.flatMap((node) => {
    if (node.type !== 'element') return [];
    const found = node.properties.dataPart === position ? [structuredClone(node)] : shapesOf(node, position);
    const { transform } = node.properties;
    if (found.length === 0 || typeof transform !== 'string' || node.properties.dataPart === position) return found;
    return [{ type: 'element', tagName: 'g', properties: { transform }, children: found }];
  });
}

/** Lines that were drawn open stay open: only what was filled is filled by state. */
function fill(shape: Element, value: string): void {
  visit(shape, 'element', (node) => {
    if (node.properties.fill !== 'none') node.properties.fill = value;
  });
}

function fillOf(kind: PlaceKind, origin: Origin | null, prefix: string): string {
  const hatch = hatchName(kind, origin);
  return hatch === null ? 'none' : `url(#${prefix}-${hatch})`;
}
