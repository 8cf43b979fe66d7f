/** What the page works with. */
import type { Offered } from '../../journal/schema/facts.ts';
import type { Draft } from '../drafts.ts';
import type { FormField } from '../form.ts';
import type { Names, Use } from '../names.ts';
import type { FieldProblem } from '../problems.ts';

export interface JournalData {
  readonly title: string;
  /** Tells this journal from others that are written to at the same address. */
  readonly journal: string;
  readonly today: string;
  /** The day of an evening that is begun now: until four in the night the day before. */
  readonly evening: string;
  readonly form: readonly FormField[];
  readonly names: Names;
  /** What may be written in fields that offer something, the newest first. */
  readonly offers: Readonly<Record<Offered, readonly string[]>>;
  readonly lastParts: readonly string[];
  readonly nextBag: number;
  readonly person: string | null;
  readonly use: Use;
  readonly notes: readonly { readonly path: string; readonly date: string; readonly title: string }[];
  readonly pictures: readonly string[];
  readonly drafts: readonly Draft[];
}

export interface Kept {
  readonly kept: boolean;
  readonly draft: Draft;
  readonly problems: readonly FieldProblem[];
  readonly byHand?: boolean;
  /** The two texts, where the draft was changed meanwhile. */
  readonly mine?: string;
  readonly theirs?: string;
}

/** A field of which the file is still on this device. */
export const SENDING = 'sending/';
