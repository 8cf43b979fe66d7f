/**
 * The journal of a copy as it goes along with the site, so that a reader's browser can work out any past day: what a
 * replay and the ledger need of it.
 */
import type { Place } from '../../../journal/diagnostics/place.ts';
import { ledgerOf } from '../../../journal/ledger/ledger.ts';
import type { Journal, Part, Session, Settings } from '../../../journal/model.ts';
import type { JournalRecord } from '../../../journal/record.ts';
import { replay } from '../../../journal/replay/replay.ts';
import { type Packed, packed, unpacked } from './pack.ts';

type Carried = Pick<JournalRecord, 'journal' | 'day' | 'copy'>;

/** What `recordCarried` makes the record of again. */
export function carriedJournal({ journal, day, copy }: JournalRecord): Packed {
  const carried: Carried = { journal: lightened(journal), day, copy };
  return packed(carried);
}

/** @param carried as `carriedJournal` gave it. What follows from the notes is worked out anew, as it is when a site is made. */
export function recordCarried(carried: Packed): JournalRecord {
  const { journal, day, copy } = unpacked(carried) as Carried;
  const { history } = replay(journal);
  // What is amiss with its stock was told when the site was made.
  const { ledger } = ledgerOf(journal, new Set(journal.consumables.keys()));
  return { journal, history, ledger, day, copy };
}

/** Stands for the place of a line in its note, which no page of a past day tells. */
const NOWHERE: Place = { file: '', line: 1, column: 1, endLine: 1, endColumn: 1 };

function lightened(journal: Journal): Journal {
  const { settings, sessions, parts } = journal;
  return {
    ...journal,
    settings: lightSettings(settings),
    parts: new Map([...parts].map(([id, part]) => [id, lightPart(part)])),
    sessions: sessions.map(lightSession),
    identityTables: [],
    threads: [],
    statements: [],
  };
}

function lightSettings(settings: Settings): Settings {
  const workshop = { name: null, address: null, taxNumber: null, tax: settings.workshop.tax };
  const client = { name: null, address: null, reference: null, terms: null };
  return { ...settings, workshop, client, markUp: new Map(), shows: [], copies: new Map(), front: null };
}

function lightPart(part: Part): Part {
  return { ...part, place: NOWHERE, evidence: null, marks: null, finish: null, private: null };
}

/** Pictures, prose and methods tell nothing of where a part is, of whether it failed or of what was paid. */
function lightSession(session: Session): Session {
  const unread = { pictures: [], film: [], clipsBeside: [], papers: [], methods: [], received: [], valued: [], links: [] };
  return {
    ...session,
    ...unread,
    body: '',
    datePlace: null,
    hours: session.hours.map(placeless),
    parts: session.parts.map(placeless),
    decisions: session.decisions.map(placeless),
    bills: session.bills.map((bill) => ({ ...placeless(bill), lines: bill.lines.map(placeless) })),
    used: session.used.map(placeless),
    opens: session.opens.map(placeless),
    closes: session.closes.map(placeless),
  };
}

const placeless = <Entry extends { readonly place: Place }>(entry: Entry): Entry => ({ ...entry, place: NOWHERE });
