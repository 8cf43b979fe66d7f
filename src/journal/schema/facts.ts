import * as z from 'zod';
import type { Sort } from '../diagnostics/diagnostic.ts';

/** What is known of a field besides the kind of its value. Said on the schema, and asked wherever it matters. */
export interface Facts {
  /** A text that the kind takes: with it in the place of a value with a fault the rest of the entry is still looked through. */
  readonly standIn?: string;
  /** It says what its entry means, though it may be absent: with a fault in it the entry is not believed. */
  readonly decisive?: boolean;
  /** Its value is prose, in which marks of the YAML are likely to be meant as letters. */
  readonly prose?: boolean;
  /** An entry of which only a text is written says this field by it. */
  readonly alone?: string;
  /** Several may be named; the entry then says the same of each. */
  readonly several?: boolean;
  /** Its name is an everyday word, and in the text of any other field it is one. */
  readonly everyday?: boolean;
  /** Its entries put stock on a shelf, or say what is there. */
  readonly stock?: boolean;
  /** Its entries bring names of this sort: what stands in a list of texts, the names of a group by name, else what an entry names of this sort. */
  readonly brings?: Sort;
  /** What it names comes into the journal elsewhere, and not by the entry that it stands in. */
  readonly elsewhere?: boolean;
  /** What its text names: the first sort that has such a name. */
  readonly names?: Naming;
  /** What the names of a group by name name. */
  readonly keys?: readonly Sort[];
  /** The words that its text is one of. Capitals, and a space for a hyphen, make no other word. */
  readonly words?: readonly string[];
  /** How its text is written, for people: `YYYY-MM-DD`. */
  readonly form?: string;
  /** What a form asks for, where that is more than a line of text. */
  readonly writtenAs?: WrittenAs;
  /** What notes call others of its kind is offered, and anything else may be written. */
  readonly offers?: Offered;
  /** An evening without it is rare. */
  readonly everyEvening?: boolean;
  /** A list for which one value may stand that is in none. */
  readonly oneOrMany?: boolean;
}

/**
 * `clock`: a range of the clock, or a length of time; `place`: a spot or a box in a picture; `new-id`: an id that is made here;
 * the files lie by the note, a paper in papers/ too.
 */
export type WrittenAs = 'day' | 'number' | 'clock' | 'place' | 'new-id' | 'picture-file' | 'paper-file';

/** What is called by no id, and told by its words alone. */
export type Offered = 'firms';

/** Sorts of names, which may hang on what else the entry says, as it is written. */
export type Naming = readonly Sort[] | ((entry: Readonly<Record<string, unknown>>) => readonly Sort[]);

const FACTS = z.registry<Facts>();

/** The same kind of value, of which more is known. */
export function having<T extends z.ZodType>(kind: T, facts: Facts): T {
  const known = kind.clone();
  FACTS.add(known, facts as never);
  return known;
}

/** What is known of a field, said of it as a whole or of the kind it holds. */
export function factsOf(kind: z.core.$ZodType | undefined): Facts {
  if (kind === undefined) return {};
  const { innerType } = kind._zod.def as { innerType?: z.core.$ZodType };
  return { ...factsOf(innerType), ...FACTS.get(kind) };
}

/** @see Facts.decisive */
export const decisive = <T extends z.ZodType>(kind: T): T => having(kind, { decisive: true });

/** A kind of text that names something. @see Facts.names */
export const naming = <T extends z.ZodType>(kind: T, names: Naming): T => having(kind, { names });
