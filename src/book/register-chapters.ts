/** The register, the lives of what changed, and every departure from the original, each with its reason. */

import type { Origin, PartId, Position, PositionId, Verdict } from '../journal/model.ts';
import { isAsTheWorks } from '../journal/registers/as-the-works.ts';
import { together } from '../journal/registers/occupant.ts';
import { opinionsOf } from '../journal/registers/origins.ts';
import { wasHere } from '../journal/registers/outcome.ts';
import { type RegisterRow, registerAt } from '../journal/registers/register.ts';
import { type Whereat, whereaboutsAt } from '../journal/registers/stays.ts';
import { stayedInWords } from '../journal/registers/where-now.ts';
import type { DecisionInTime } from '../journal/timelines/decision-history.ts';
import { type Occupancy, positionTimeline } from '../journal/timelines/position-timeline.ts';
import { capital, GONE_WORDS, ORIGIN_WORDS, sentence, VERDICT_WORDS } from '../site/views/page/words.ts';
import { countsInTurn } from '../site/views/position/part-page.ts';
import { placeNowWords } from '../site/views/stores/where.ts';
import { type BookSetting, mention } from './setting.ts';
import { call, words } from './typst-text.ts';

export function register(setting: BookSetting): string {
  const groups = Map.groupBy(registerAt(setting.record, null), ({ subsystem }) => subsystem);
  const tables = [...groups].map(
    ([subsystem, rows]) => `#heading(level: 2)[${words(setting.sheet.subsystemName(subsystem))}]\n${registerTable(setting, rows)}`,
  );
  return tables.length === 0 ? '' : `= The register\n\n${tables.join('\n\n')}`;
}

function registerTable(setting: BookSetting, rows: readonly RegisterRow[]): string {
  const cells = rows.map((row) => {
    const name = setting.sheet.positionName(row.position) + (row.count > 1 ? ` × ${row.count}` : '');
    const remarks = [...row.mismatches.map((one) => one.words), ...[...row.otherwise, ...row.pending].map((one) => capital(one.words))];
    return [
      `${mention(setting, row.position)}${words(name)}`,
      words(decidedWords(setting, row)),
      words(standsWords(setting, row)),
      [capital(row.outcome.words), ...remarks].map(words).join(' #linebreak() '),
    ]
      .map((cell) => `[${cell}]`)
      .join(', ');
  });
  return `#record-table(columns: (1.35fr, 1fr, 1.25fr, 1.2fr), head: ([Place], [Decided], [Stands there], [Outcome]), ${cells.join(', ')})`;
}

function decidedWords({ sheet }: BookSetting, row: RegisterRow): string {
  if (row.inForce.length === 0) return row.undecided > 0 ? 'undecided' : '';
  return row.inForce
    .map(({ decision, count }) => {
      const some = count < row.count ? `${count} of ${row.count}: ` : '';
      return `${some}${VERDICT_WORDS[decision.verdict]}${decision.with === null ? '' : ` with ${sheet.partName(decision.with)}`}`;
    })
    .join('; ');
}

function standsWords({ sheet }: BookSetting, row: RegisterRow): string {
  const here = together(row.fitted).map(({ part, count, origin }) => {
    const some = count < row.count ? `${count} of ${row.count}: ` : '';
    return `${some}${originWords(origin)}${part === row.position ? '' : ` (${sheet.partName(part)})`}`;
  });
  return here.length === 0 ? 'nothing' : here.join('; ');
}

/** Verdicts that leave things as they are. */
const PASSIVE: ReadonlySet<Verdict> = new Set(['keep', 'defer']);

/** Positions that changed: another part has stood there, a decision was overturned, or it was decided to do something. */
export function lives(setting: BookSetting): string {
  const set = [...setting.record.journal.positions.keys()].flatMap((id) => {
    const { occupancies, decisions } = positionTimeline(setting.record, id);
    const changed =
      occupancies.some(({ asFound }) => !asFound) ||
      decisions.length > 1 ||
      decisions.some(({ decision }) => !PASSIVE.has(decision.verdict));
    return changed ? [lifeOf(setting, id)] : [];
  });
  return set.length === 0
    ? ''
    : `= Lives\n\n${words('What stood where, from when to when, and what was decided about it.')}\n\n${set.join('\n\n')}`;
}

function lifeOf(setting: BookSetting, id: PositionId): string {
  const { sheet } = setting;
  const { occupancies, decisions, position } = positionTimeline(setting.record, id);
  const stood = occupancies.map((occupancy) =>
    call('stood', {
      what: `[${words(trackWords(setting, occupancy, position))}]`,
      when: `[${words(whenWords(setting, occupancy))}]`,
      original: String(occupancy.asFound),
    }),
  );
  const decided = decisions.map((one) => {
    const { decision } = one;
    const what = `${VERDICT_WORDS[decision.verdict]}${decision.with === null ? '' : ` with ${sheet.partName(decision.with)}`}${decision.count < position.count ? ` (${decision.count} of ${position.count})` : ''}`;
    return call('decided', {
      when: `[${words(sheet.date(decision.date))}]`,
      what: `[${words(capital(what))}]`,
      because: `[${words(sentence(decision.because))}]`,
      later: `[${words(laterWords(one, position))}]`,
    });
  });
  return call('life', { name: `[${mention(setting, id)}${words(position.name)}]` }, [...stood, ...decided].join('\n'));
}

