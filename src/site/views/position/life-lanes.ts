/** Marks along a line of dates, a lane a kind: what would stand on each other is one mark that says how many. Pure geometry. */
import type { IsoDate } from '../../../journal/model.ts';
import type { Lane, LifeEvent, Sign } from './life-events.ts';

/** How a life is drawn: on a page, or on a phone, where a mark must be as large as a thumb. */
export interface Drawing {
  readonly name: 'page' | 'phone';
  /** The nearest that two marks of a lane may stand, as a share of the line. */
  readonly closest: number;
  /** The least width of the line in pixels: what words beneath a mark have room for. */
  readonly width: number;
}
export const DRAWINGS: readonly Drawing[] = [
  { name: 'page', closest: 0.034, width: 720 },
  { name: 'phone', closest: 0.135, width: 330 },
];

export interface LaneMark {
  readonly x: number;
  readonly sign: Sign;
  readonly href: string;
  /** All of it in words, for whoever does not see the drawing. */
  readonly label: string;
  /** What stands beneath: a number, what happened where there is room for it, or how many. */
  readonly beneath: string;
  readonly anchor: 'start' | 'middle' | 'end';
}

export interface LifeLane {
  readonly lane: Lane;
  readonly name: string;
  readonly marks: readonly LaneMark[];
}

const LANES: readonly { readonly lane: Lane; readonly name: string }[] = [
  { lane: 'decided', name: 'Decided' },
  { lane: 'moved', name: 'Moved' },
  { lane: 'worked', name: 'Worked on' },
  { lane: 'pictured', name: 'Pictures' },
];

/** A letter of a word beneath a mark, in pixels, and what is left free between two of them. */
const LETTER = 6.4;
const FREE = 6;
/** A mark so near to an end has its words turned inwards. */
const END = 0.06;

/**
 * @param at where a day stands on the line, from 0 to 1
 * @param date a day in words
 * @returns lanes that have marks, in their order; no two marks of one stand nearer than the drawing allows
 */
export function lifeLanes(
  events: readonly LifeEvent[],
  at: (date: IsoDate) => number,
  date: (day: IsoDate) => string,
  drawing: Drawing,
): readonly LifeLane[] {
  return LANES.flatMap(({ lane, name }) => {
    const groups = groupsOf(
      events.filter((event) => event.lane === lane).map((event, n) => ({ event, n: n + 1, x: at(event.date) })),
      drawing.closest,
    );
    const marks = groups.map((group, n) => ({
      ...markOf(group, saidOf(lane, group), date),
      ...beneathOf(lane, group, roomOf(groups, n, drawing.width)),
    }));
    return marks.length === 0 ? [] : [{ lane, name, marks }];
  });
}

interface Placed {
  readonly event: LifeEvent;
  /** Its number within its lane. */
  readonly n: number;
  readonly x: number;
}
/** Never empty. */
type Group = readonly [Placed, ...Placed[]];

function groupsOf(placed: readonly Placed[], closest: number): Group[] {
  const groups: [Placed, ...Placed[]][] = [];
  for (const one of placed) {
    const last = groups.at(-1);
    if (last && one.x - last[0].x < closest) last.push(one);
    else groups.push([one]);
  }
  return groups;
}

function markOf(group: Group, said: string, date: (day: IsoDate) => string): Pick<LaneMark, 'x' | 'sign' | 'href' | 'label'> {
  const [{ event, x }] = group;
  const last = group.at(-1)?.event ?? event;
  const signs = new Set(group.map((one) => one.event.sign));
  const days = last.date === event.date ? date(event.date) : `${date(event.date)} to ${date(last.date)}`;
  const words = [...new Set(group.flatMap((one) => one.event.words))].join(', ');
  return { x, href: event.href, sign: signs.size > 1 ? mixed(signs) : event.sign, label: `${said}, ${days}${words && `: ${words}`}` };
}

function saidOf(lane: Lane, group: Group): string {
  const [{ n }] = group;
  const last = n + group.length - 1;
  switch (lane) {
    case 'decided':
      return group.length === 1 ? `Decision ${n}` : `Decisions ${n}–${last}`;
    case 'moved':
      return group.length === 1 ? 'Moved' : `Moved ${group.length} times`;
    case 'worked':
      return group.length === 1 ? 'Worked on' : `Worked on ${group.length} times`;
    case 'pictured':
      return group.length === 1 ? 'Picture' : `${group.length} pictures`;
  }
}

/** Decisions of which one holds are drawn as one that holds. */
const mixed = (signs: ReadonlySet<Sign>): Sign => (signs.has('decision') ? 'decision' : 'several');

function roomOf(groups: readonly Group[], n: number, width: number): number {
  const x = groups[n]?.[0].x ?? 0;
  const before = x < END ? Number.POSITIVE_INFINITY : x - (groups[n - 1]?.[0].x ?? -1);
  const after = x > 1 - END ? Number.POSITIVE_INFINITY : (groups[n + 1]?.[0].x ?? 2) - x;
  // Turned inwards, words have half the way to the next for themselves; in the middle, half of each side.
  const turned = x < END || x > 1 - END ? 0.5 : 1;
  return Math.min(before, after) * width * turned - FREE;
}

function beneathOf(lane: Lane, group: Group, room: number): Pick<LaneMark, 'beneath' | 'anchor'> {
  const [{ event, n, x }] = group;
  const words = event.words.join(', ');
  const fitting = lane !== 'decided' && group.length === 1 && words.length * LETTER <= room ? words : '';
  const numbers = group.length === 1 ? `${n}` : `${n}–${n + group.length - 1}`;
  const count = group.length === 1 ? fitting : `×${group.length}`;
  return { beneath: lane === 'decided' ? numbers : count, anchor: x < END ? 'start' : x > 1 - END ? 'end' : 'middle' };
}
