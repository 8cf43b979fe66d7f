/** The parts of the record, in the order a reader would leaf through them. */
import type { PageName } from '../../addresses.ts';

export const CONTENTS: readonly { readonly page: PageName; readonly name: string }[] = [
  { page: 'home', name: 'Home' },
  { page: 'sessions', name: 'Sessions' },
  { page: 'parts', name: 'Parts' },
  { page: 'drawings', name: 'Drawings' },
  { page: 'register', name: 'Register' },
  { page: 'ledger', name: 'Ledger' },
  { page: 'items', name: 'Open items' },
  { page: 'stores', name: 'Stores' },
  { page: 'bags', name: 'Bags' },
  { page: 'consumables', name: 'Consumables' },
  { page: 'methods', name: 'Methods' },
  { page: 'measurements', name: 'Measurements' },
  { page: 'pictures', name: 'Pictures' },
  { page: 'film', name: 'Film' },
  { page: 'papers', name: 'Papers' },
  { page: 'cautions', name: 'Cautions' },
  { page: 'search', name: 'Search' },
  { page: 'about', name: 'How this record is made' },
];
