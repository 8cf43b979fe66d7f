import type { IdentityTable } from '../identity.ts';
import { UK_EIGHT_POINTS } from './uk-eight-points.ts';

/** Every points table that the register answers, in the order pages show them. */
export const IDENTITY_TABLES: readonly IdentityTable[] = [UK_EIGHT_POINTS];
