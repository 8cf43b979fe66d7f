import type { Component, Origin } from '../../schema/words.ts';

/** One thing that a line asks for. */
export interface IdentityNeed {
  /** `front`; null where the line asks for one thing only. */
  readonly what: string | null;
  /** Every position that carries one of these words answers it, and all of them must. */
  readonly components: readonly Component[];
}

/** One line of a published points table: its points are earned when all it asks for is there. */
export interface IdentityLine {
  readonly id: string;
  /** The line's words. */
  readonly words: string;
  readonly points: number;
  readonly needs: readonly IdentityNeed[];
  /** Origins that count. */
  readonly origins: readonly Origin[];
  /** The rule says unmodified: work that cut or changed the part is named as a question. */
  readonly unmodified: boolean;
}

/** Stands with every table, whoever published it. */
export const AUTHORITY_DECIDES =
  'This page counts what the record says. Whether a vehicle keeps its identity is for the licensing authority alone to decide; ask it, and ask which rule is in force.';

/**
 * A published points table, as data. A journal brings its own as `identity/<name>.yaml`; those that come with the
 * program are files beside this one and a line each in the list of tables.
 */
export interface IdentityTable {
  readonly id: string;
  readonly title: string;
  readonly source: string;
  readonly address: string | null;
  /** Which vehicles the authority made it for; null where the table does not say. */
  readonly vehicles: string | null;
  /** How the source stands: when it was read, and what is not known of it. */
  readonly standing: string;
  readonly caution: string;
  /** Points needed in all. */
  readonly needed: number;
  /** Points that must come from one line. */
  readonly neededFrom: { readonly line: string; readonly points: number } | null;
  readonly lines: readonly IdentityLine[];
}
