/** What can be searched for: notes, parts with their marks, decisions, methods, measurements, open items, film marks, bags, consumables. */
import {
  type BagFilling,
  CONDITION_WORDS,
  type Part,
  type PartEntry,
  type PartId,
  type Session,
  type SubsystemId,
} from '../../../journal/model.ts';
import type { ItemHistory } from '../../../journal/record.ts';
import { filmIndex } from '../../../journal/registers/film.ts';
import { type MeasurementSeries, measurementSeries } from '../../../journal/registers/measurements.ts';
import { observationsOf } from '../../../journal/registers/observations.ts';
import { seenIn } from '../../../journal/registers/observed.ts';
import { opinionsOf } from '../../../journal/registers/origins.ts';
import { limitWords } from '../page/limits.ts';
import type { RecordSheet, Sheet } from '../page/sheet.ts';
import { shownProse } from '../page/shown-prose.ts';
import { ITEM_KIND_WORDS, ORIGIN_WORDS, RESULT_WORDS, VERDICT_WORDS } from '../page/words.ts';
import { clipAnchor, clipName } from '../pictures/film.ts';

/** One thing to find. Keys are short: a long journal has tens of thousands. */
export interface SearchDocument {
  /** Kind, as the filter has it. */
  readonly k: string;
  /** Title. */
  readonly t: string;
  /** Marks found on a part or put on it; absent where there are none. */
  readonly m?: string;
  /** Everything else that is searched. */
  readonly x: string;
  /** Link from the page of the search. */
  readonly h: string;
  /** Subsystems, by their ids with a space between; '' where it has none. */
  readonly s: string;
  /** When, as a reader sees it; '' where it has no day. */
  readonly d: string;
}

export const SEARCH_KINDS = ['session', 'part', 'decision', 'method', 'measurement', 'open item', 'film', 'bag', 'consumable'] as const;

export function searchDocuments(sheet: RecordSheet): SearchDocument[] {
  const { journal, history } = sheet.record;
  const filled = Map.groupBy(
    [...history.bags.values()].flatMap(({ fillings }) => fillings),
    (one) => one.filled.session,
  );
  return [
    ...journal.sessions.flatMap((session) => [
      ofSession(sheet, session),
      ...decisionsOf(sheet, session),
      ...methodsOf(sheet, session),
      ...bagsOf(
        sheet,
        session,
        (filled.get(session.id) ?? []).map((one) => one.filled.filling),
      ),
    ]),
    ...[...journal.parts.values()].map((part) => ofPart(sheet, part)),
    ...measurementSeries(sheet.record).map((series) => ofSeries(sheet, series)),
    ...[...history.items.values()].map((item) => ofItem(sheet, item)),
    ...filmIndex(sheet.record).clips.flatMap((clip) =>
      clip.marks.map((mark) => ({
        k: 'film',
        t: `${clipName(clip)}, ${mark.text}`,
        x: mark.parts.map(sheet.partName).join(', '),
        h: sheet.link(`film.html#${clipAnchor(clip)}`),
        s: subsystemsOf(sheet, mark.parts),
        d: sheet.figures.shortDate(mark.date),
      })),
    ),
    ...[...journal.consumables.values()].map(({ id, name, statements }) => ({
      k: 'consumable',
      t: name,
      x: statements.join(' '),
      h: sheet.toConsumable(id),
      s: '',
      d: '',
    })),
  ];
}

function ofSession(sheet: RecordSheet, session: Session): SearchDocument {
  const captions = session.pictures.map(({ caption }) => caption ?? '');
  const notes = session.parts.map(({ note }) => note ?? '');
  const touched = [
    ...session.parts.map(({ part }) => part),
    ...session.decisions.map(({ part }) => part),
    ...session.pictures.flatMap(({ shows }) => shows),
  ];
  const worked = session.hours.map(({ on }) => on.subsystem);
  return {
    k: 'session',
    t: session.title,
    x: [plainText(session.body), ...notes, ...captions].filter((text) => text !== '').join(' '),
    h: sheet.toSession(session.id),
    s: subsystemsOf(sheet, touched, worked),
    d: sheet.figures.shortDate(session.date),
  };
}

