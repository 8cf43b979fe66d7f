import type { Component } from '../../model.ts';
import type { IdentityTable } from './table.ts';
import { UK_EIGHT_POINTS } from './uk-eight-points.ts';

/** Every points table that the register answers, in the order pages show them. */
export const IDENTITY_TABLES: readonly IdentityTable[] = [UK_EIGHT_POINTS];

/** The words that `component` of a part takes: those that the tables ask for. */
export const COMPONENT_WORDS: readonly Component[] = [
  ...new Set(IDENTITY_TABLES.flatMap(({ lines }) => lines.flatMap(({ needs }) => needs.flatMap(({ components }) => components)))),
];