/** Whether a decision was taken again, and for how many of a lot. */
function laterWords({ supersededBy, inForce }: DecisionInTime, { count }: Position): string {
  if (supersededBy.length === 0) return '';
  const lost = supersededBy.reduce((sum, one) => sum + one.count, 0);
  return inForce === 0 ? 'later decided again' : `later decided again for ${lost} of ${count}`;
}

/** What stood there: as it was found, else by its name. What was missing then was found nowhere. */
function trackWords({ sheet, record }: BookSetting, { part, origin, asFound, steps }: Occupancy, { count }: Position): string {
  const found = asFound && record.journal.parts.get(part)?.found !== 'missing';
  const name = found ? `As found, ${originWords(origin)}` : `${sheet.partName(part)} (${originWords(origin)})`;
  return `${name}${steps.some((step) => step.count < count) ? `, ${countsInTurn(steps)} of ${count}` : ''}`;
}

const originWords = (origin: Origin | null): string => (origin === null ? 'origin not known' : ORIGIN_WORDS[origin]);

function whenWords({ sheet }: BookSetting, { from, to }: Occupancy): string {
  const short = sheet.figures.shortDate;
  return to === null ? `since ${short(from.date)}` : `${short(from.date)} to ${short(to.date)}`;
}

/** Places that do not hold what the works put there: every one that is not counted among those that do. */
export function departures(setting: BookSetting): string {
  const away = registerAt(setting.record, null).filter((row) => !isAsTheWorks(setting.record, row));
  const cells = away.map((row) => {
    const reasons = row.inForce.flatMap(({ decision }) =>
      decision.because === null ? [] : [`${capital(VERDICT_WORDS[decision.verdict])}: ${sentence(decision.because)}`],
    );
    return [
      `${mention(setting, row.position)}${words(setting.sheet.positionName(row.position))}`,
      words(row.fitted.length === 0 ? nothingWords(row) : standsWords(setting, row)),
      words([...reasons, ...evidence(setting, row)].join(' ')),
      words(capital(originalWords(setting, row))),
    ]
      .map((cell) => `[${cell}]`)
      .join(', ');
  });
  if (cells.length === 0) return '';
  const opening = 'Every place that does not hold what the works put there, why, and where the original is. What is kept can be put back.';
  return `= Departures from the original\n\n${words(opening)}\n\n#record-table(columns: (1.1fr, 1.1fr, 1.7fr, 1fr), head: ([Place], [Stands there], [Reason], [The original]), ${cells.join(', ')})`;
}

/** How it is known that what stands there is no original. */
function evidence({ record }: BookSetting, { fitted }: RegisterRow): readonly string[] {
  const others = new Set(
    fitted.flatMap(({ part, origin }) => (origin === 'original' || origin === null || origin === 'unknown' ? [] : [part])),
  );
  const why = [...others].flatMap((part) => opinionsOf(record, part).at(-1)?.because ?? []);
  return why.map((because) => `How it is known: ${sentence(because)}`);
}

/** What stands at a place elsewhere is on the vehicle. */
function nothingWords({ outcome: { kind, words: how } }: RegisterRow): string {
  return `nothing${kind === 'elsewhere' ? '' : ' on the vehicle'}: ${how}`;
}

/** What stands at its place otherwise than it came off, when it went there and how. */
export function backOtherwise(setting: BookSetting): string {
  const { record, sheet } = setting;
  const cells = registerAt(record, null).flatMap(({ position, otherwise }) =>
    otherwise.map(({ part, fitted, words: how }) => {
      const said = part === position ? capital(how) : `${sheet.partName(part)} ${how}`;
      return [`${mention(setting, position)}${words(sheet.positionName(position))}`, words(sheet.date(fitted.date)), words(sentence(said))]
        .map((cell) => `[${cell}]`)
        .join(', ');
    }),
  );
  if (cells.length === 0) return '';
  return `= Otherwise than it was\n\n#record-table(columns: (1.2fr, auto, 2fr), head: ([Place], [On], [How]), ${cells.join(', ')})`;
}

type Placed = Pick<Whereat, 'where' | 'count'> & { readonly part: PartId };

/** Where what belongs at a place is, if it is not there; where no original of it is known, what became of what was found there. */
function originalWords(setting: BookSetting, row: RegisterRow): string {
  const away = (places: readonly Placed[]) => places.filter(({ where }) => where.at !== 'fitted' || where.position !== row.position);
  if (row.originals.length > 0) return placesWords(setting, row, away(row.originals));
  if (!wasHere(setting.record, row.position)) return 'none: the place came with a later part';
  const found = away(whereaboutsAt(setting.record, row.position, setting.record.day).map((place) => ({ ...place, part: row.position })));
  return found.length === 0 ? 'none is known' : `none is known; what was found there: ${placesWords(setting, row, found)}`;
}

function placesWords({ sheet, record }: BookSetting, row: RegisterRow, places: readonly Placed[]): string {
  return places
    .map(({ part, where, count }) => {
      const some = row.count > 1 ? `${count} of ${row.count}: ` : '';
      return `${some}${where.at === 'gone' ? GONE_WORDS[where.how] : placeNowWords(sheet, where, stayedInWords(record, part, where, null))}`;
    })
    .join('; ');
}
