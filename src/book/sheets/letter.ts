/** A letter for the client: what was done in a month, in the sentences of its notes, what it took, what is next, and which decisions are wanted. */
import { budgets } from '../../journal/ledger/budgets.ts';
import { ledgerAt } from '../../journal/ledger/ledger-at.ts';
import { totalsOf } from '../../journal/ledger/totals.ts';
import type { Session } from '../../journal/model.ts';
import { openItemsAt, questionsAt } from '../../journal/registers/open-items.ts';
import { registerAt } from '../../journal/registers/register.ts';
import { openingWords } from '../../site/views/home/opening-words.ts';
import { standingOf } from '../../site/views/home/standing.ts';
import { counted, sentence } from '../../site/views/page/words.ts';
import { leadPicture } from '../../site/views/pictures/pictures.ts';
import { type BookSetting, figure, nameOfLink } from '../setting.ts';
import { words } from '../typst-text.ts';
import type { SheetText } from './frame.ts';

/** @param month `2031-03` */
export function clientLetter(month: string): (setting: BookSetting) => SheetText {
  return (setting) => {
    const { record, sheet } = setting;
    const sessions = record.journal.sessions.filter(({ date }) => date.startsWith(month));
    const minutes = sessions.reduce((sum, { hours }) => hours.reduce((total, one) => total + one.minutes, sum), 0);
    return {
      title: sheet.figures.month(month),
      line:
        sessions.length === 0
          ? 'Nothing was written down that month.'
          : [counted(sessions.length, 'session'), ...(minutes === 0 ? [] : [sheet.figures.time(minutes)])].join(', '),
      parts: [...sessions.map((session) => evening(setting, session)), took(setting, month), next(setting), wanted(setting)],
    };
  };
}

/** Some sentences are enough: the note itself is on the pages. */
const MOST = 420;

function evening(setting: BookSetting, session: Session): string {
  const lead = leadPicture(setting.sheet, session);
  const picture = lead === null ? '' : figure(setting, lead, session);
  return `=== ${words(session.title)}\n\n#plain[${words(setting.sheet.date(session.date))}]\n\n${words(openingWords(session.body, MOST, (address) => nameOfLink(setting, address)))}\n\n${picture}`;
}

function took({ record, sheet }: BookSetting, month: string): string {
  const { figures } = sheet;
  const entries = record.ledger.entries.filter(({ date }) => date.startsWith(month));
  const { minutes, cost, paid } = totalsOf(entries);
  const money =
    cost === 0 && paid === 0
      ? []
      : [
          ['Cost of the month', figures.money(cost)],
          ['Paid out', figures.money(paid)],
        ];
  const rows = [...(minutes === 0 ? [] : [['Time', figures.time(minutes)]]), ...money].map(
    ([name = '', value = '']) => `[${words(name)}], [${words(value)}]`,
  );
  const left = budgets(record.journal, ledgerAt(record, record.day)).flatMap(({ subsystem, hours, money: sum }) => {
    if (hours === null && sum === null) return [];
    return [
      [subsystem.name, hours === null ? '' : figures.hours(hours.left), sum === null ? '' : figures.amount(sum.left)]
        .map((cell) => `[${words(cell)}]`)
        .join(', '),
    ];
  });
  const budget =
    left.length === 0
      ? ''
      : `#record-table(columns: (1fr, auto, auto), align: (left, right, right), head: ([Left of the budget], [Hours], [Money]), ${left.join(', ')})`;
  return rows.length === 0 && budget === ''
    ? ''
    : `== What it took\n\n${rows.length === 0 ? '' : `#record-table(columns: (1fr, auto), align: (left, right), head: ([], []), ${rows.join(', ')})`}\n\n${budget}`;
}

function next({ record, sheet }: BookSetting): string {
  const { next: gate } = standingOf(record);
  const items = gate === null ? openItemsAt(record, null) : [...gate.items, ...gate.temporary];
  if (items.length === 0) return '';
  const title = gate === null ? 'What is open' : `Before ${sheet.milestoneName(gate.milestone.id)}`;
  return `== ${words(title)}\n\n#list(${items.map(({ what }) => `[${words(sentence(what))}]`).join(', ')})`;
}

/** What somebody has to decide. */
function wanted({ record, sheet }: BookSetting): string {
  const open = registerAt(record, null).filter(
    ({ undecided, position }) => undecided > 0 && (record.journal.positions.get(position)?.parts.length ?? 0) > 1,
  );
  const asked = [
    ...questionsAt(record, null).map(({ what }) => sentence(what)),
    ...open.map(({ position }) => `${sheet.positionName(position)}: there is another to put in its place.`),
  ];
  return asked.length === 0 ? '' : `== Decisions wanted\n\n#list(${asked.map((one) => `[${words(one)}]`).join(', ')})`;
}
