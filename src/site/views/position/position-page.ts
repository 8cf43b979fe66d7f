/** A position's page: its life, what is shown of it, and what it took. */

import { costOfPosition } from '../../../journal/ledger/of-position.ts';
import type { Hazard, Part, PartId, PositionId, Session } from '../../../journal/model.ts';
import { type CameShort, cameShortOf } from '../../../journal/registers/came-short.ts';
import { hazardsOfPart, hazardsOfParts } from '../../../journal/registers/hazards.ts';
import { stayedWith } from '../../../journal/registers/keepers.ts';
import type { QuotedWork } from '../../../journal/registers/quoted.ts';
import { whereaboutsAt } from '../../../journal/registers/stays.ts';
import { type PositionTimeline, positionTimeline } from '../../../journal/timelines/timelines.ts';
import { lastDayOf, monthOf } from '../../../journal/values/date.ts';
import { type AnyQuestion, shown } from '../../kept/question.ts';
import { stillDangerousOf } from '../cautions/still-dangerous.ts';
import { wherever } from '../drawings/drawn.ts';
import { keeperName } from '../keepers/keepers.ts';
import { worksQuotedOn } from '../ledger/quoted-table.ts';
import type { Markup } from '../page/html.ts';
import type { RecordSheet, Sheet } from '../page/sheet.ts';
import { type AccountName, accountName, capital, counted, sentence } from '../page/words.ts';
import { type CloseUp, closeUps } from '../pictures/points.ts';
import { shortWords } from '../stores/short-words.ts';
import { type ChronicleDay, chronicleOf, picturesIn } from './chronicle.ts';
import { comparedViews } from './compared.ts';
import { type DecisionAccount, decisionAccounts } from './decision-costs.ts';
import { type LifeDrawn, lifeDrawn } from './life-drawn.ts';
import { type LifeEvent, lifeEvents } from './life-events.ts';
import { type PartPage, partPage } from './part-page.ts';
import { type Relation, relationsOf, wayLines } from './part-relations.ts';
import { type Present, presentOf } from './present.ts';
import { trackOf } from './track.ts';

/** A piece of a picture, with the session it was taken in. */
export interface CloserView extends CloseUp {
  readonly session: Session;
}

/** A part of the position, as its section tells it. */
export interface PartShown extends PartPage {
  readonly part: Part;
  readonly relations: readonly Relation[];
}

/** Of the position's life what the page shows as it is; the rest of it is in what is drawn and told. */
export type LifeTold = Pick<PositionTimeline, 'position' | 'now' | 'decisions' | 'unused' | 'measurements'>;

/** All that the page shows, but for names. */
export interface PositionPage {
  readonly life: LifeTold;
  readonly present: Present;
  /** Where it is on the drawings that show it, as markup. */
  readonly drawings: readonly string[];
  /** Null where it would say one thing: that what was found there stands there still. */
  readonly drawn: LifeDrawn | null;
  readonly parts: readonly PartShown[];
  readonly chronicle: readonly ChronicleDay[];
  /** Pictures that can be shown, oldest first. */
  readonly shown: ReturnType<typeof picturesIn>;
  /** As found beside as left. */
  /** Pieces of pictures that point at a part of the position. */
  readonly closer: readonly CloserView[];
  readonly compared: ReturnType<typeof comparedViews>;
  readonly accounts: readonly DecisionAccount[];
  /** Work on it that was quoted for. */
  readonly quoted: readonly QuotedWork[];
  /** Nothing has been done to it, decided on it or charged to it. */
  readonly untouched: boolean;
  /** How many places, and the note of the catalogue; '' where neither is said. */
  readonly said: string;
  readonly hazards: readonly Hazard[];
  /** Of parts of which some was made safe, what is left: `Brake shoes, 2 of 4: bag 14`. */
  readonly still: readonly string[];
  /** How what belongs here goes back: the last that was written of each part. */
  readonly ways: readonly Markup[];
  /** What came back short and is still owed, a line each. */
  readonly short: readonly string[];
  /** What stayed behind when the vehicle passed on, a line each. */
  readonly stayed: readonly string[];
  /** What stands on the page under a heading of its own; empty where all of it is soon seen. */
  readonly contents: readonly (readonly [id: string, words: string])[];
}

/** A page with more days in it than this says at its head what is on it. */
const SOON_SEEN = 6;

const PAGE = shown('position page', pageOf);

export const POSITION_QUESTIONS: readonly AnyQuestion[] = [PAGE];

/** @throws Error where there is no such position */
export const positionPage = (sheet: Sheet, id: PositionId): PositionPage => sheet.ask(PAGE, id);

