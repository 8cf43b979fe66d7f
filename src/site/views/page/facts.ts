/** What components ask of single things, besides their names: see `Sheet.ask`. */
import type { ConsumableId, Hazard, IsoDate, ItemId, PartId, PositionId, SessionId } from '../../../journal/model.ts';
import { cameShortOf } from '../../../journal/registers/came-short.ts';
import { type Errand, errandOf } from '../../../journal/registers/errands.ts';
import { hazardsOfLying, type Lying } from '../../../journal/registers/hazards.ts';
import { type AnyQuestion, lookup } from '../../kept/question.ts';
import type { Sheet } from './sheet.ts';

const PART = lookup('part facts', ({ record: { journal } }, id: PartId) => {
  const part = journal.parts.get(id);
  return part === undefined ? null : { count: part.count, position: part.position };
});
const POSITION_COUNT = lookup('position count', ({ record: { journal } }, id: PositionId) => journal.positions.get(id)?.count ?? 1);
const SUBSYSTEMS = lookup('subsystems', ({ record: { journal } }) => [...journal.subsystems.keys()]);
const PEOPLE = lookup('people', ({ record: { journal } }) => [...journal.people.keys()]);
/** Things as words to ask with: a part, its place, the next part. */
const lyingIn = (words: readonly string[]): readonly Lying[] =>
  words.flatMap((place, index) => (index % 2 === 1 ? [{ part: words[index - 1] ?? '', place }] : []));
const HAZARDS = lookup(
  'hazards',
  ({ record }, at: IsoDate, ...words: string[]) => hazardsOfLying(record, lyingIn(words), at),
  (at) => at,
);
const ERRAND = lookup(
  'errand',
  ({ record }, part: PartId, at: IsoDate) => errandOf(record, part, at),
  (_, at) => at,
);
const CAME_SHORT = lookup(
  'came short',
  ({ record }, part: PartId, at: IsoDate) => cameShortOf(record, part, at),
  (_, at) => at,
);
const STATEMENTS = lookup(
  'hazard statements',
  ({ record: { journal } }, id: ConsumableId) => journal.consumables.get(id)?.statements ?? [],
);
const PAPER_OF_BILL = lookup('paper of bill', ({ index }, id: string) => index.bills.get(id)?.paper ?? null);
const ITEM_WORDS = lookup('item', ({ index }, id: ItemId) => index.itemsById.get(id)?.opening.what ?? id);
const PICTURE = lookup('picture', ({ record: { pictures } }, path: string) => pictures.rendition(path));
const PAPER = lookup('paper', ({ record: { pictures } }, path: string) => pictures.paper(path));
const PICTURE_OF_SESSION = lookup('picture of session', ({ index }, session: SessionId, path: string) => {
  return index.sessions.get(session)?.pictures.find(({ file }) => file === path) ?? null;
});
const PLACE_OF_PICTURE = lookup('place of picture', ({ record: { pictures }, index }, session: SessionId, path: string) => {
  const inOrder = pictures.inOrderTaken([...new Set((index.sessions.get(session)?.pictures ?? []).map(({ file }) => file))]);
  return { place: inOrder.indexOf(path) + 1, of: inOrder.length };
});

export const FACT_QUESTIONS: readonly AnyQuestion[] = [
  ...[PART, POSITION_COUNT, SUBSYSTEMS, PEOPLE, HAZARDS, ERRAND, CAME_SHORT, STATEMENTS, PAPER_OF_BILL, ITEM_WORDS],
  ...[PICTURE, PAPER, PICTURE_OF_SESSION, PLACE_OF_PICTURE],
];

/** How many there are of a part, and the position it belongs to. */
export const partFacts = (sheet: Pick<Sheet, 'ask'>, id: PartId) => sheet.ask(PART, id);

/** How many a position takes. */
export const positionCount = (sheet: Sheet, id: PositionId): number => sheet.ask(POSITION_COUNT, id);

/** In the order in which the journal declares them. */
export const subsystemsInOrder = (sheet: Sheet): readonly string[] => sheet.ask(SUBSYSTEMS);

export const peopleInOrder = (sheet: Sheet): readonly string[] => sheet.ask(PEOPLE);

/** The hazards of some parts, and of what is in them, at the end of a day. */
/** The hazards of what lies somewhere at the end of a day. */
export const hazardsOn = (sheet: Sheet, things: readonly Lying[], at: IsoDate): readonly Hazard[] =>
  sheet.ask(HAZARDS, at, ...things.flatMap(({ part, place }) => [part, place]));

/** What a part that is out is out for, at the end of a day. */
export const errandOn = (sheet: Sheet, part: PartId, at: IsoDate): Errand | null => sheet.ask(ERRAND, part, at);

/** What of a part came back short, and from whom. */
export const cameShortOn = (sheet: Sheet, part: PartId, at: IsoDate) => sheet.ask(CAME_SHORT, part, at);

/** The hazard statements of a consumable. */
export const hazardStatements = (sheet: Sheet, id: ConsumableId): readonly string[] => sheet.ask(STATEMENTS, id);

/** The path of the paper of a bill. */
export const paperOfBill = (sheet: Sheet, id: string): string | null => sheet.ask(PAPER_OF_BILL, id);

/** What an open item is, in the words in which it was opened. */
export const itemWords = (sheet: Sheet, id: ItemId): string => sheet.ask(ITEM_WORDS, id);

/** What the picture of a path becomes in the site; null where there is none. */
export const pictureAt = (sheet: Sheet, path: string) => sheet.ask(PICTURE, path);

/** What the paper of a path becomes in the site; null where there is none. */
export const paperAt = (sheet: Sheet, path: string) => sheet.ask(PAPER, path);

/** A picture as the note of a session lists it. */
export const pictureOfSession = (sheet: Sheet, session: SessionId, path: string) => sheet.ask(PICTURE_OF_SESSION, session, path);

/** Which of a session's pictures one is, in the order they were taken. */
export const placeOfPicture = (sheet: Sheet, session: SessionId, path: string) => sheet.ask(PLACE_OF_PICTURE, session, path);
