import type { Place } from '../diagnostics/place.ts';
import type { IsoDate, PartId, Session } from '../model.ts';

/** A paper that a note names, in whatever field. */
export interface NamedPaper {
  /** Path inside the journal. */
  readonly file: string;
  /** `receipt`, `letter`, … as the note has it under `papers`; else by what names it: see `NAMED_BESIDE`. */
  readonly kind: string;
  readonly what: string | null;
  /** Its own date where that is written down, else that of the session. */
  readonly date: IsoDate;
  readonly dated: boolean;
  readonly shows: readonly PartId[];
  readonly place: Place;
}

/** Kinds of papers that are named by what they bear out, and not under `papers`. */
export const NAMED_BESIDE = { bill: 'bill', ground: 'ground of an opinion', valuation: 'valuation', received: 'money received' } as const;

/** Every paper of a note: one that is named twice is there twice. */
export function papersNamedIn(session: Session): readonly NamedPaper[] {
  const undated = { date: session.date, dated: false } as const;
  return [
    ...session.papers.map((paper) => ({ ...paper, date: paper.date ?? session.date, dated: paper.date !== null })),
    ...session.bills.flatMap(({ paper, from, date, lines, place }) => {
      const shows = lines.flatMap(({ charges }) => charges.flatMap(({ charge }) => charge.part ?? []));
      return named(paper, { kind: NAMED_BESIDE.bill, what: from === null ? null : `Bill from ${from}`, date, dated: true, shows, place });
    }),
    ...session.attributed.flatMap(({ paper, part, place }) =>
      named(paper, { ...undated, kind: NAMED_BESIDE.ground, what: null, shows: [part], place }),
    ),
    ...session.valued.flatMap(({ paper, of, by, place }) =>
      named(paper, { ...undated, kind: NAMED_BESIDE.valuation, what: by, shows: of === null ? [] : [of], place }),
    ),
    ...session.received.flatMap(({ paper, for: what, place }) =>
      named(paper, { ...undated, kind: NAMED_BESIDE.received, what, shows: [], place }),
    ),
  ];
}

function named(file: string | null, rest: Omit<NamedPaper, 'file'>): readonly NamedPaper[] {
  return file === null ? [] : [{ file, ...rest }];
}