function pageOf(sheet: RecordSheet, id: PositionId): PositionPage {
  const { record, settings } = sheet;
  const { journal, history } = record;
  const life = positionTimeline(record, id);
  const { position, now, unused, measurements } = life;
  const decisions = life.decisions.map(({ decision }) => decision);
  const chronicle = chronicleOf(sheet, life.events);
  const pictured = picturesIn(sheet, life.events).filter(({ picture }) => record.pictures.rendition(picture.file) !== null);
  const accounts = decisionAccounts(record, id, decisions);
  // The line goes on to the end of the month, so that it is the same one all through the month.
  const track = trackOf(position, journal.parts, history.occupants.get(id) ?? [], [settings.arrived, lastDayOf(monthOf(record.day))]);
  const marked = pictured.map(({ session }, n) => ({ date: session.date, href: `#${pictureAnchor(n)}` }));
  const events = lifeEvents(sheet, life.events, life.decisions, marked);
  const parts = position.parts.flatMap((part) => journal.parts.get(part) ?? []);
  return {
    life: { position, now, decisions: life.decisions, unused, measurements },
    present: presentOf(sheet, life),
    drawings: wherever(sheet, id),
    drawn: uneventful(life, events) ? null : lifeDrawn(sheet, life, track, events),
    parts: parts.map((part) => ({ part, ...partPage(sheet, part), relations: relationsOf(sheet, part) })),
    chronicle,
    shown: pictured,
    closer: position.parts.flatMap((part) =>
      pictured.flatMap(({ picture, session }) => closeUps(sheet, picture, part).map((one) => ({ ...one, session }))),
    ),
    compared: comparedViews(pictured, (part) => journal.parts.get(part)?.position ?? part),
    accounts,
    quoted: worksQuotedOn(sheet, id),
    untouched: decisions.length === 0 && chronicle.length === 0 && costOfPosition(record, id, null).entries.length === 0,
    said: saidOf(position.count, parts.find((part) => part.id === id)?.note ?? null),
    hazards: hazardsOfParts(record, position.parts, record.day),
    still: [...stillDangerousOf(sheet, carrying(record, position.parts))].map(([part, words]) => `${sheet.partName(part)}, ${words}`),
    ways: parts.flatMap((part) => wayLines(sheet, part).slice(-1)),
    short: position.parts.flatMap((part) => cameShortOf(record, part, null).map((one) => shortLine(sheet, id, one))),
    // Of an original it is told with where that is.
    stayed: position.parts
      .filter((part) => now.originals.every((original) => original.part !== part))
      .flatMap((part) => stayedLines(sheet, id, part)),
    contents:
      chronicle.length > SOON_SEEN
        ? contentsOf(
            decisions.length + life.now.undecided > 0,
            pictured.length > 0,
            life.measurements.length > 0,
            parts.length,
            accountName(sheet),
          )
        : [],
  };
}

/** Those of some parts that carry a hazard. */
const carrying = (record: RecordSheet['record'], parts: readonly PartId[]): readonly PartId[] =>
  parts.filter((id) => hazardsOfPart(record, id, record.day).length > 0);

const uneventful = ({ gaps, occupancies, unused }: PositionTimeline, events: readonly LifeEvent[]): boolean =>
  events.length === 0 && gaps.length === 0 && unused.length === 0 && occupancies.length === 1;

/** Where a picture of the position stands on its page, by its place among them. */
export const pictureAnchor = (n: number): string => `picture-${n + 1}`;

function contentsOf(
  decided: boolean,
  pictures: boolean,
  measured: boolean,
  parts: number,
  kept: AccountName | null,
): PositionPage['contents'] {
  return [
    ['life', 'Its life'],
    ...(decided ? [['decisions', 'Decisions'] as const] : []),
    ['chronicle', 'What happened to it'],
    ...(pictures ? [['pictures', 'Pictures'] as const] : []),
    ...(measured ? [['measured', 'Measured'] as const] : []),
    ...(kept === null ? [] : [['account', kept] as const]),
    ['parts', parts === 1 ? 'The part' : 'Parts that belong here'],
  ];
}

/** On the page of its position a part needs no name, a candidate does. */
function shortLine(sheet: RecordSheet, position: PositionId, short: CameShort): string {
  return `${short.part === position ? '' : `${sheet.partName(short.part)}: `}${shortWords(sheet, short)}`;
}

/** `with Ruth Haskell-Dray, since 3 May 2031` */
function stayedLines(sheet: RecordSheet, position: PositionId, part: PartId): readonly string[] {
  return whereaboutsAt(sheet.record, part, sheet.day).flatMap(({ where }) => {
    const stayed = stayedWith(sheet.record, part, where, null);
    if (stayed === null) return [];
    return [
      `${part === position ? '' : `${sheet.partName(part)}: `}with ${keeperName(sheet, stayed.keeper)}, since ${sheet.date(stayed.since)}`,
    ];
  });
}

function saidOf(places: number, note: string | null): string {
  const words = [places > 1 ? `${capital(counted(places, 'piece'))}.` : '', sentence(note)];
  return words.filter((text) => text !== '').join(' ');
}