function ofPart(sheet: RecordSheet, part: Part): SearchDocument {
  const seen = observationsOf(sheet.record, part.id);
  const marks = [part.marks, ...seen.map(({ entry }) => entry.marks)].filter((text) => text !== null).join('. ');
  const condition = part.condition === null ? null : CONDITION_WORDS[part.condition];
  const opinions = opinionsOf(sheet.record, part.id);
  const origins = opinions.flatMap(({ origin, because }) => [origin === null ? null : ORIGIN_WORDS[origin], because]);
  const texts = [...seen.flatMap(({ entry }) => notedIn(entry)), part.finish, part.note, ...origins, part.numbered, condition, part.id];
  return {
    k: 'part',
    t: part.name,
    ...(marks === '' ? {} : { m: marks }),
    x: texts.filter((text) => text !== null).join('. '),
    h: sheet.toPart(part.id),
    s: part.subsystem,
    d: '',
  };
}

/** What an entry noted by name; its marks are told apart, and its note stands with the session. */
function notedIn(entry: PartEntry): string[] {
  return seenIn(entry).flatMap(({ label, words }) => (label === null || words === entry.marks ? [] : [words]));
}

function decisionsOf(sheet: RecordSheet, session: Session): SearchDocument[] {
  return session.decisions.map((decision, n) => ({
    k: 'decision',
    t: `${sheet.partName(decision.part)}: ${VERDICT_WORDS[decision.verdict]}`,
    x: decision.because ?? '',
    h: `${sheet.toSession(session.id)}#decision-${n + 1}`,
    s: subsystemsOf(sheet, [decision.part]),
    d: sheet.figures.shortDate(session.date),
  }));
}

function bagsOf(sheet: RecordSheet, session: Session, fillings: readonly BagFilling[]): SearchDocument[] {
  return fillings.map(({ bag, holds, goesBack, off }) => ({
    k: 'bag',
    t: `Bag ${bag}`,
    x: [...holds, goesBack ?? '', off === null ? '' : sheet.partName(off)].join(', '),
    h: sheet.toBag(bag),
    s: subsystemsOf(sheet, off === null ? [] : [off]),
    d: sheet.figures.shortDate(session.date),
  }));
}

function methodsOf(sheet: RecordSheet, session: Session): SearchDocument[] {
  return session.methods.map(({ how, on, with: used, material, result, note }) => ({
    k: 'method',
    t: how,
    x: [
      ...on.map(sheet.partName),
      material ?? '',
      ...used.map(sheet.consumableName),
      result === null ? '' : `result ${RESULT_WORDS[result]}`,
      note ?? '',
    ]
      .filter((text) => text !== '')
      .join(', '),
    h: sheet.toSession(session.id),
    s: subsystemsOf(sheet, on),
    d: sheet.figures.shortDate(session.date),
  }));
}

/** Everything measured of one thing on one part, found by a value as it was written, too. */
function ofSeries(sheet: RecordSheet, { part, what, readings }: MeasurementSeries): SearchDocument {
  const { position = part, subsystem = '' } = sheet.record.journal.parts.get(part) ?? {};
  const written = readings.flatMap(({ measurement: { value, as, limitsText, note } }) => [
    value.text,
    as === null ? '' : `as ${as}`,
    limitWords(limitsText),
    note ?? '',
  ]);
  const last = readings.at(-1);
  return {
    k: 'measurement',
    t: `${sheet.partName(part)}: ${what}`,
    x: written.filter((text) => text !== '').join(', '),
    h: `${sheet.toPosition(position)}#measured`,
    s: subsystem,
    d: last ? sheet.figures.shortDate(last.date) : '',
  };
}

function ofItem(sheet: Sheet, { id, opening, opened, deferred, closed }: ItemHistory): SearchDocument {
  const on = opening.on === null ? '' : sheet.charge(opening.on).name;
  return {
    k: 'open item',
    t: opening.what,
    x: [ITEM_KIND_WORDS[opening.kind], on, ...deferred.map(({ because }) => because), closed?.how ?? '']
      .filter((text) => text !== '')
      .join('. '),
    h: sheet.toItem(id),
    s: opening.on?.subsystem ?? '',
    d: sheet.figures.shortDate(opened.date),
  };
}

function subsystemsOf(sheet: RecordSheet, parts: readonly PartId[], more: readonly SubsystemId[] = []): string {
  const own = parts.map((part) => sheet.record.journal.parts.get(part)?.subsystem ?? '');
  return [...new Set([...own, ...more])].filter((id) => id !== '').join(' ');
}

/** Markdown without its marks: words to be searched, nothing else is asked of it. */
function plainText(body: string): string {
  return shownProse(body)
    .replaceAll(/!?\[([^\]]*)\]\([^)]*\)/g, '$1')
    .replaceAll(/[*_`#>|~]+/g, ' ')
    .replaceAll(/\s+/g, ' ')
    .trim();
}
