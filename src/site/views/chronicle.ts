/** What happened at a position, day by day, each event put into a line of words with its links. */
import type { Picture, Session, SessionId } from '../../journal/model.ts';
import type { TimelineEvent } from '../../journal/timelines/timelines.ts';
import { clipHref, clipName } from './film.ts';
import { html, type Markup } from './html.ts';
import { paperFacts } from './papers.ts';
import type { Sheet } from './sheet.ts';
import { spotOf } from './where.ts';
import { ACTION_WORDS, capital, CONDITION_WORDS, ITEM_KIND_WORDS, listed, RESULT_WORDS, VERDICT_WORDS } from './words.ts';

export interface ChronicleDay {
  readonly date: string;
  readonly session: Session | null;
  readonly lines: readonly Markup[];
}

/** Events gathered by session, oldest first; ledger entries and pictures have their own places on the page. */
export function chronicleOf(sheet: Sheet, events: readonly TimelineEvent[]): readonly ChronicleDay[] {
  const told = events.filter(({ kind }) => kind !== 'entry' && kind !== 'picture');
  const days = Map.groupBy(told, ({ date, session }) => session ?? date);
  return [...days].map(([key, list]) => ({
    date: list[0]?.date ?? '',
    session: sheet.index.sessions.get(key as SessionId) ?? null,
    lines: [...deedLines(sheet, list), ...list.flatMap((event) => lineOf(sheet, event) ?? [])],
  }));
}

/** Deeds of one note's entry make one line: `Removed and inspected, to shelf B2. Scored but sound.` */
function deedLines(sheet: Sheet, events: readonly TimelineEvent[]): Markup[] {
  const deeds = events.flatMap((event) => (event.kind === 'deed' ? [event.deed] : []));
  return [...Map.groupBy(deeds, ({ entry }) => entry)].map(([entry, done]) => {
    const last = done.at(-1);
    const moved = last !== undefined && done.some(({ from, to }) => JSON.stringify(from) !== JSON.stringify(to));
    const spot = moved ? spotOf(sheet, last.to) : null;
    const of = sheet.record.journal.parts.get(entry.part)?.count ?? 1;
    const many = of > 1 && last && last.count < of ? ` (${last.count} of ${of})` : '';
    const words = listed([...new Set(done.map(({ did }) => ACTION_WORDS[did]))]);
    const place = spot && html`; ${spot.before}${spot.href === null ? spot.name : link(spot.href, spot.name)}`;
    return html`${partLink(sheet, entry.part)}${many}: ${words}${place}. ${entry.note}`;
  });
}

function lineOf(sheet: Sheet, event: TimelineEvent): Markup | null {
  switch (event.kind) {
    case 'arrived':
      return html`${partLink(sheet, event.part)}: acquired.`;
    case 'observation': {
      const { condition, marks, finish, part } = event.observation;
      const seen = [
        condition === null ? '' : `condition ${condition}, ${CONDITION_WORDS[condition]}`,
        marks === null ? '' : `marks: ${marks}`,
        finish === null ? '' : `finish: ${finish}`,
      ].filter((one) => one !== '');
      return seen.length === 0 ? null : html`${partLink(sheet, part)}: ${seen.join('; ')}.`;
    }
    case 'measurement': {
      const { what, value, within, part, as } = event.measurement;
      const verdict = within === null ? '' : within ? ', within limits' : ', outside limits';
      return html`${partLink(sheet, part)}: ${what}${as === null ? '' : ` as ${as}`} <span class="nowrap">${value.text}</span>${verdict}.`;
    }
    case 'decision': {
      const { decision } = event;
      const replaced = decision.with === null ? null : html` with ${partLink(sheet, decision.with)}`;
      return html`Decided: <b>${VERDICT_WORDS[decision.verdict]}</b>${replaced}. ${decision.because}`;
    }
    case 'method':
      return html`Tried: ${event.method.how}${event.method.result === null ? '' : `; result ${RESULT_WORDS[event.method.result]}`}. ${event.method.note}`;
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
export function picturesIn(sheet: Sheet, events: readonly TimelineEvent[]): InSessionPicture[] {
  return events.flatMap((event) => {
    const session = event.session === null ? undefined : sheet.index.sessions.get(event.session);
    return event.kind === 'picture' && session ? [{ picture: event.picture, session }] : [];
  });
}

export interface InSessionPicture {
  readonly picture: Picture;
  readonly session: Session;
}

