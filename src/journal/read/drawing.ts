/**
 * A drawing of the vehicle: SVG from any vector program → shapes, cleaned like anything from outside. What can
 * draw stays; scripts, styles, links, references and everything that could load or run goes.
 */
import type { Element, ElementContent, Root } from 'hast';
import { type Schema, sanitize } from 'hast-util-sanitize';
import rehypeParse from 'rehype-parse';
import { unified } from 'unified';
import { visit } from 'unist-util-visit';
import { startOf } from '../diagnostics/diagnostic.ts';
import type { Drawing, NamedShape } from '../model/drawing.ts';
import type { Reporter } from './reporter.ts';
import type { SourceText } from './source/text.ts';

/** A drawing as it was read: which of its names are of positions is not known yet. */
export interface DrawingSource extends Omit<Drawing, 'positions'> {
  readonly shapes: readonly NamedShape[];
}

/** How things are drawn, as attributes; the same names may stand in a `style`. */
const PAINT = [
  'fill',
  'fillRule',
  'fillOpacity',
  'stroke',
  'strokeWidth',
  'strokeLinejoin',
  'strokeLinecap',
  'strokeMiterlimit',
  'strokeDasharray',
  'strokeDashoffset',
  'strokeOpacity',
  'opacity',
  'fontSize',
  'textAnchor',
];

