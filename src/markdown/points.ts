/**
 * Places that a picture points at: numbered marks over it, and their key.
 *
 *     points: [{ at: "12,40", shows: drum, note: the crack }]
 *
 *     <svg class="points" viewBox="0 0 1200 900" aria-hidden="true"><circle …><text …>1</text></svg>
 *     <ol class="points-key"><li><a href="../parts/drum.html">Brake drum</a>: the crack</li></ol>
 */
import type { Element, ElementContent } from 'hast';
import type { PicturePlace } from '../journal/values/picture-place.ts';

/** A place with what it shows, as the page needs it. */
export interface ShownPoint {
  readonly at: PicturePlace;
  /** What is there: the name of a part and where it leads; null where only the note says. */
  readonly part: { readonly name: string; readonly href: string } | null;
  readonly note: string | null;
}

/** Marks over a picture of that size in pixels; they grow and shrink with it. Read aloud they are nothing: the key says it. */
export function pointMarks(points: readonly ShownPoint[], width: number, height: number): Element {
  const unit = Math.max(width, height) / 100;
  const marks = points.flatMap(({ at }, n) => markOf(at, n + 1, width, height, unit));
  return element('svg', { viewBox: `0 0 ${width} ${height}`, className: ['points'], ariaHidden: 'true' }, marks);
}

function markOf(at: PicturePlace, number: number, width: number, height: number, unit: number): Element[] {
  const [x, y] = [(at.x / 100) * width, (at.y / 100) * height];
  const round = (value: number) => String(Number(value.toFixed(1)));
  const area =
    at.width === null || at.height === null
      ? []
      : [
          element('rect', {
            x: round(x),
            y: round(y),
            width: round((at.width / 100) * width),
            height: round((at.height / 100) * height),
            strokeWidth: round(unit * 0.35),
          }),
        ];
  const radius = unit * 1.9;
  const [cx, cy] = [Math.min(Math.max(x, radius), width - radius), Math.min(Math.max(y, radius), height - radius)].map(round);
  return [
    ...area,
    element('circle', { cx: cx ?? '', cy: cy ?? '', r: round(radius), strokeWidth: round(unit * 0.25) }),
    element('text', { x: cx ?? '', y: round(Number(cy) + unit * 0.95), textAnchor: 'middle', fontSize: round(unit * 2.7) }, [
      text(String(number)),
    ]),
  ];
}

/** What each mark is, in their order. */
export function pointsKey(points: readonly ShownPoint[]): Element {
  return element(
    'ol',
    { className: ['points-key'] },
    points.map(({ part, note }) => {
      const name = part === null ? [] : [element('a', { href: part.href }, [text(part.name)])];
      const said = note === null ? [] : [text(part === null ? note : `: ${note}`)];
      return element('li', {}, [...name, ...said]);
    }),
  );
}

function element(tagName: string, properties: Element['properties'], children: ElementContent[] = []): Element {
  return { type: 'element', tagName, properties, children };
}

function text(value: string): ElementContent {
  return { type: 'text', value };
}
