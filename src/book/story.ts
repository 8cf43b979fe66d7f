/** The story: the notes in order, in chapters that end where a milestone was reached. */
import type { Session } from '../journal/model.ts';
import { sessionsInOrder } from '../journal/replay/order.ts';
import { beliefWords } from '../site/views/page/belief.ts';
import { itemWords } from '../site/views/page/facts.ts';
import type { RecordSheet } from '../site/views/page/sheet.ts';
import { capital, counted, leavesHoursOut, listed, sentence } from '../site/views/page/words.ts';
import { sessionFigures } from '../site/views/session/session-facts.ts';
import { decidedText } from './decided.ts';
import { deedText } from './deeds.ts';
import { proseToTypst } from './prose.ts';
import { type BookSetting, figure, mention, nameOfLink, pictureAt } from './setting.ts';
import { call, literal, words } from './typst-text.ts';
import type { Piece } from './volumes.ts';

export interface Chapter {
  readonly title: string;
  readonly sessions: readonly Session[];
}

/** A chapter for each milestone, up to the session that reached it; what is after the last is a chapter of its own. */
export function chaptersOf({ record, sheet }: BookSetting): readonly Chapter[] {
  const chapters: Chapter[] = [];
  let sessions: Session[] = [];
  for (const session of sessionsInOrder(record.journal.sessions)) {
    sessions.push(session);
    const reached = session.reached.map(({ milestone }) => sheet.milestoneName(milestone));
    if (reached.length === 0) continue;
    chapters.push({ title: listed(reached), sessions });
    sessions = [];
  }
  const title = chapters.length === 0 ? 'The work so far' : 'Since then';
  return sessions.length === 0 ? chapters : [...chapters, { title, sessions }];
}

/** A piece for each evening; the first of a chapter brings its head. */
export function story(setting: BookSetting): readonly Piece[] {
  return chaptersOf(setting).flatMap((chapter) => {
    const head = headOf(setting, chapter);
    const goesOn = call('chapter', { title: `[${words(`${chapter.title}, continued`)}]`, span: '[]' });
    return chapter.sessions.map((session, n) => ({
      source: `${n === 0 ? `${head}\n\n` : ''}${evening(setting, session)}`,
      chapter: chapter.title,
      goesOn: n === 0 ? '' : goesOn,
      evening: session.id,
    }));
  });
}

function headOf({ sheet: { date, figures } }: BookSetting, { title, sessions }: Chapter): string {
  const [first, last] = [sessions[0], sessions.at(-1)];
  const minutes = sessions.reduce((sum, { hours }) => hours.reduce((total, one) => total + one.minutes, sum), 0);
  const days = first && last ? (first.date === last.date ? date(first.date) : `${date(first.date)} to ${date(last.date)}`) : '';
  const span = [days, counted(sessions.length, 'session'), ...(minutes === 0 ? [] : [figures.time(minutes)])].join(' · ');
  return call('chapter', { title: `[${words(title)}]`, span: `[${words(span)}]` });
}

function evening(setting: BookSetting, session: Session): string {
  const { sheet } = setting;
  const inProse = new Set<string>();
  const prose = proseToTypst(session.body, {
    picture: (url) => {
      const picture = pictureAt(session, url);
      if (picture === null || inProse.has(picture.file)) return '';
      inProse.add(picture.file);
      return figure(setting, picture, session);
    },
    mention: (part) => mention(setting, part),
    nameOf: (url) => nameOfLink(setting, url),
  });
  const rest = session.pictures.filter(({ file, unmentioned }) => !inProse.has(file) && !unmentioned);
  const told = [prose, ...rest.map((picture) => figure(setting, picture, session)), factsOf(setting, session)];
  const head = { title: `[${words(session.title)}]`, date: `[${words(sheet.date(session.date))}]`, 'label-name': literal(session.id) };
  return call('evening', head, told.filter((one) => one !== '').join('\n\n'));
}

/** Who, how long, what it cost, what was done, what was decided, and what lies by it: one small paragraph under the prose. */
function factsOf(setting: BookSetting, session: Session): string {
  const { sheet } = setting;
  const { figures } = sheet;
  const { people, cost } = sessionFigures(sheet, session);
  const who = people.map(({ name, minutes }) => `${name} ${figures.time(minutes)}`);
  const costs = cost === 0 ? [] : [`cost ${figures.money(cost)}${leavesHoursOut(sheet.copy) ? ', labour left out' : ''}`];
  const decisions = session.decisions.map((one) => `${mention(setting, one.part)}${decidedText(setting, one)}`);
  const line = [...who, ...costs].join(' · ');
  const deeds = session.parts.map((entry) => deedText(setting, entry)).join(' ');
  const reached = session.reached.map((one) => words(reachedWords(sheet, one)));
  const believed = session.attributed.map((one) => `${mention(setting, one.part)}${words(believedWords(sheet, one))}`);
  const lines = [
    words(line),
    deeds,
    ...decisions,
    ...believed,
    ...reached,
    ...correctedWords(setting, session).map(words),
    words(bareWords(session)),
  ].filter((one) => one !== '');
  return lines.length === 0 ? '' : call('facts', {}, lines.join(' #linebreak() '));
}

/** Of a note that another puts right, and of the one that does. */
function correctedWords({ sheet, record }: BookSetting, { id, corrects }: Session): readonly string[] {
  const later = sheet.index.correctedBy.get(id) ?? [];
  const before = record.journal.sessions.find((one) => one.id === corrects);
  return [
    ...later.map(({ date }) => `Something here was wrong, and is put right on ${sheet.date(date)}.`),
    ...(before === undefined ? [] : [`Puts right what was written on ${sheet.date(before.date)}.`]),
  ];
}

/** `Lamp: believed by Ruth to be an earlier replacement. Its rim is pressed.` */
function believedWords(sheet: RecordSheet, attribution: Session['attributed'][number]): string {
  return `${sentence(`${sheet.partName(attribution.part)}: ${beliefWords(sheet, attribution)}`)} ${sentence(capital(attribution.because))}`;
}

/** `Milestone reached: First start, with these still open: Front circuit to bleed. It only has to run.` */
function reachedWords(sheet: RecordSheet, { milestone, withOpen, because }: Session['reached'][number]): string {
  const open = withOpen.length === 0 ? '' : `, with these still open: ${withOpen.map((id) => itemWords(sheet, id)).join('; ')}`;
  const said = sentence(`Milestone reached: ${sheet.milestoneName(milestone)}${open}`);
  return because === null ? said : `${said} ${sentence(capital(because))}`;
}

/** Pictures that nobody spoke of are not in the book: that there are some is told. */
function bareWords({ pictures }: Session): string {
  const bare = pictures.filter(({ unmentioned }) => unmentioned).length;
  if (bare === 0) return '';
  return bare === 1
    ? '1 more picture lies by this note, and nobody said what it shows.'
    : `${bare} more pictures lie by this note, and nobody said what they show.`;
}
