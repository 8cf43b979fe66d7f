import type { Attribution, Decision, IsoDate, Measurement, Method, Paper, PartId, Picture, SessionId } from '../model.ts';
import type { Deed, Entry, ItemHistory } from '../record.ts';
import type { FilmMark } from '../registers/film.ts';
import type { Observation } from '../registers/observations.ts';

/** One thing that happened to a part or at a position. `session` is null for what the catalogue dates. */
export type TimelineEvent = { readonly date: IsoDate; readonly session: SessionId | null } & (
  | { readonly kind: 'arrived'; readonly part: PartId }
  | { readonly kind: 'deed'; readonly deed: Deed }
  /** Something written down of a part. */
  | { readonly kind: 'observation'; readonly observation: Observation }
  | { readonly kind: 'measurement'; readonly measurement: Measurement }
  | { readonly kind: 'decision'; readonly decision: Decision }
  | { readonly kind: 'attribution'; readonly attribution: Attribution }
  | { readonly kind: 'method'; readonly method: Method }
  | { readonly kind: 'picture'; readonly picture: Picture }
  | { readonly kind: 'film'; readonly mark: FilmMark }
  | { readonly kind: 'paper'; readonly paper: Paper }
  | { readonly kind: 'opened' | 'deferred' | 'closed'; readonly item: ItemHistory }
  /** Hours (kind `labour`) and money. */
  | { readonly kind: 'entry'; readonly entry: Entry }
);

export type EventKind = TimelineEvent['kind'];

/** Events of one session stand in this order. */
export const KINDS: readonly EventKind[] = [
  'arrived',
  'deed',
  'observation',
  'measurement',
  'decision',
  'attribution',
  'method',
  'picture',
  'film',
  'paper',
  'opened',
  'deferred',
  'closed',
  'entry',
];
