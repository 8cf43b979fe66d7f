/** A line drawing of the vehicle, in which shapes stand for positions. */
import type { Element } from 'hast';
import type { Place } from '../diagnostics/place.ts';
import type { PositionId } from '../schema/words.ts';

export interface Drawing {
  /** Named for its file: `side`. */
  readonly name: string;
  /** Path inside the journal. */
  readonly file: string;
  /** The drawing's own `<title>`. */
  readonly title: string | null;
  /** The drawing's own `<desc>`. */
  readonly description: string | null;
  /** Its `viewBox`: left, top, width and height in its own units. */
  readonly box: readonly [left: number, top: number, width: number, height: number];
  /** Positions that have a shape in it, each once, as they are drawn. */
  readonly positions: readonly PositionId[];
  /** The `<svg>` element, cleaned. A shape of a position carries its id as `dataPart`; no other element has a name. */
  readonly svg: Element;
}

/** A shape that is named for something, before names are resolved. */
export interface NamedShape {
  readonly name: string;
  /** It is named by `data-part`, so that a position is certainly meant. */
  readonly certain: boolean;
  readonly place: Place;
}
