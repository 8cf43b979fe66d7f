/** What happened at a position, day by day, each event put into a line of words with its links. */
import type { Destination, PartEntry, Picture, Session, SessionId } from '../../../journal/model.ts';
import type { Deed } from '../../../journal/record.ts';
import { deedCount } from '../../../journal/registers/deed-count.ts';
import { seenIn } from '../../../journal/registers/observed.ts';
import { sameWhere } from '../../../journal/replay/words.ts';
import type { TimelineEvent } from '../../../journal/timelines/timelines.ts';
import { beliefOf } from '../page/belief.ts';
import { html, type Markup } from '../page/html.ts';
import type { RecordSheet, Sheet } from '../page/sheet.ts';
import { ACTION_WORDS, capital, ITEM_KIND_WORDS, listed, RESULT_WORDS, sentence } from '../page/words.ts';
import { paperFacts } from '../papers/papers.ts';
import { clipHref, clipName } from '../pictures/film.ts';
import { entryRelations } from '../session/entry-relations.ts';
import { namedPlace, whereLink } from '../stores/where.ts';
import { decisionWords } from './decision-words.ts';

export interface ChronicleDay {
  /** Its anchor on the page. */
  readonly id: string;
  readonly date: string;
  readonly session: Session | null;
  readonly lines: readonly Markup[];
}

/** Events gathered by session, oldest first; ledger entries and pictures have their own places on the page. */
export function chronicleOf(sheet: RecordSheet, events: readonly TimelineEvent[]): readonly ChronicleDay[] {
  const shown = events.filter(({ kind }) => kind !== 'entry' && kind !== 'picture');
  return [...Map.groupBy(shown, dayAnchor)].map(([id, list]) => ({
    id,
    date: list[0]?.date ?? '',
    session: sheet.index.sessions.get(list[0]?.session ?? '') ?? null,
    lines: [...deedLines(sheet, list), ...list.flatMap((event) => lineOf(sheet, event) ?? []), ...putRight(sheet, list[0]?.session ?? '')],
  }));
}

/** That a later note puts right what this one says, which is left as it was written. */
function putRight(sheet: RecordSheet, session: SessionId): readonly Markup[] {
  return (sheet.index.correctedBy.get(session) ?? []).map(
    (later) =>
      html`Something written that evening was wrong: ${link(sheet.toSession(later.id), later.title)} of ${sheet.date(later.date)} puts it right.`,
  );
}

/** Where what happened in a session, or on a day of the catalogue, stands on the page. */
export function dayAnchor({ date, session }: TimelineEvent): string {
  return `day-${session ?? date}`;
}

/** Deeds of one note's entry make one line, with what it wrote down of the part: `Removed; in stores: shelf B2. Condition: 2, moderately strong symptoms.` */
function deedLines(sheet: RecordSheet, events: readonly TimelineEvent[]): Markup[] {
  const deeds = events.flatMap((event) => (event.kind === 'deed' ? [event.deed] : []));
  return [...Map.groupBy(deeds, ({ entry }) => entry)].map(([entry, done]) => {
    const part = sheet.record.journal.parts.get(entry.part);
    const count = deedCount(done);
    const many = part && count < part.count ? ` (${count} of ${part.count})` : '';
    const words = listed([...new Set(done.map(({ did }) => ACTION_WORDS[did]))]);
    const had = done.some(({ did }) => did === 'acquired') && somebody(sheet, ' from ', entry.from);
    const relations = entryRelations(sheet, done.at(-1)?.to.at === 'gone' ? { ...entry, how: null } : entry).map((line) => html` ${line}.`);
    return html`${partLink(sheet, entry.part)}${many}: ${words}${had}${placeAfter(sheet, done, part?.position)}. ${seenOf(entry)}${relations}`;
  });
}