const PLAIN_PAINT = /^(?!.*(?:url|expression|[\\<>"]))[^;{}]{1,120}$/i;

const SAFE_SVG: Schema = {
  tagNames: ['svg', 'g', 'path', 'rect', 'circle', 'ellipse', 'line', 'polyline', 'polygon', 'text', 'tspan'],
  attributes: {
    svg: ['viewBox'],
    path: ['d'],
    rect: ['x', 'y', 'width', 'height', 'rx', 'ry'],
    circle: ['cx', 'cy', 'r'],
    ellipse: ['cx', 'cy', 'rx', 'ry'],
    line: ['x1', 'y1', 'x2', 'y2'],
    polyline: ['points'],
    polygon: ['points'],
    text: ['x', 'y', 'dx', 'dy'],
    tspan: ['x', 'y', 'dx', 'dy'],
    '*': ['transform', 'dataPart', ...PAINT.map((name): [string, RegExp] => [name, PLAIN_PAINT])],
  },
  strip: ['script', 'style', 'foreignObject', 'title', 'desc', 'metadata', 'defs', 'symbol', 'image', 'use', 'a', 'animate', 'set'],
  ancestors: {},
  protocols: {},
  clobber: [],
};

const parser = unified().use(rehypeParse, { fragment: true, space: 'svg' });

/** The declaration and the document type of XML, of which a file has one each, say nothing here; blanks keep the places. */
function withoutPrologue(text: string): string {
  return [/<\?xml/, /<!DOCTYPE/i].reduce((left, mark) => {
    const start = left.search(mark);
    const end = start === -1 ? -1 : endOfMarkup(left, start);
    return end === -1 ? left : left.slice(0, start) + ' '.repeat(end - start) + left.slice(end);
  }, text);
}

/** Behind the `>` that closes it; one within brackets does not. -1 where none does. */
function endOfMarkup(text: string, start: number): number {
  const [close, open] = [text.indexOf('>', start), text.indexOf('[', start)];
  const inner = open !== -1 && open < close ? text.indexOf(']', open) : -1;
  return (inner === -1 ? close : text.indexOf('>', inner)) + 1 || -1;
}

/** Groups in groups; what goes through them one in another would fill its stack. */
const MOST_NESTED = 128;

function svgIn(text: string): Element | 'too deep' | undefined {
  let tree: Root;
  try {
    tree = parser.parse(withoutPrologue(text)) as Root;
  } catch (error) {
    if (error instanceof RangeError) return 'too deep';
    throw error;
  }
  const svg = tree.children.find((node): node is Element => node.type === 'element' && node.tagName === 'svg');
  return svg !== undefined && isTooDeep(svg) ? 'too deep' : svg;
}

function isTooDeep(svg: Element): boolean {
  let level: ElementContent[] = svg.children;
  for (let depth = 0; depth < MOST_NESTED && level.length > 0; depth += 1)
    level = level.flatMap((node) => (node.type === 'element' ? node.children : []));
  return level.length > 0;
}

/** Reads a drawing; one that is none is reported, and null. */
export function readDrawing(text: SourceText, out: Reporter): DrawingSource | null {
  const svg = svgIn(text.text);
  if (svg === 'too deep') {
    const message = `The drawing is nested more than ${MOST_NESTED} deep, which no vector program does.`;
    out.report('A913', startOf(text.file), message, { hint: 'Close each element where it ends, or save it again as plain SVG.' });
    return null;
  }
  const name = text.file.slice(text.file.lastIndexOf('/') + 1).replace(/\.svg$/i, '');
  const box = svg === undefined ? null : boxOf(svg);
  if (svg === undefined || box === null) {
    const message = svg === undefined ? 'There is no `<svg>` in this drawing.' : 'The drawing does not say how large it is.';
    out.report('A913', startOf(text.file), message, { hint: 'Save it from the vector program as plain SVG, with a `viewBox`.' });
    return null;
  }
  const shapes: NamedShape[] = [];
  visit(svg, 'element', (element) => {
    paintFromStyle(element);
    const shape = element === svg ? null : namedShape(element, text);
    if (shape === null) return;
    shapes.push(shape);
    element.properties.dataPart = shape.name;
  });
  const cleaned = sanitize(svg, SAFE_SVG) as Element;
  cleaned.properties = { viewBox: box.join(' ') };
  return { name, file: text.file, title: wordsIn(svg, 'title'), description: wordsIn(svg, 'desc'), box, shapes, svg: cleaned };
}

/** `viewBox`, else the size in whatever unit. */
function boxOf({ properties }: Element): Drawing['box'] | null {
  const written = String(properties.viewBox ?? `0 0 ${properties.width ?? ''} ${properties.height ?? ''}`);
  const [left, top, width, height] = written.split(/[\s,]+/).map(Number.parseFloat);
  const numbers = [left, top, width, height];
  if (!numbers.every((one) => one !== undefined && Number.isFinite(one)) || (width ?? 0) <= 0 || (height ?? 0) <= 0) return null;
  return numbers as unknown as Drawing['box'];
}

/** What a vector program gives by itself: a name of ours has no number run onto its kind. */
const MADE_UP =
  /^(?:svg|g|group|path|rect|circle|ellipse|line|poly(?:line|gon)|text|tspan|use|layer|defs|namedview|metadata|clip|mask|image|shape|object)[-_]?\d[-\d._]*$/i;

function namedShape({ properties, position }: Element, text: SourceText): NamedShape | null {
  const given = properties.dataPart;
  const certain = typeof given === 'string' && given !== '';
  const name = certain ? given : properties.id;
  if (typeof name !== 'string' || name === '' || (!certain && MADE_UP.test(name))) return null;
  const start = position?.start.offset ?? 0;
  return { name, certain, place: text.place(start, start + 1) };
}

/** Vector programs write paint as a style; as attributes it needs no permission. */
function paintFromStyle({ properties }: Element): void {
  if (typeof properties.style !== 'string') return;
  for (const one of properties.style.split(';')) {
    const [name = '', value = ''] = one.split(':', 2).map((piece) => piece.trim());
    const attribute = name.replace(/-([a-z])/g, (_, letter: string) => letter.toUpperCase());
    if (PAINT.includes(attribute) && value !== '') properties[attribute] = value;
  }
}

function wordsIn({ children }: Element, tag: string): string | null {
  const found = children.find((node): node is Element => node.type === 'element' && node.tagName === tag);
  const words = found === undefined ? '' : textOf(found.children).replace(/\s+/g, ' ').trim();
  return words === '' ? null : words;
}

function textOf(nodes: readonly ElementContent[]): string {
  return nodes.map((node) => (node.type === 'text' ? node.value : node.type === 'element' ? textOf(node.children) : '')).join('');
}
