import { type Diagnostic, diagnostic, unknownName } from '../diagnostics/diagnostic.ts';
import type { ActionWord, Destination, GoneHow, Journal, PartEntry, Session, Whereabouts } from '../model.ts';
import type { Replay } from './replay.ts';
import type { Seat } from './seat.ts';
import { seatFor } from './seating.ts';

/** Where an action takes a part, and what is wrong with that: it is taken there all the same. */
export interface Target {
  readonly where: Whereabouts;
  readonly seat: Omit<Seat, 'since'> | null;
  readonly problem: Diagnostic | null;
}

/** Words whose destination is `to`. */
export const GOES_TO: readonly ActionWord[] = ['removed', 'stored', 'sent-out', 'returned', 'acquired', 'made'];

/** How something goes that somebody else has then. */
const GOES_TO_SOMEBODY: readonly string[] = ['scrapped', 'sold', 'given', 'returned'];

/** Whether an entry says who has what is gone: no bag and no store. */
function goesTo({ stores }: Journal, { did, how, to: named }: PartEntry): boolean {
  if (!did.includes('gone') || how === null || !GOES_TO_SOMEBODY.includes(how)) return false;
  return named !== null && named.bag === null && named.name !== null && !stores.includes(named.name);
}

/** Where a moving action takes the part. */
export function destinationOf(replay: Replay, session: Session, entry: PartEntry, word: ActionWord): Target {
  const part = replay.journal.parts.get(entry.part);
  switch (word) {
    case 'fitted':
      return seatFor(replay, entry, entry.at ?? part?.position ?? entry.part);
    case 'gone':
      return goneTo(entry);
    case 'sent-out':
      return to({ at: 'out', firm: entry.to?.name ?? 'a firm' }, entry.to?.name ? null : noDestination(entry, word, '`to:` and the firm'));
    case 'stored':
      if (entry.to === null) return to({ at: 'stores', store: null }, noDestination(entry, word, '`to:` and a store'));
      return putDown(replay, session, entry, null);
    case 'acquired':
    case 'made':
      return putDown(replay, session, entry, part?.store ?? null);
    case 'removed':
      if (entry.to === null) return to(replay.bags.takesOff(session, entry.part) ?? { at: 'stores', store: null });
      return putDown(replay, session, entry, null);
    default:
      return putDown(replay, session, entry, null);
  }
}

function to(where: Whereabouts, problem: Diagnostic | null = null): Target {
  return { where, seat: null, problem };
}

function goneTo(entry: PartEntry): Target {
  const { how } = entry;
  if (how === null || how === 'loan' || how === 'made-safe') {
    return to(
      { at: 'gone', how: 'lost' },
      noDestination(entry, 'gone', '`how: scrapped`, `sold`, `given`, `returned`, `lost`, `stolen` or `made-into`'),
    );
  }
  if (how !== 'made-into' || entry.into.length > 0) return to({ at: 'gone', how: how satisfies GoneHow });
  return to({ at: 'gone', how }, noDestination(entry, 'gone', '`into:` and what it was made into'));
}

/** A store, or a bag that this note fills. `to` of an entry that sends the part out is the firm's, and of one with which it goes who has it now. */
function putDown(replay: Replay, session: Session, entry: PartEntry, otherwise: string | null): Target {
  const named = entry.to;
  if (entry.did.includes('sent-out') || goesTo(replay.journal, entry)) return to({ at: 'stores', store: otherwise });
  if (named === null) return to({ at: 'stores', store: otherwise });
  if (named.bag !== null) return to({ at: 'bag', bag: named.bag }, replay.bags.refuses(named.bag, session, entry));
  const { stores } = replay.journal;
  if (named.name === null || stores.includes(named.name)) return to({ at: 'stores', store: named.name });
  const unknown = unknownName('store', named.name, stores);
  const firm = firmOf(replay.journal, named.name);
  const hint = firm === null ? unknown.hint : `\`${firm}\` is a firm in these notes: say \`did: [${sentOut(entry)}]\`.`;
  const problem = diagnostic('A406', entry.place, `There is no store \`${named.name}\` in journal.yaml.`, { ...unknown, hint });
  return to({ at: 'stores', store: unknown.unknown.nearest ?? named.name }, problem);
}

/** A firm of that name, as a note writes it: one that something was sent to, was bought of, or is awaited from. */
function firmOf({ sessions }: Journal, name: string): string | null {
  const firms = sessions.flatMap(({ parts, bills, opens }) => [
    ...parts.flatMap(({ did, to: sent }) => (did.includes('sent-out') ? (sent?.name ?? []) : [])),
    ...[...bills, ...opens].flatMap(({ from }) => from ?? []),
  ]);
  return firms.find((firm) => firm.toLowerCase() === name.toLowerCase()) ?? null;
}

function sentOut({ did }: PartEntry): string {
  return [...did.filter((word) => word !== 'stored'), 'sent-out'].join(', ');
}

function noDestination(entry: PartEntry, word: ActionWord, what: string): Diagnostic {
  const said = word === 'gone' ? `\`${entry.part}\` is gone` : `\`${entry.part}\` was ${word.replace('-', ' ')}`;
  const missing = word !== 'gone' ? 'where to' : entry.how === 'made-into' ? 'what was made of it' : 'how';
  return diagnostic('A510', entry.place, `${said}, and the entry does not say ${missing}.`, { hint: `Add ${what}.` });
}

/** A `to` that no action of the entry goes by: a move was meant and not recorded. */
export function idleDestination(journal: Journal, entry: PartEntry): Diagnostic | null {
  if (entry.to === null || entry.did.some((word) => GOES_TO.includes(word)) || goesTo(journal, entry)) return null;
  const message = `\`to: ${destinationText(entry.to)}\` says where \`${entry.part}\` went, but no action of this entry takes it there.`;
  return diagnostic('A513', entry.place, message, { hint: idleHint(entry) });
}

function idleHint({ did, how }: PartEntry): string {
  if (!did.includes('gone')) return 'Add the action: `removed`, `stored` or `sent-out`.';
  return how !== null && GOES_TO_SOMEBODY.includes(how)
    ? 'What is gone lies nowhere here: name who has it, or say `stored` in place of `gone`.'
    : '`to` names who has it where it was `scrapped`, `sold`, `given` or `returned`; else leave it out.';
}

export function destinationText(destination: Destination): string {
  return destination.bag === null ? (destination.name ?? 'the stores') : `bag ${destination.bag}`;
}

/** True when that is the place `from` means: a bag, a store, a firm, a position, or a part that it is in. */
export function isAt(destination: Destination, where: Whereabouts): boolean {
  if (destination.bag !== null) return where.at === 'bag' && where.bag === destination.bag;
  const { name } = destination;
  switch (where.at) {
    case 'stores':
      return where.store === name;
    case 'fitted':
      return where.position === name || where.within === name;
    case 'in':
      return where.position === name || where.part === name;
    case 'out':
      return where.firm === name;
    default:
      return false;
  }
}
