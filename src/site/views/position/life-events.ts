/** What happened at a position, as marks for its life drawn in time: each on its day, in its lane, with what it opens. */
import type { IsoDate, Part, Whereabouts } from '../../../journal/model.ts';
import type { Deed } from '../../../journal/record.ts';
import { sameWhere } from '../../../journal/replay/words.ts';
import type { DecisionInTime, TimelineEvent } from '../../../journal/timelines/timelines.ts';
import type { RecordSheet } from '../page/sheet.ts';
import { ACTION_WORDS, GONE_WORDS, VERDICT_WORDS } from '../page/words.ts';
import { dayAnchor } from './chronicle.ts';

export type Lane = 'decided' | 'moved' | 'worked' | 'pictured';

/** The shape of a mark; `several` stands for days on which it went more than one way. */
export type Sign = 'decision' | 'superseded' | 'off' | 'on' | 'moved' | 'out' | 'returned' | 'gone' | 'several' | 'work' | 'picture';

export interface LifeEvent {
  readonly lane: Lane;
  readonly date: IsoDate;
  readonly sign: Sign;
  /** The decision's number, where it went, what was done; none of a picture. */
  readonly words: readonly string[];
  readonly href: string;
}

/**
 * @param pictures those that stand on the page, by their place there
 * @returns the marks of each lane, oldest first; work and moves of one session are one mark each
 */
export function lifeEvents(
  sheet: RecordSheet,
  events: readonly TimelineEvent[],
  decisions: readonly DecisionInTime[],
  pictures: readonly { readonly date: IsoDate; readonly href: string }[],
): readonly LifeEvent[] {
  const days = Map.groupBy(events, dayAnchor);
  return [
    ...decisions.map(({ decision, inForce }, n) => ({
      lane: 'decided' as const,
      date: decision.date,
      sign: inForce > 0 ? ('decision' as const) : ('superseded' as const),
      words: [VERDICT_WORDS[decision.verdict]],
      href: `#decision-${n + 1}`,
    })),
    ...[...days].flatMap(([anchor, list]) => onDay(sheet, anchor, list)),
    ...pictures.map(({ date, href }) => ({ lane: 'pictured' as const, date, sign: 'picture' as const, words: [], href })),
  ];
}

function onDay(sheet: RecordSheet, anchor: string, list: readonly TimelineEvent[]): LifeEvent[] {
  const at = { date: list[0]?.date ?? '', href: `#${anchor}` };
  const moves = list.flatMap((event) => moveOf(sheet, event) ?? []);
  const work = unique(list.flatMap(workOf));
  const signs = unique(moves.map(({ sign }) => sign));
  const [only = 'several'] = signs;
  return [
    ...(moves.length === 0
      ? []
      : [
          {
            ...at,
            lane: 'moved' as const,
            sign: signs.length > 1 ? ('several' as const) : only,
            words: unique(moves.map(({ word }) => word)),
          },
        ]),
    ...(work.length === 0 ? [] : [{ ...at, lane: 'worked' as const, sign: 'work' as const, words: work }]),
  ];
}

interface Move {
  readonly sign: Sign;
  readonly word: string;
}

function moveOf({ record }: RecordSheet, event: TimelineEvent): Move | null {
  if (event.kind === 'arrived') return { sign: 'moved', word: ACTION_WORDS.acquired };
  if (event.kind !== 'deed' || sameWhere(event.deed.from, event.deed.to)) return null;
  return { sign: signOf(event.deed), word: wordOf(event.deed, record.journal.parts.get(event.deed.part)) };
}

/** On the vehicle, or in its place in something that is off it. */
const standing = ({ at }: Whereabouts): boolean => at === 'fitted' || at === 'in';

function signOf({ from, to }: Deed): Sign {
  if (standing(to)) return 'on';
  if (standing(from)) return 'off';
  if (to.at === 'gone') return 'gone';
  if (to.at === 'out') return 'out';
  return from.at === 'out' ? 'returned' : 'moved';
}

function wordOf({ from, to, did }: Deed, part: Part | undefined): string {
  if (standing(to)) return part?.found === 'fitted' && part.id === part.position ? 'back' : 'fitted';
  if (to.at === 'gone') return GONE_WORDS[to.how];
  if (to.at === 'out') return 'out';
  const place = placeWord(to);
  if (standing(from)) return place === null ? 'off' : `off, ${place}`;
  return from.at === 'out' ? ACTION_WORDS.returned : (place ?? ACTION_WORDS[did]);
}

function placeWord(where: Whereabouts): string | null {
  if (where.at === 'bag') return `bag ${where.bag}`;
  return where.at === 'stores' ? where.store : null;
}

function workOf(event: TimelineEvent): readonly string[] {
  if (event.kind === 'measurement') return [ACTION_WORDS.measured];
  if (event.kind === 'method') return ['tried'];
  return event.kind === 'deed' && sameWhere(event.deed.from, event.deed.to) ? [ACTION_WORDS[event.deed.did]] : [];
}

const unique = <T>(all: readonly T[]): T[] => [...new Set(all)];
