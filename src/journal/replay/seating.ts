import { type Diagnostic, diagnostic } from '../diagnostics/diagnostic.ts';
import type { PartEntry, PartId, PositionId } from '../model.ts';
import type { Target } from './destinations.ts';
import type { Replay } from './replay.ts';
import { endOf, whereSeated } from './seat.ts';
import { whereInWords } from './words.ts';

/**
 * The place that `fitted` puts a part in. A position in another part is the one in what stands there on the vehicle, else
 * in the part that stood there last; `into` names another.
 */
export function seatFor(replay: Replay, entry: PartEntry, position: PositionId): Target {
  const outer = replay.journal.positions.get(position)?.inside ?? null;
  const [named] = entry.into;
  if (outer === null) return seatIn(replay, position, null, named === undefined ? null : onTheVehicle(entry, position, named));
  const carrier = named ?? replay.state.holderAt(outer);
  if (carrier === null) return seatIn(replay, position, outer, nothingThere(entry, position, outer));
  if (carrier === entry.part || replay.state.allInside(entry.part).includes(carrier)) {
    return seatIn(replay, position, null, inItself(entry, carrier));
  }
  return seatIn(replay, position, carrier, unfit(replay, entry, carrier, outer));
}

function seatIn({ state }: Replay, position: PositionId, carrier: PartId | null, problem: Diagnostic | null): Target {
  const seat = { position, carrier };
  return { where: whereSeated(seat, carrier === null ? null : state.whereOf(carrier)), seat, problem };
}

/** Null when the carrier is here and one thing. */
function unfit({ state, journal }: Replay, entry: PartEntry, carrier: PartId, outer: PositionId): Diagnostic | null {
  const count = journal.parts.get(carrier)?.count ?? 1;
  if (count > 1) {
    const message = `\`${entry.part}\` cannot be fitted into \`${carrier}\`: that is a lot of ${count}, and nobody knows into which.`;
    return diagnostic('A515', entry.place, message, { hint: 'Give the one that it is fitted into an entry of its own in the catalogue.' });
  }
  const where = state.whereOf(carrier);
  if (['fitted', 'stores', 'bag'].includes(endOf(where).at)) return null;
  const message = `\`${entry.part}\` cannot be fitted into \`${carrier}\`: that is ${whereInWords(where)}.`;
  const hint = `Record first how \`${carrier}\` came back, or say with \`into:\` which part for \`${outer}\` was meant.`;
  const cause = state.pilesOf(carrier)[0]?.cause;
  const related = cause ? [{ place: cause, message: `This is why ${carrier} is ${whereInWords(where)}.` }] : [];
  return diagnostic('A515', entry.place, message, { hint, related });
}

function nothingThere(entry: PartEntry, position: PositionId, outer: PositionId): Diagnostic {
  const message = `\`${entry.part}\` cannot be fitted: \`${position}\` is a place in what stands at \`${outer}\`, and nothing ever stood there.`;
  return diagnostic('A515', entry.place, message, { hint: 'Say with `into:` which part it was fitted into.' });
}

function inItself(entry: PartEntry, carrier: PartId): Diagnostic {
  const what = carrier === entry.part ? 'that is the part itself' : `that is in \`${entry.part}\``;
  const message = `\`${entry.part}\` cannot be fitted into \`${carrier}\`: ${what}.`;
  return diagnostic('A516', entry.place, message, { hint: 'Say with `into:` another part.' });
}

function onTheVehicle(entry: PartEntry, position: PositionId, named: PartId): Diagnostic {
  const message = `\`${entry.part}\` cannot be fitted into \`${named}\`: \`${position}\` is a place on the vehicle itself.`;
  return diagnostic('A515', entry.place, message, {
    hint: `Leave \`into\` out, or say \`in:\` in the catalogue entry of \`${position}\`.`,
  });
}
