/** What is open on the day of a new note, as comments: nothing of it has to be remembered or looked up. */

import { labelOfLink } from '../../journal/model/link-target.ts';
import type { ItemKind } from '../../journal/model.ts';
import type { JournalRecord } from '../../journal/record.ts';
import { type BagRow, bagsAt, isLeftEmpty, leftInWords, unnamedIn } from '../../journal/registers/bags.ts';
import { errandOf } from '../../journal/registers/errands.ts';
import { type ItemRow, openItemsAt } from '../../journal/registers/open-items.ts';
import { orderedSessions } from '../../journal/registers/stays.ts';
import { offVehicleAt } from '../../journal/registers/stores.ts';
import { endOf } from '../../journal/replay/seat.ts';
import { inARow, whereInWords } from '../../journal/replay/words.ts';

const KINDS: readonly (readonly [kind: ItemKind, heading: string])[] = [
  ['temporary', 'Temporary measures still in place'],
  ['task', 'To do'],
  ['question', 'To find out'],
  ['buy', 'To buy'],
  ['waiting', 'Waiting for'],
];

/** Sections with a heading each, in lines of comment; of what there is none there is no section. */
export function openMatters(record: JournalRecord): readonly string[] {
  const open = openItemsAt(record, null);
  // What stayed behind when the vehicle passed on is not here to be worked on.
  const off = offVehicleAt(record, null).filter(({ stayed }) => stayed === null);
  const out = off.filter(({ where }) => endOf(where).at === 'out');
  const lying = off.filter(({ where }) => where.at === 'stores');
  const bags = bagsAt(record, null).filter(({ emptied }) => emptied === null);
  const named = (part: string, count: number) => `${part}${count > 1 ? ` (${count})` : ''}`;
  return [
    ...lastEvening(record),
    ...KINDS.flatMap(([kind, heading]) =>
      section(
        heading,
        byMilestone(
          record,
          open.filter((item) => item.kind === kind),
        ),
      ),
    ),
    ...section(
      'Out',
      out.map(({ part, count, where }) => `${named(part, count)}: ${whereInWords(where)}${dueWords(record, part)}`),
    ),
    ...section(
      'Parts off',
      lying.map(({ part, count, where }) => `${named(part, count)}: ${whereInWords(where)}`),
    ),
    ...section(
      'Bags still filled',
      bags.map((bag) => bagInWords(record, bag)),
    ),
  ];
}

function bagInWords({ journal }: JournalRecord, row: BagRow): string {
  const { bag, filling, filled } = row;
  const end = isLeftEmpty(row) ? `: \`emptied: [${bag}]\`` : '';
  const more = unnamedIn(row, (part) => journal.parts.get(part)?.name ?? part);
  const withMore = more.length === 0 ? [] : [`with ${more.join(', ')}`];
  return [
    `${bag}: ${inARow(filling.holds)} (${filling.off ?? filled.date})`,
    ...withMore,
    ...leftInWords(row).map((left) => left + end),
  ].join('; ');
}

/** What the last evening left for the next one: what it opened, and how its prose ended. */
function lastEvening(record: JournalRecord): string[] {
  const last = orderedSessions(record).at(-1);
  if (!last) return [];
  const words =
    last.body
      .trim()
      .split(/\n\s*\n/)
      .at(-1)
      ?.replaceAll(/\[([^\]]*)\]\(([^)]*)\)/g, (_, said: string, address: string) => said || labelOfLink(record, address)) ?? '';
  const opened = last.opens.map(({ id, what }) => `${id}: ${what}`);
  return section(`The last evening, ${last.date}, ${last.title}`, [...opened, ...(words === '' ? [] : [shortened(words)])]);
}

/** What is due first stands first; what is due before no milestone, last. */
function byMilestone({ journal }: JournalRecord, items: readonly ItemRow[]): string[] {
  const order = new Map(journal.milestones.map(({ id, order: n }) => [id, n]));
  const rank = ({ due }: ItemRow) => (due === null ? Number.MAX_SAFE_INTEGER : (order.get(due) ?? 0));
  return items.toSorted((a, b) => rank(a) - rank(b)).map((item) => `${item.id}: ${item.what}${detailOf(item)}`);
}

function detailOf({ due, from, promised }: ItemRow): string {
  const said = [from && `from ${from}`, promised && `due ${promised}`, due && `before ${due}`].filter((one) => one !== null && one !== '');
  return said.length === 0 ? '' : ` (${said.join(', ')})`;
}

function dueWords(record: JournalRecord, part: string): string {
  const due = errandOf(record, part, null)?.due ?? null;
  return due === null ? '' : `, due ${due}`;
}

/** Comments are of one line each, whatever was written. */
export function section(heading: string, lines: readonly string[]): string[] {
  return lines.length === 0 ? [] : [`# ${inOneLine(heading)}:`, ...lines.map((line) => `#   ${/^ */.exec(line)?.[0]}${inOneLine(line)}`)];
}

const inOneLine = (text: string): string => text.replaceAll(/\s+/g, ' ').trim();

function shortened(text: string): string {
  const line = inOneLine(text);
  return line.length <= 200 ? line : `… ${line.slice(-200).replace(/^\S*\s/, '')}`;
}
