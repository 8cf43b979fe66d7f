import type { IdentityTable } from '../identity.ts';

const ORIGINAL = { origins: ['original'], unmodified: false } as const;

/**
 * The points table for rebuilt and altered vehicles as long published in the United Kingdom.
 * Source: nidirect.gov.uk, as read; changes announced in 2025 could not be confirmed.
 * A frame that is "new and unmodified from the maker" is taken to be of origin `new-old-stock`.
 */
export const UK_EIGHT_POINTS: IdentityTable = {
  id: 'uk-eight-points',
  title: 'Eight points, five of them from the frame',
  source: 'nidirect.gov.uk: rebuilt and radically altered vehicles, table of points by major component',
  address: 'https://www.nidirect.gov.uk/',
  standing: 'As long published and read before November 2026. Changes announced in 2025 could not be confirmed.',
  caution:
    'This page counts what the record says. Whether a vehicle keeps its identity is for the licensing authority alone to decide; ask it, and ask which rule is in force.',
  needed: 8,
  neededFrom: { component: 'frame', points: 5 },
  lines: [
    {
      component: 'frame',
      words: 'Chassis, monocoque bodyshell or frame: original, or new and unmodified from the maker',
      points: 5,
      origins: ['original', 'new-old-stock'],
      unmodified: true,
    },
    { component: 'suspension', words: 'Suspension, front and back, original', points: 2, ...ORIGINAL },
    { component: 'axles', words: 'Axles, both, original', points: 2, ...ORIGINAL },
    { component: 'transmission', words: 'Transmission, original', points: 2, ...ORIGINAL },
    { component: 'steering', words: 'Steering assembly, original', points: 2, ...ORIGINAL },
    { component: 'engine', words: 'Engine, original', points: 1, ...ORIGINAL },
  ],
};
