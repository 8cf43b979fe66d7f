import type { Identity, IdentityAnswer, IdentityNeedAnswer } from '../../../journal/registers/identity.ts';
import { registerAtAddress } from '../../addresses.ts';
import { html, joined, type Markup } from '../page/html.ts';
import { linked, partLink, positionLink, sessionDay, sub } from '../page/links.ts';
import type { Sheet } from '../page/sheet.ts';
import { capital } from '../page/words.ts';
import { rows, type SetTable, setTable } from '../tables/table.ts';

/** A points table as it stood at a milestone, and the names of those reached that day. */
export interface IdentityThen {
  readonly identity: Identity;
  readonly milestones: readonly string[];
}

const ANSWERS = { yes: 'yes', no: 'no', unknown: 'not known' } as const;

/** The lines of a points table: its words, the answer, the points, and the parts they come from. */
export function pointsTable(sheet: Sheet, { table, answers }: Identity): SetTable {
  return setTable<IdentityAnswer>({
    label: table.title,
    set: 'points',
    columns: [
      { head: 'Component', names: true, cell: ({ line }) => line.words },
      { head: 'Answer', cell: ({ answer }) => ANSWERS[answer] },
      { head: 'Points', set: 'num', cell: ({ points, line }) => `${points} of ${line.points}` },
      { head: 'From', set: 'grounds', bare: true, cell: ({ needs }) => needs.flatMap((need) => groundsOf(sheet, need)) },
    ],
    groups: rows(answers),
  });
}

/** The parts that answer one need of a line, one under the other; what was worked on since is told. */
function groundsOf(sheet: Sheet, { need, grounds }: IdentityNeedAnswer): (Markup | false)[] {
  const named = need.what === null ? '' : `${capital(need.what)}: `;
  if (grounds.length === 0) return [sub(capital(`${named}no part carries it`))];
  return grounds.map(({ position, words, fitted, changed }) => {
    const others = fitted.filter(({ part }) => part !== position).map(({ part }) => html`, ${partLink(sheet, part)}`);
    const work = changed.map(({ session, date, did }) => html`${did} ${sessionDay(sheet, session, date)}`);
    const asked = work.length > 0 && html`; worked on, so ask whether that counts as a change: ${joined(work, ', ')}`;
    return sub(html`${named}${positionLink(sheet, position)}: ${words}${others}${asked}`);
  });
}

/** The points of each line at the milestones that were reached, oldest first. */
export function pointsBefore(sheet: Sheet, { table }: Identity, before: readonly IdentityThen[]): SetTable {
  return setTable<IdentityThen>({
    label: `${table.title}, at the milestones`,
    columns: [
      {
        head: 'Day',
        names: true,
        set: 'date',
        cell: ({ identity: { date } }) => linked(sheet.figures.shortDate(date), sheet.link(registerAtAddress(date))),
      },
      { head: 'Reached', set: 'nowrap', bare: true, cell: ({ milestones }) => milestones.join(', ') },
      { head: 'Points', set: 'num', cell: ({ identity }) => identity.points },
      ...table.lines.map(({ id }, n) => ({
        head: capital(id),
        set: 'num',
        cell: ({ identity }: IdentityThen) => identity.answers[n]?.points,
      })),
    ],
    groups: rows(before),
  });
}
