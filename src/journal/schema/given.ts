import type Fraction from 'fraction.js';
import type { Place } from '../diagnostics/place.ts';

/** A value as a schema gives it out, for reading only. */
export type Given<T> = T extends Fraction
  ? T
  : T extends readonly (infer Item)[]
    ? readonly Given<Item>[]
    : T extends object
      ? { readonly [Name in keyof T]: Given<T[Name]> }
      : T;

/** An entry of a file, and where it is written. */
export type Placed<T> = Given<T> & { readonly place: Place };
