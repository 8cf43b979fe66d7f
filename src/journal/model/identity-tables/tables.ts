import type { IdentityTable } from './table.ts';
import { UK_EIGHT_POINTS } from './uk-eight-points.ts';

/** The points tables that come with the program. */
export const IDENTITY_TABLES: readonly IdentityTable[] = [UK_EIGHT_POINTS];
