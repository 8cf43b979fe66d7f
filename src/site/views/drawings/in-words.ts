/** What a drawing shows, said in words: its places by their state, and the places that it does not show. */
import type { IsoDate, PositionId } from '../../../journal/model.ts';
import { type PlaceKind, type PlaceState, placeStateOf } from '../../../journal/registers/place-state.ts';
import { registerAt } from '../../../journal/registers/register.ts';
import { type AnyQuestion, shown } from '../../kept/question.ts';
import { recordUpTo } from '../../kept/up-to.ts';
import type { SiteRecord } from '../../record.ts';
import type { RecordSheet, Sheet } from '../page/sheet.ts';
import { drawnMarkup } from './drawn.ts';
import { hatchName } from './hatches.ts';
import { type Strip, stripsOf } from './strips.ts';

export interface PlacesInState {
  /** The hatch it is drawn with; null: drawn open. */
  readonly hatch: string | null;
  readonly kind: PlaceKind;
  /** `original`, `reproduction`, `off the vehicle` */
  readonly words: string;
  readonly places: readonly { readonly position: PositionId; readonly state: PlaceState }[];
}

const ORDER: readonly PlaceKind[] = ['original', 'partly', 'stand-in', 'off', 'missing'];
const KIND_WORDS: Readonly<Record<PlaceKind, string>> = {
  original: 'original',
  partly: 'original in part',
  'stand-in': 'stand-in',
  off: 'off the vehicle for now',
  missing: 'missing, gone, left off or elsewhere',
};

/** @param positions the places that are shown; every state that one of them is in gets a row */
export function placesByState(record: SiteRecord, positions: ReadonlySet<PositionId>, at: IsoDate | null): readonly PlacesInState[] {
  const rows = registerAt(record, at).filter(({ position }) => positions.has(position));
  const states = rows.map((row) => ({ position: row.position, state: placeStateOf(row) }));
  const groups = Map.groupBy(states, ({ state }) => `${state.kind} ${hatchName(state.kind, state.origin) ?? ''}`);
  return [...groups.values()]
    .flatMap((places) => {
      const state = places[0]?.state;
      if (state === undefined) return [];
      const hatch = hatchName(state.kind, state.origin);
      const words =
        state.kind === 'stand-in'
          ? hatch === 'unknown'
            ? 'stand-in of unknown origin'
            : (hatch ?? '').replaceAll('-', ' ')
          : KIND_WORDS[state.kind];
      return [{ hatch, kind: state.kind, words, places }];
    })
    .sort((a, b) => ORDER.indexOf(a.kind) - ORDER.indexOf(b.kind) || b.places.length - a.places.length);
}

export interface MapShown {
  readonly drawings: readonly { readonly title: string | null; readonly markup: string }[];
  /** One for each subsystem where the journal has no drawing. */
  readonly strips: readonly Strip[];
  readonly states: readonly PlacesInState[];
}

/**
 * What a map of the vehicle shows at the end of a day.
 *
 * @param at null: on the record's day
 * @param brief only the first drawing
 */
export function mapShown(sheet: Sheet, at: IsoDate | null, brief: boolean): MapShown {
  return sheet.ask(MAP, at, brief);
}

const MAP = shown('map', mapOf, ({ record }, at) => (at === null ? null : recordUpTo(record, at)));

export const MAP_QUESTIONS: readonly AnyQuestion[] = [MAP];

/** The same, worked out of the whole record. */
export function mapOf(sheet: RecordSheet, at: IsoDate | null, brief: boolean): MapShown {
  const { drawings: all, positions } = sheet.record.journal;
  const drawings = brief ? all.slice(0, 1) : all;
  const places = new Set(all.length === 0 ? positions.keys() : drawings.flatMap((drawing) => drawing.positions));
  const drawn = drawings.map((drawing, n) => ({ title: drawing.title, markup: drawnMarkup(sheet, drawing, { at, prefix: `d${n}` }) }));
  const strips = all.length === 0 ? stripsOf(sheet, at, 'strip', brief) : [];
  return { drawings: drawn, strips, states: placesByState(sheet.record, places, at) };
}

/** Places that no drawing of the journal shows, in catalogue order. */
export function undrawnPlaces({ journal }: SiteRecord): readonly PositionId[] {
  const drawn = new Set(journal.drawings.flatMap(({ positions }) => positions));
  return [...journal.positions.keys()].filter((id) => !drawn.has(id));
}
