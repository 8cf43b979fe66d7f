/** Every position's pictures as found beside as left, each pair once. */
import type { PositionId, SubsystemId } from '../../../journal/model.ts';
import { keptIn, once } from '../../../journal/values/once.ts';
import type { SiteRecord } from '../../record.ts';
import type { PictureOfSession } from '../page/long-lists.ts';
import { type ComparedView, comparedViews } from '../position/compared.ts';

/** A pair, and the positions that both of its pictures show. */
export interface Plate extends ComparedView {
  readonly positions: readonly PositionId[];
}

/** The plates of a record, in the order of the catalogue by the first position of each. */
export const platesOf: (record: SiteRecord) => readonly Plate[] = once(makePlates, ({ journal }) => journal);

/** Plates by the subsystem of their first position, in declared order. */
export function platesBySubsystem(record: SiteRecord): ReadonlyMap<SubsystemId, readonly Plate[]> {
  const of = ({ positions: [first] }: Plate) => (first && record.journal.positions.get(first)?.subsystem) ?? '';
  const groups = Map.groupBy(platesOf(record), of);
  return new Map([...record.journal.subsystems.keys()].flatMap((id) => (groups.has(id) ? [[id, groups.get(id) ?? []] as const] : [])));
}

/** Pictures that say they are as found or as left and can be shown, oldest first. */
export function shownViews({ journal, pictures }: SiteRecord): { readonly found: PictureOfSession[]; readonly left: PictureOfSession[] } {
  const all = journal.sessions.flatMap((session) => session.pictures.map((picture) => ({ picture, session })));
  const of = (view: string) => all.filter(({ picture }) => picture.view === view && pictures.rendition(picture.file) !== null);
  return { found: of('as-found'), left: of('as-left') };
}

/** The positions that a picture shows something of. */
export function positionsShown({ journal }: SiteRecord, { picture }: PictureOfSession): ReadonlySet<PositionId> {
  return new Set(picture.shows.map((part) => journal.parts.get(part)?.position ?? part));
}

function makePlates(record: SiteRecord): readonly Plate[] {
  const { positions, parts } = record.journal;
  const { found, left } = shownViews(record);
  const by = new Map<PositionId, PictureOfSession[]>();
  for (const one of [...found, ...left]) {
    for (const position of positionsShown(record, one)) keptIn(by, position, () => []).push(one);
  }
  const pairs = [...positions.keys()].flatMap((id) => comparedViews(by.get(id) ?? [], (part) => parts.get(part)?.position ?? part));
  return [...new Map(pairs.map((pair) => [`${pair.found.picture.file}\n${pair.left.picture.file}`, pair])).values()].map((pair) => {
    const others = positionsShown(record, pair.left);
    return { ...pair, positions: [...positionsShown(record, pair.found)].filter((id) => others.has(id) && positions.has(id)) };
  });
}