/** Where it went, when it went anywhere. */
function placeAfter(sheet: Sheet, done: readonly Deed[], home: string | undefined): Markup | null {
  const last = done.at(-1);
  if (!last || done.every(({ from, to }) => sameWhere(from, to))) return null;
  if (last.to.at === 'fitted' && last.to.position === home) return html`; on the vehicle`;
  if (last.to.at !== 'gone') return html`; ${whereLink(sheet, last.to)}`;
  const { name, href } = namedPlace(sheet, last.to);
  return html`; ${href === null ? name : link(href, name)}${somebody(sheet, ', to ', last.entry.to)}`;
}

/** Who had it before, or has it now: no bag of the journal's. */
const somebody = (sheet: Sheet, word: string, named: Destination | null) =>
  named !== null && named.bag === null && named.name !== null && `${word}${sheet.partName(named.name)}`;

/** What an entry wrote down of its part: what has a name first, then the note. */
function seenOf(entry: PartEntry): string {
  const seen = seenIn(entry);
  const named = seen.flatMap(({ label, words }) => (label === null ? [] : [`${label.toLowerCase()}: ${words}`]));
  const rest = seen.flatMap(({ label, words }) => (label === null ? [sentence(words)] : []));
  return [sentence(capital(named.join('; '))), ...rest].filter((words) => words !== '').join(' ');
}

function lineOf(sheet: Sheet, event: TimelineEvent): Markup | null {
  switch (event.kind) {
    case 'arrived':
      return html`${partLink(sheet, event.part)}: acquired.`;
    case 'observation': {
      const { entry, part } = event.observation;
      return entry.did.length > 0 ? null : html`${partLink(sheet, part)}: ${seenOf(entry)}`;
    }
    case 'measurement': {
      const { what, value, within, part, as } = event.measurement;
      const verdict = within === null ? '' : within ? ', within limits' : ', outside limits';
      return html`${partLink(sheet, part)}: ${what}${as === null ? '' : ` as ${as}`} <span class="nowrap">${value.text}</span>${verdict}.`;
    }
    case 'decision': {
      const { decision } = event;
      const of = decision.part !== decision.position && html`, ${partLink(sheet, decision.part)}`;
      return html`Decided${of}: ${decisionWords(sheet, decision)}. ${sentence(decision.because)}`;
    }
    case 'attribution': {
      const { lead, origin } = beliefOf(sheet, event.attribution);
      return html`${partLink(sheet, event.attribution.part)}: ${lead}<b>${origin}</b>. ${sentence(event.attribution.because)}`;
    }
    case 'method':
      return html`Tried: ${event.method.how}${event.method.result === null ? '' : `; result ${RESULT_WORDS[event.method.result]}`}. ${sentence(event.method.note)}`;
    case 'film': {
      const href = clipHref(sheet, event.mark.clip, event.mark.fragment);
      return html`Filmed: ${clipName(event.mark.clip)} at ${href === null ? event.mark.text : link(href, event.mark.text)}.`;
    }
    case 'paper': {
      const paper = paperFacts(sheet, event.paper.file);
      const name = event.paper.what ?? event.paper.kind;
      return html`Paper: ${paper === null ? name : link(paper.href, name)}.`;
    }
    case 'opened':
    case 'closed':
    case 'deferred': {
      const { item } = event;
      const words = { opened: 'Opened', closed: 'Closed', deferred: 'Put off' }[event.kind];
      return html`${words}, ${ITEM_KIND_WORDS[item.opening.kind]}: ${link(sheet.toItem(item.id), item.opening.what)}.`;
    }
    default:
      return null;
  }
}

function link(href: string, words: string): Markup {
  return html`<a href="${href}">${words}</a>`;
}

function partLink(sheet: Sheet, id: string): Markup {
  return link(sheet.toPart(id), capital(sheet.partName(id)));
}

/** The pictures among events, in the order they were taken within their session. */
export function picturesIn(sheet: RecordSheet, events: readonly TimelineEvent[]): InSessionPicture[] {
  return events.flatMap((event) => {
    const session = event.session === null ? undefined : sheet.index.sessions.get(event.session);
    return event.kind === 'picture' && session ? [{ picture: event.picture, session }] : [];
  });
}

export interface InSessionPicture {
  readonly picture: Picture;
  readonly session: Session;
}
