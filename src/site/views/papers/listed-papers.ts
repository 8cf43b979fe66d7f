/** Every paper of the record once, by kind and by date. */

import type { IsoDate, PartId, Session } from '../../../journal/model.ts';
import { NAMED_BESIDE, papersNamedIn } from '../../../journal/registers/named-papers.ts';
import type { SiteRecord } from '../../record.ts';
import { capital } from '../page/words.ts';

export interface ListedPaper {
  /** Path inside the journal. */
  readonly file: string;
  /** `receipt`, `letter`, … as the note has it; or by what names it, where that is not under `papers`. */
  readonly kind: string;
  readonly what: string | null;
  /** Its own date where that is written down, else that of the session it was laid in. */
  readonly date: IsoDate;
  readonly dated: boolean;
  /** Sessions that name it, oldest first. */
  readonly sessions: readonly Session[];
  readonly shows: readonly PartId[];
}

type Naming = Omit<ListedPaper, 'sessions'> & { readonly session: Session };

const KINDS: Readonly<Record<string, readonly [one: string, more: string]>> = {
  receipt: ['Receipt', 'Receipts'],
  letter: ['Letter', 'Letters'],
  photograph: ['Photograph', 'Photographs'],
  'build-sheet': ['Build sheet', 'Build sheets'],
  other: ['Another paper', 'Other papers'],
  [NAMED_BESIDE.bill]: ['Bill', 'Bills'],
  [NAMED_BESIDE.ground]: ['Ground of an opinion', 'Grounds of opinions'],
  [NAMED_BESIDE.valuation]: ['Valuation', 'Valuations'],
};

/** The head over papers of one kind, by how many there are. */
export function kindOfPapers(kind: string, count: number): string {
  const [one, more] = KINDS[kind] ?? [capital(kind), capital(kind)];
  return count === 1 ? one : more;
}

/** What tells most of the vehicle comes first, what tells of money last; other kinds stand between, in the order of their first paper. */
const FIRST: readonly string[] = ['letter', 'photograph', 'build-sheet'];
const LAST: readonly string[] = ['receipt', NAMED_BESIDE.bill, NAMED_BESIDE.received];

/** @returns kinds in the order of what matters; within each the papers of the latest date first */
export function papersByKind(record: SiteRecord): readonly (readonly [kind: string, papers: readonly ListedPaper[]])[] {
  const papers = [...Map.groupBy(namings(record), ({ file }) => file).values()].map(listed);
  const kinds = Map.groupBy(papers, ({ kind }) => kind);
  const inOrder = [...kinds].toSorted(([a], [b]) => placeOf(a) - placeOf(b));
  return inOrder.map(([kind, list]) => [kind, list.toSorted((a, b) => (a.date < b.date ? 1 : a.date > b.date ? -1 : 0))]);
}

function placeOf(kind: string): number {
  const first = FIRST.indexOf(kind);
  return first >= 0 ? first - FIRST.length : LAST.indexOf(kind) + 1;
}

function namings({ journal }: SiteRecord): Naming[] {
  return journal.sessions.flatMap((session) => papersNamedIn(session).map((paper) => ({ ...paper, session })));
}

const BESIDE: ReadonlySet<string> = new Set(Object.values(NAMED_BESIDE));

/** One paper of all that is said of it: the words under `papers` before those of a bill or of whatever else names it; its day from whichever says one. */
function listed(all: readonly Naming[]): ListedPaper {
  const described = all.find(({ kind }) => !BESIDE.has(kind)) ?? all[0];
  if (!described) throw new Error('a paper that nobody names');
  const { date, dated } = described.dated ? described : (all.find((one) => one.dated) ?? described);
  return {
    file: described.file,
    kind: described.kind,
    what: described.what,
    date,
    dated,
    sessions: [...new Set(all.map(({ session }) => session))],
    shows: [...new Set(all.flatMap(({ shows }) => shows))],
  };
}
