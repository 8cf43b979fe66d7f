/**
 * The usual cautions by hazard, with where each was taken from. What is marked practice has no source
 * but the common practice of the trade. They are short on purpose and never instructions for the work.
 */
import type { Hazard, Part, Session } from '../../../journal/model.ts';
import type { JournalRecord } from '../../../journal/record.ts';

export interface Caution {
  readonly what: string;
  readonly text: string;
  readonly source: string;
}

export const CAUTIONS: Readonly<Record<Hazard, Caution>> = {
  asbestos: {
    what: 'Brake and clutch linings, old gaskets, lagging',
    text: 'Assume asbestos. No compressed air, no dry brushing: wet methods only. Have suspect material tested, and removed by a licensed firm.',
    source: 'US EPA, best practices for brake and clutch repair; gaskets: practice.',
  },
  'lead-paint': {
    what: 'Old paint and filler',
    text: 'It may hold lead and chromium. No dry sanding indoors; extraction and a mask; wash before eating.',
    source: 'NIOSH, control of dust from sanding in autobody repair.',
  },
  isocyanates: {
    what: 'Two-pack paint',
    text: 'Spray only in a booth, with air-fed breathing apparatus.',
    source: 'HSE, isocyanates in motor vehicle repair.',
  },
  'fuel-vapour': {
    what: 'Petrol and its vapour',
    text: 'Drain with a fuel retriever. The vapour is heavier than air and gathers in pits and low places; keep every flame and spark away.',
    source: 'HSE, safe use of petrol in garages; flame and spark: practice.',
  },
  'hot-work': {
    what: 'Heat and welding',
    text: 'No heat on a tank or pipe that has not been cleaned and made gas-free by someone competent. All welding fume can cause lung cancer; galvanised metal gives off zinc oxide.',
    source: 'HSE, hot work on tanks; HSE, welding fume.',
  },
  'stored-energy': {
    what: 'Springs, struts and whatever is wound up',
    text: 'They hold energy after the weight is off. Restrain before undoing.',
    source: 'Practice.',
  },
  pressure: {
    what: 'Pressure',
    text: 'Let it down and let it cool before opening.',
    source: 'Practice.',
  },
  lifting: {
    what: 'Under the vehicle, lifting and support',
    text: 'Never under a vehicle that is held by a jack alone: axle stands, on firm ground.',
    source: 'HSE, INDG434.',
  },
  battery: {
    what: 'Batteries',
    text: 'Charge where it is well ventilated. No flame or spark near.',
    source: 'HSE, using electric storage batteries safely.',
  },
  'brake-fluid': {
    what: 'Brake fluid',
    text: 'It softens paint: wipe and rinse at once. Keep to one specification.',
    source: 'Trade textbook.',
  },
  coolant: {
    what: 'Coolant',
    text: 'Ethylene glycol is poisonous and tastes sweet: keep it from children and animals. A hot system is under pressure.',
    source: 'US EPA; pressure: practice.',
  },
};

/** Said wherever a caution stands. */
export const COMPETENT_FIRST =
  'Local law and a licensed or competent person come first. These are the usual cautions, not instructions for the work.';

/** The hazards of a session: its own, and those of the parts it worked on. In the order of the list of hazards. */
export function hazardsOfSession({ journal }: JournalRecord, session: Session): Hazard[] {
  const found = new Set<Hazard>(session.cautions);
  for (const { part } of session.parts) for (const hazard of journal.parts.get(part)?.hazards ?? []) found.add(hazard);
  return inOrder(found);
}

/** The hazards of several parts, each once. */
export function hazardsOfParts(parts: readonly Part[]): Hazard[] {
  return inOrder(new Set(parts.flatMap(({ hazards }) => hazards)));
}

function inOrder(found: ReadonlySet<Hazard>): Hazard[] {
  return (Object.keys(CAUTIONS) as Hazard[]).filter((hazard) => found.has(hazard));
}
