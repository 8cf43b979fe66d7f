import { type Diagnostic, diagnostic } from '../diagnostics/diagnostic.ts';
import { didYouMean } from '../diagnostics/nearest.ts';
import type { ActionWord, Destination, PartEntry, Session, Whereabouts } from '../model.ts';
import type { Replay } from './replay.ts';

/** Words whose destination is `to`. */
const GOES_TO: readonly ActionWord[] = ['removed', 'stored', 'sent-out', 'returned', 'acquired', 'made'];

/** Where a moving action takes the part, or why that cannot be said. */
export function destinationOf(replay: Replay, session: Session, entry: PartEntry, word: ActionWord): Whereabouts | Diagnostic {
  const part = replay.journal.parts.get(entry.part);
  switch (word) {
    case 'fitted':
      return { at: 'fitted', position: entry.at ?? part?.position ?? entry.part };
    case 'gone':
      return entry.how === null || entry.how === 'made-safe'
        ? noDestination(entry, word, '`how: scrapped`, `sold`, `given` or `lost`')
        : { at: 'gone', how: entry.how };
    case 'sent-out':
      return entry.to?.name ? { at: 'out', firm: entry.to.name } : noDestination(entry, word, '`to:` and the firm');
    case 'stored':
      return entry.to === null ? noDestination(entry, word, '`to:` and a store') : putDown(replay, session, entry, null);
    case 'acquired':
    case 'made':
      return putDown(replay, session, entry, part?.store ?? null);
    default:
      return putDown(replay, session, entry, null);
  }
}

/** A store, or a bag that this note fills. `to` of an entry that sends the part out is the firm's. */
function putDown(replay: Replay, session: Session, entry: PartEntry, otherwise: string | null): Whereabouts | Diagnostic {
  const { to } = entry;
  if (to === null || entry.did.includes('sent-out')) return { at: 'stores', store: otherwise };
  if (to.bag !== null) return replay.bags.refuses(to.bag, session, entry.place) ?? { at: 'bag', bag: to.bag };
  if (replay.journal.stores.includes(to.name)) return { at: 'stores', store: to.name };
  const hint = didYouMean(to.name, replay.journal.stores);
  return diagnostic('A406', entry.place, `There is no store \`${to.name}\` in journal.yaml.`, { hint });
}

function noDestination(entry: PartEntry, word: ActionWord, what: string): Diagnostic {
  const missing =
    word === 'gone'
      ? `\`${entry.part}\` is gone, and the entry does not say how.`
      : `\`${entry.part}\` was ${word.replace('-', ' ')}, and the entry does not say where to.`;
  return diagnostic('A510', entry.place, missing, {
    hint: `Add ${what}.`,
  });
}

/** A `to` that no action of the entry goes by: a move was meant and not recorded. */
export function idleDestination(entry: PartEntry): Diagnostic | null {
  if (entry.to === null || entry.did.some((word) => GOES_TO.includes(word))) return null;
  const message = `\`to: ${destinationText(entry.to)}\` says where \`${entry.part}\` went, but no action of this entry takes it there.`;
  return diagnostic('A513', entry.place, message, { hint: 'Add the action: `removed`, `stored` or `sent-out`.' });
}

export function destinationText(destination: Destination): string {
  return destination.bag === null ? destination.name : `bag ${destination.bag}`;
}

/** True when that is the place `from` means: a bag, a store, a firm or a position. */
export function isAt(destination: Destination, where: Whereabouts): boolean {
  if (destination.bag !== null) return where.at === 'bag' && where.bag === destination.bag;
  const { name } = destination;
  return (
    (where.at === 'stores' && where.store === name) ||
    (where.at === 'fitted' && where.position === name) ||
    (where.at === 'out' && where.firm === name)
  );
}
