/** A position's life as its page draws it: the track, what happened along it, and the key that says it in words. */
import type { Position } from '../../../journal/model.ts';
import { originAt } from '../../../journal/registers/origins.ts';
import type { PositionTimeline, UnusedCandidate } from '../../../journal/timelines/timelines.ts';
import { html, type Markup } from '../page/html.ts';
import { linked } from '../page/links.ts';
import type { RecordSheet } from '../page/sheet.ts';
import { listed, ORIGIN_WORDS } from '../page/words.ts';
import { placeLinks, placesNow } from '../stores/where.ts';
import type { LifeEvent, Sign } from './life-events.ts';
import { DRAWINGS, type Drawing, type LifeLane, lifeLanes } from './life-lanes.ts';
import { along, type Gap, type Stretch, type Track } from './track.ts';

export interface DrawnStretch extends Stretch {
  readonly original: boolean;
}

/** How a line of the key is drawn beside its words. */
export type KeyDrawing = 'original' | 'stand-in' | 'empty' | null;

export interface LifeDrawn {
  readonly label: string;
  /** It takes more than one: the bar is as thick as that needs. */
  readonly many: boolean;
  readonly stretches: readonly DrawnStretch[];
  readonly gaps: readonly Gap[];
  /** What begins at one moment is lettered together; a wide stretch also says what it is. */
  readonly letters: readonly { readonly x: number; readonly letters: string; readonly word: string | null }[];
  /** What happened, drawn for a page and for a phone; none where nothing did. */
  readonly happened: readonly { readonly drawing: Drawing; readonly lanes: readonly LifeLane[] }[];
  readonly happenedLabel: string;
  readonly ticks: readonly { readonly x: number; readonly words: string }[];
  readonly key: readonly { readonly drawing: KeyDrawing; readonly words: Markup }[];
  /** The shapes of what happened, in words. */
  readonly signs: readonly { readonly sign: Sign | null; readonly words: string }[];
}

/** Of the line, what a stretch must take to be lettered, and to say what it is beside its letter. */
const LETTERED = 0.03;
const SAID = 0.3;

export function lifeDrawn(sheet: RecordSheet, life: PositionTimeline, track: Track, events: readonly LifeEvent[]): LifeDrawn {
  const { figures } = sheet;
  const { position } = life;
  const lettered = new Map(
    [...new Set(track.stretches.map(({ part }) => part))].map((part, n) => [part, String.fromCharCode(65 + (n % 26))]),
  );
  const at = along(track.start, track.end);
  const happened = DRAWINGS.map((drawing) => ({ drawing, lanes: lifeLanes(events, at, figures.date, drawing) }));
  const label = `${position.name} from ${figures.date(track.start)} on`;
  return {
    label: `What stood there, ${label}. The key below says it in words.`,
    many: position.count > 1,
    stretches: track.stretches.map((stretch) => ({ ...stretch, original: originAt(sheet.record, stretch.part, sheet.day) === 'original' })),
    gaps: track.gaps,
    letters: lettersOf(sheet, track, lettered),
    happened: events.length === 0 ? [] : happened,
    happenedLabel: `What happened, ${label}. Each mark opens it.`,
    ticks: track.ticks.map(({ month, x }) => ({ x, words: figures.shortMonth(month) })),
    key: [...partsInKey(sheet, position, track, lettered), ...life.unused.map((one) => unusedInKey(sheet, one))],
    signs: signsOf(happened.flatMap(({ lanes }) => lanes)),
  };
}

function lettersOf(sheet: RecordSheet, track: Track, lettered: ReadonlyMap<string, string>): LifeDrawn['letters'] {
  const wide = track.stretches.filter(({ width }) => width >= LETTERED);
  return [...Map.groupBy(wide, ({ x }) => x)].map(([x, list]) => {
    const [first] = list;
    return {
      x,
      letters: list.map(({ part }) => lettered.get(part)).join(', '),
      word: first && list.length === 1 && first.width > SAID ? originWords(sheet, first.part) : null,
    };
  });
}

function originWords(sheet: RecordSheet, part: string): string {
  const origin = originAt(sheet.record, part, sheet.day);
  return origin === null ? 'origin not known' : ORIGIN_WORDS[origin];
}

function partsInKey(sheet: RecordSheet, position: Position, track: Track, lettered: ReadonlyMap<string, string>): LifeDrawn['key'] {
  const spell = ({ from, to, count }: Pick<Gap, 'from' | 'to' | 'count'>): string => {
    const many = position.count > 1 ? `${count} of ${position.count}, ` : '';
    const begun = from === track.start ? 'as found' : sheet.figures.shortDate(from);
    return `${many}${begun} to ${to === null ? 'now' : sheet.figures.shortDate(to)}`;
  };
  const parts = [...lettered].map(([part, letter]) => {
    const spells = track.stretches.filter((stretch) => stretch.part === part).map(spell);
    return {
      drawing: originAt(sheet.record, part, sheet.day) === 'original' ? ('original' as const) : ('stand-in' as const),
      words: html`<b>${letter}</b> ${linked(sheet.partName(part), sheet.toPart(part))}, ${originWords(sheet, part)}: ${spells.join('; ')}`,
    };
  });
  if (track.gaps.length === 0) return parts;
  const nothing = position.inside === null ? 'Nothing fitted' : 'Not on the vehicle';
  return [...parts, { drawing: 'empty', words: html`${nothing}: ${track.gaps.map(spell).join('; ')}` }];
}

function unusedInKey(sheet: RecordSheet, { part, considered }: UnusedCandidate): LifeDrawn['key'][number] {
  const said =
    considered.length === 0 ? 'a candidate' : `decided on ${listed(considered.map(({ date }) => sheet.figures.shortDate(date)))}`;
  const where = placeLinks(sheet, part, placesNow(sheet, part));
  return {
    drawing: null,
    words: html`${linked(sheet.partName(part), sheet.toPart(part))}, ${originWords(sheet, part)}: ${said}, never fitted here; ${where}`,
  };
}

const SIGN_WORDS: Readonly<Record<Sign, string>> = {
  decision: 'decided, numbered as below',
  superseded: 'decided, and superseded since',
  off: 'taken off',
  on: 'fitted',
  moved: 'came here, or moved while off',
  out: 'sent out',
  returned: 'came back',
  gone: 'gone',
  several: 'moved more than one way',
  work: 'worked on',
  picture: 'picture',
};

/** Each shape that is drawn, once, and what a number beneath one says. */
function signsOf(lanes: readonly LifeLane[]): LifeDrawn['signs'] {
  const marks = lanes.flatMap((lane) => lane.marks);
  const used = (Object.keys(SIGN_WORDS) as Sign[]).filter((sign) => marks.some((mark) => mark.sign === sign));
  const close = marks.some(({ beneath }) => beneath.startsWith('×'));
  return [
    ...used.map((sign) => ({ sign, words: SIGN_WORDS[sign] })),
    ...(close ? [{ sign: null, words: '×2: one mark for two that are too close to be drawn apart; it opens the first' }] : []),
  ];
}
