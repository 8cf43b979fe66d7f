import type { Component, Origin } from '../../model.ts';

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

/** A published points table, as data: a new one is a new file beside this one and a line in the list of tables. */
export interface IdentityTable {
  readonly id: string;
  readonly title: string;
  readonly source: string;
  readonly address: string;
  /** How the source stands: when it was read, and what is not known of it. */
  readonly standing: string;
  readonly caution: string;
  /** Points needed in all. */
  readonly needed: number;
  /** Points that must come from one line. */
  readonly neededFrom: { readonly line: string; readonly points: number } | null;
  readonly lines: readonly IdentityLine[];
}
