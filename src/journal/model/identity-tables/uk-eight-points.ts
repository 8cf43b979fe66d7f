import { AUTHORITY_DECIDES, type IdentityTable } from './table.ts';

const ORIGINAL = { origins: ['original'], unmodified: false } as const;

/** A need that is answered as a whole. */
const whole = (component: string) => [{ what: null, components: [component] }];

/** Front and back, each by a word of its own; the word for both answers both. */
const bothEnds = (both: string, one: string) => [
  { what: 'front', components: [both, `${one}-front`] },
  { what: 'back', components: [both, `${one}-rear`] },
];

/**
 * The points table for radically altered vehicles as long published in the United Kingdom. Rebuilt vehicles have a rule
 * of their own there, without points. Source: nidirect.gov.uk, "Registering a radically altered vehicle", and DVLA's
 * words on rebuilt vehicles, both read in copies; changes announced in 2025 could not be confirmed.
 * A frame that is "new and unmodified from the maker" is taken to be of origin `new-old-stock`.
 */
export const UK_EIGHT_POINTS: IdentityTable = {
  id: 'uk-eight-points',
  title: 'Eight points, five of them from the frame',
  source: 'nidirect.gov.uk: Registering a radically altered vehicle, points by major component',
  address:
    'http://www.nidirect.gov.uk/index/motoring/buying-and-selling-a-vehicle/registering-a-vehicle/registering-a-radically-altered-vehicle.htm',
  vehicles:
    'For vehicles that were substantially altered from their original specification, kit conversions left out. A vehicle rebuilt to its original specification has another rule: its own chassis or bodyshell, or a new one of the same specification, and two other major components of its own. With a second-hand or altered chassis no points help.',
  standing: 'As long published and read before November 2026. Changes announced in 2025 could not be confirmed.',
  caution: AUTHORITY_DECIDES,
  needed: 8,
  neededFrom: { line: 'frame', points: 5 },
  lines: [
    {
      id: 'frame',
      words: 'Chassis, monocoque bodyshell or frame: original, or new and unmodified from the maker',
      points: 5,
      needs: whole('frame'),
      origins: ['original', 'new-old-stock'],
      unmodified: true,
    },
    {
      id: 'suspension',
      words: 'Suspension, front and back, original',
      points: 2,
      needs: bothEnds('suspension', 'suspension'),
      ...ORIGINAL,
    },
    { id: 'axles', words: 'Axles, both, original', points: 2, needs: bothEnds('axles', 'axle'), ...ORIGINAL },
    { id: 'transmission', words: 'Transmission, original', points: 2, needs: whole('transmission'), ...ORIGINAL },
    { id: 'steering', words: 'Steering assembly, original', points: 2, needs: whole('steering'), ...ORIGINAL },
    { id: 'engine', words: 'Engine, original', points: 1, needs: whole('engine'), ...ORIGINAL },
  ],
};
