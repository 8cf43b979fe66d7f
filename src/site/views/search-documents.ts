/** What can be searched for: notes, parts with their marks, decisions, open items, film marks, bags, consumables. */
import type { Part, Session } from '../../journal/model.ts';
import { filmIndex } from '../../journal/registers/film.ts';
import { observationsOf } from '../../journal/registers/observations.ts';
import { clipAnchor, clipName } from './film.ts';
import type { Sheet } from './sheet.ts';
import { CONDITION_WORDS, ITEM_KIND_WORDS, ORIGIN_WORDS, VERDICT_WORDS } from './words.ts';

/** One thing to find. Keys are short: a long journal has tens of thousands. */
export interface SearchDocument {
  /** Kind, as the filter has it. */
  readonly k: string;
  /** Title. */
  readonly t: string;
  /** Everything else that is searched. */
  readonly x: string;
  /** Link from the page of the search. */
  readonly h: string;
  /** Subsystem, or '' where it has none. */
  readonly s: string;
  /** When, as a reader sees it; '' where it has no day. */
  readonly d: string;
}

export const SEARCH_KINDS = ['session', 'part', 'decision', 'open item', 'film', 'bag', 'consumable'] as const;

export function searchDocuments(sheet: Sheet): SearchDocument[] {
  const { journal, history } = sheet.record;
  return [
    ...journal.sessions.flatMap((session) => [ofSession(sheet, session), ...decisionsOf(sheet, session), ...bagsOf(sheet, session)]),
    ...[...journal.parts.values()].map((part) => ofPart(sheet, part)),
    ...[...history.items.values()].map(({ id, opening, opened }) => ({
      k: 'open item',
      t: opening.what,
      x: ITEM_KIND_WORDS[opening.kind],
      h: sheet.toItem(id),
      s: opening.on?.subsystem ?? '',
      d: sheet.figures.shortDate(opened.date),
    })),
    ...filmIndex(sheet.record).clips.flatMap((clip) =>
      clip.marks.map((mark) => ({
        k: 'film',
        t: `${clipName(clip)}, ${mark.text}`,
        x: mark.parts.map(sheet.partName).join(', '),
        h: sheet.link(`film.html#${clipAnchor(clip)}`),
        s: journal.parts.get(mark.parts[0] ?? '')?.subsystem ?? '',
        d: sheet.figures.shortDate(mark.date),
      })),
    ),
    ...[...journal.consumables.values()].map(({ id, name, hazards }) => ({
      k: 'consumable',
      t: name,
      x: hazards.join(' '),
      h: sheet.toConsumable(id),
      s: '',
      d: '',
    })),
  ];
}

function ofSession(sheet: Sheet, session: Session): SearchDocument {
  const captions = session.pictures.map(({ caption }) => caption ?? '');
  const notes = session.parts.map(({ note }) => note ?? '');
  return {
    k: 'session',
    t: session.title,
    x: [plainText(session.body), ...notes, ...captions].filter((text) => text !== '').join(' '),
    h: sheet.toSession(session.id),
    s: '',
    d: sheet.figures.shortDate(session.date),
  };
}

function ofPart(sheet: Sheet, part: Part): SearchDocument {
  const seen = observationsOf(sheet.record, part.id).flatMap(({ marks, finish }) => [marks, finish]);
  const condition = part.condition === null ? null : CONDITION_WORDS[part.condition];
  const origin = part.origin === null ? null : ORIGIN_WORDS[part.origin];
  const texts = [part.marks, ...seen, part.finish, part.note, part.evidence, part.private, origin, condition, part.id];
  return {
    k: 'part',
    t: part.name,
    x: texts.filter((text) => text !== null).join('. '),
    h: sheet.toPart(part.id),
    s: part.subsystem,
    d: '',
  };
}

function decisionsOf(sheet: Sheet, session: Session): SearchDocument[] {
  return session.decisions.map((decision, n) => ({
    k: 'decision',
    t: `${sheet.partName(decision.part)}: ${VERDICT_WORDS[decision.verdict]}`,
    x: decision.because ?? '',
    h: `${sheet.toSession(session.id)}#decision-${n + 1}`,
    s: sheet.record.journal.parts.get(decision.part)?.subsystem ?? '',
    d: sheet.figures.shortDate(session.date),
  }));
}

function bagsOf(sheet: Sheet, session: Session): SearchDocument[] {
  return session.bags.map(({ bag, holds, goesBack, off }) => ({
    k: 'bag',
    t: `Bag ${bag}`,
    x: [...holds, goesBack ?? '', off === null ? '' : sheet.partName(off)].join(', '),
    h: sheet.toBag(bag),
    s: off === null ? '' : (sheet.record.journal.parts.get(off)?.subsystem ?? ''),
    d: sheet.figures.shortDate(session.date),
  }));
}

/** Markdown without its marks: words to be searched, nothing else is asked of it. */
function plainText(body: string): string {
  return body
    .replaceAll(/!?\[([^\]]*)\]\([^)]*\)/g, '$1')
    .replaceAll(/<[^>]+>/g, ' ')
    .replaceAll(/[*_`#>|~]+/g, ' ')
    .replaceAll(/\s+/g, ' ')
    .trim();
}
