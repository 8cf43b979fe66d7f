/** The lives of positions and parts, as pages and exports read them. */
export type { DecisionInTime, Superseded } from './decision-history.ts';
export type { EventKind, TimelineEvent } from './event.ts';
export { eventsOfPart, eventsOfPosition } from './events.ts';
export { type Custody, type CustodySpell, type PartTimeline, partTimeline } from './part-timeline.ts';
export { type Occupancy, type PositionTimeline, positionTimeline, type UnusedCandidate } from './position-timeline.ts';
export type { Spell, Step } from './spells.ts';
