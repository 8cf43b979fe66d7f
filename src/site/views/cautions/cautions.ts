/**
 * The usual cautions by hazard, with where each was taken from. They are short on purpose and never instructions for
 * the work.
 */
import type { Hazard } from '../../../journal/model.ts';

/** Where a caution comes from. */
export interface CautionSource {
  readonly name: string;
  /** Of an authority's own page; null for what has none. */
  readonly address: string | null;
  /** `read`: the authority's text was read, on its page or in a copy; `memory`: recalled; `practice`: common in the trade. */
  readonly standing: 'read' | 'memory' | 'practice';
}

export interface Caution {
  readonly what: string;
  readonly text: string;
  readonly sources: readonly CautionSource[];
}

const read = (name: string, address: string | null = null): CautionSource => ({ name, address, standing: 'read' });
const recalled = (name: string): CautionSource => ({ name, address: null, standing: 'memory' });
const practice = (name: string): CautionSource => ({ name, address: null, standing: 'practice' });

export const CAUTIONS: Readonly<Record<Hazard, Caution>> = {
  asbestos: {
    what: 'Brake and clutch linings, old gaskets, lagging',
    text: 'Assume asbestos. No compressed air, no dry brushing: wet methods only. Have suspect material tested, and removed by a licensed firm. Have work on brakes checked by a competent person before the road.',
    sources: [read('US EPA, best practices for brake and clutch repair'), recalled('HSE, gaskets'), practice('checking of brakes')],
  },
  'lead-paint': {
    what: 'Old paint and filler',
    text: 'It may hold lead and chromium. No dry sanding and no burning off; a hot-air gun only where the authority allows it and below 450 °C, never hot enough to smoke. Children and pregnant women stay away until all is cleaned up. Extraction or wet methods, a mask of class P3 that fits, and wash before eating.',
    sources: [
      read('NIOSH, control of dust from sanding in autobody repair'),
      read('HSE tips for decorators on old lead paint, in a trade paper'),
      recalled('HSE and US EPA, hot-air guns, children, class of mask'),
    ],
  },
  isocyanates: {
    what: 'Two-pack paint',
    text: 'Spray only in a booth, with air-fed breathing apparatus.',
    sources: [read('HSE, isocyanates in motor vehicle repair')],
  },
  'fuel-vapour': {
    what: 'Petrol and its vapour',
    text: 'Drain with a fuel retriever. The vapour is heavier than air and gathers in pits and low places; keep every flame and spark away.',
    sources: [read('HSE, safe use of petrol in garages'), practice('flame and spark')],
  },
  'hot-work': {
    what: 'Heat and welding',
    text: 'No heat on a tank or pipe that has not been cleaned and made gas-free by someone competent. All welding fume can cause lung cancer; galvanised metal gives off zinc oxide. No welding on what a chlorinated cleaner has been on: it gives off phosgene.',
    sources: [
      read('HSE, hot work on tanks'),
      read('HSE, welding fume'),
      read('US OSHA, chemicals of welding', 'https://www.osha.gov/welding-cutting-brazing/chemicals'),
    ],
  },
  'stored-energy': {
    what: 'Springs, struts and whatever is wound up',
    text: 'They hold energy after the weight is off. Restrain before undoing.',
    sources: [practice('springs and struts')],
  },
  pressure: {
    what: 'Pressure',
    text: 'Let it down and let it cool before opening. A can or bottle under pressure bursts when it is heated.',
    sources: [practice('pressure')],
  },
  lifting: {
    what: 'Under the vehicle, lifting and support',
    text: 'Never under a vehicle that is held by a jack alone: axle stands, on firm ground.',
    sources: [read('HSE, INDG434')],
  },
  battery: {
    what: 'Batteries',
    text: 'The acid burns eyes and skin: gloves and goggles, and rinse at once with much water. A short circuit burns and welds tools fast: no rings or watches, insulated tools, the earth lead off first and on last. Charge where it is well ventilated; no flame or spark near.',
    sources: [read('HSE, using electric storage batteries safely (INDG139)'), practice('the earth lead')],
  },
  'brake-fluid': {
    what: 'Brake fluid',
    text: 'It softens paint: wipe and rinse at once. Keep to one specification. Have work on brakes checked by a competent person before the road.',
    sources: [read('a trade textbook'), practice('checking of brakes')],
  },
  coolant: {
    what: 'Coolant',
    text: 'Ethylene glycol is poisonous and tastes sweet: keep it from children and animals. A hot system is under pressure.',
    sources: [read('US EPA, ethylene glycol'), practice('pressure')],
  },
  'oily-rags': {
    what: 'Rags with linseed and other drying oils',
    text: 'They heat themselves and catch fire, hours later. Never in a heap or a bin, and not indoors: spread out or hang up to dry in the open, or soak in water in a closed bag or a lidded metal tin.',
    sources: [
      read(
        'Buckinghamshire Fire and Rescue Service, rags that caught fire',
        'https://bucksfire.gov.uk/incident/linseed-oil-soaked-rags-self-combusting/',
      ),
    ],
  },
  'exhaust-gas': {
    what: 'An engine that runs',
    text: 'Exhaust holds carbon monoxide, which kills unnoticed. Run it in the open, or with the tail pipe led to the open air; an open door is not enough. Never alone in a closed garage.',
    sources: [
      read('HSE, vehicle exhaust emissions', 'https://www.hse.gov.uk/mvr/mechanical-repair/exhaust.htm'),
      practice('alone in a garage'),
    ],
  },
  solvents: {
    what: 'Solvents and cleaners',
    text: 'The vapour burns and makes drowsy. No flame, stove, hot-air gun or spark near; fresh air; lids on. A chlorinated cleaner with heat or a welding arc gives off phosgene.',
    sources: [
      read(
        'HSE, explosive atmospheres in motor vehicle repair (OC 803/71)',
        'https://www.hse.gov.uk/foi/internalops/ocs/800-899/803_71/803_71id.htm',
      ),
      read('US OSHA, chemicals of welding', 'https://www.osha.gov/welding-cutting-brazing/chemicals'),
    ],
  },
  dust: {
    what: 'Dust of wood, of sanding and of blasting',
    text: 'Hardwood dust can cause cancer of the nose, any wood dust asthma; silica and lead harm the lungs and more. Extraction where it arises, wet methods or a vacuum cleaner, no dry sweeping or blowing. No sand with free silica for blasting. A mask of class FFP3 that fits.',
    sources: [
      read('HSE, wood dust', 'https://www.hse.gov.uk/woodworking/wooddust.htm'),
      recalled('HSE, silica in blasting, class of mask'),
    ],
  },
  plating: {
    what: 'Plating, and parts that were plated',
    text: 'Baths of cyanide, chromate and cadmium are for a licensed firm. Acid and cyanide never meet. Never weld, braze or heat cadmium plating: the fume kills.',
    sources: [recalled('HSE, electroplating and cadmium')],
  },
  'burnt-seals': {
    what: 'Seals and gaskets that have burnt',
    text: 'Some rubbers (fluoroelastomers) give off hydrogen fluoride when they char. The authority knows of no injury from a burnt vehicle, and the acid burns deep: gloves, much water, and a doctor at once for any burn.',
    sources: [read('HSE, fluoroelastomers', 'https://www.hse.gov.uk/mvr/topics/fluoroelastomers.htm'), practice('gloves and water')],
  },
  'light-metal': {
    what: 'Magnesium and aluminium',
    text: 'Swarf and dust of magnesium burn, and water makes it worse: dry sand or the extinguisher for metals. Caustic on aluminium gives off hydrogen.',
    sources: [recalled('fire authorities, metal fires'), recalled('caustic on aluminium')],
  },
  'luminous-dials': {
    what: 'Luminous dials, and switches with mercury',
    text: 'Old luminous paint may hold radium, glowing or not: do not open, scrape or clean it; ask the authority. Mercury: do not heat it, do not sweep it.',
    sources: [read('US EPA, radioactive antiques', 'https://nepis.epa.gov/Exe/ZyPURL.cgi?Dockey=P100K4AN.txt'), recalled('mercury')],
  },
};

/** Said wherever a caution stands. */
export const COMPETENT_FIRST =
  'Local law and a licensed or competent person come first. These are the usual cautions, not instructions for the work.';

const STANDINGS: Readonly<Record<CautionSource['standing'], string>> = {
  read: '',
  memory: ' (from memory)',
  practice: ' (common practice)',
};

/** How far a source is to be trusted, in words that follow its name; none where it was read. */
export function standingWords({ standing }: CautionSource): string {
  return STANDINGS[standing];
}
