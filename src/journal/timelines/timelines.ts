/** The lives of positions and parts, as pages and exports read them. */
export type { DecisionInTime, Superseded } from './decision-history.ts';
export type { EventKind, TimelineEvent } from './event.ts';
export { eventsOfPart, eventsOfPosition } from './events.ts';
export { type Custody, type CustodySpan, type PartTimeline, partTimeline } from './part-timeline.ts';
export { type PositionTimeline, positionTimeline, type Track, type UnusedCandidate } from './position-timeline.ts';
export type { Span, Step } from './spans.ts';
