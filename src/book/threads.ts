/** Threads: each a story through many evenings, in the passages that speak of it, with the page where the whole evening stands. */
import type { PartId, Session, Thread } from '../journal/model.ts';
import { listedNames } from '../site/views/page/words.ts';
import { eveningWords } from '../site/views/session/session-facts.ts';
import { sessionsOfThread } from '../site/views/session/threads.ts';
import { decidedText } from './decided.ts';
import { deedText } from './deeds.ts';
import { proseToTypst } from './prose.ts';
import { type BookSetting, mention, nameOfLink } from './setting.ts';
import { call, literal, words } from './typst-text.ts';

export function threads(setting: BookSetting): string {
  const { threads: all } = setting.record.journal;
  const told = all.flatMap((thread) => {
    const sessions = sessionsOfThread(setting.record, thread);
    return sessions.length === 0 ? [] : [threadText(setting, thread, sessions)];
  });
  const opening = 'Stories that run through many evenings. Here is what was done each time; the evening itself stands on the page given.';
  return told.length === 0 ? '' : `= Threads\n\n${words(opening)}\n\n${told.join('\n\n')}`;
}

function threadText(setting: BookSetting, thread: Thread, sessions: readonly Session[]): string {
  const { sheet } = setting;
  const about = thread.parts.map((part) => mention(setting, part)).join('') + words(listedNames(thread.parts.map(sheet.partName)));
  const steps = sessions.map((session) => stepText(setting, thread, session));
  return `#heading(level: 2)[${words(thread.title)}]\n\n#remark[${words('About ')}${about}${words('.')}]\n\n${steps.join('\n')}`;
}

/** An evening that names none of the parts is told by its first words. */
const MOST = 320;

function stepText(setting: BookSetting, { parts }: Thread, session: Session): string {
  const { sheet } = setting;
  const concerns = (part: PartId) => parts.includes(part);
  const decided = session.decisions.filter(({ part, position }) => concerns(part) || concerns(position));
  const decisions = decided.map((one) => decidedText(setting, one));
  const done = session.parts.filter(({ part, did }) => concerns(part) && did.length > 0);
  const deeds = done.map((entry) => deedText(setting, entry));
  const facts = [...deeds, ...decisions];
  const passages = passagesOf(setting, session, parts);
  const told = passages === '' ? words(eveningWords(sheet, session, MOST)) : passages;
  const head = { when: `[${words(sheet.date(session.date))}]`, title: `[${words(session.title)}]`, to: literal(session.id) };
  return call('thread-step', head, [told, ...(facts.length === 0 ? [] : [call('facts', {}, facts.join(' #linebreak() '))])].join('\n\n'));
}

/** The paragraphs of a note that name a part of the thread, as they stand there; its pictures stand in the story. */
function passagesOf(setting: BookSetting, { body }: Session, parts: readonly PartId[]): string {
  const naming = body.split(/\n\s*\n/).filter((one) => parts.some((part) => new RegExp(`\\]\\(part:${part}\\)`).test(one)));
  const plain = naming.filter((one) => !/^\s*(?:#|\||```|!\[)/.test(one));
  return proseToTypst(plain.join('\n\n'), {
    picture: () => '',
    mention: (part) => mention(setting, part),
    nameOf: (url) => nameOfLink(setting, url),
  });
}
