/** The text of a new note. */

import type { IsoDate } from '../journal/model.ts';
import type { ItemHistory, JournalRecord } from '../journal/record.ts';
import { bagsAt } from '../journal/registers/bags.ts';

/** A title as part of a file name: `Front brakes, nearside` is `front-brakes-nearside`. */
export function slugOf(title: string): string {
  const slug = title
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '')
    .slice(0, 60)
    .replace(/-$/, '');
  return slug === '' ? 'note' : slug;
}

/**
 * A note with the fields that most evenings need, commented out, and what is open as comments.
 *
 * @param record the journal so far; null when it cannot be understood
 */
export function noteSkeleton(date: IsoDate, title: string, record: JournalRecord | null): string {
  const person = record ? ([...record.journal.people.keys()][0] ?? 'me') : 'me';
  const subsystem = record ? ([...record.journal.subsystems.keys()][0] ?? 'general') : 'general';
  return `---
date: ${date}
title: ${JSON.stringify(title)}
hours:
  # - { by: ${person}, on: ${subsystem}, time: 19:30-21:30 }
parts:
  # - { part: an-id, did: [removed, inspected], to: a shelf, condition: 1, note: what you saw }
decisions:
  # - { part: an-id, verdict: keep, because: why }
used:
  # - { consumable: an-id, amount: 100 ml, on: ${subsystem} }
opens:
  # - { id: a-new-id, kind: task, what: what is still to do }
closes:
  # - { id: an-id, how: how it was done }
${record ? openComments(record) : ''}---

`;
}

function openComments(record: JournalRecord): string {
  const next = record.journal.milestones.find((milestone) => !record.history.reached.has(milestone.id));
  const open = [...record.history.items.values()].filter((item) => item.closed === null);
  const temporary = open.filter((item) => item.opening.kind === 'temporary');
  const due = open.filter((item) => item.opening.kind !== 'temporary' && next !== undefined && dueBefore(item) === next.id);
  const bags = bagsAt(record, null)
    .filter(({ emptied }) => emptied === null)
    .map(({ bag }) => bag);
  return [
    ...section('Temporary measures still in place', temporary.map(line)),
    ...section(`To do before: ${next?.name ?? ''}`, due.map(line)),
    ...section('Bags still filled', bags.length === 0 ? [] : [bags.sort((a, b) => a - b).join(', ')]),
  ].join('');
}

function dueBefore(item: ItemHistory): string | null {
  return item.deferred.at(-1)?.to ?? item.opening.before;
}

function line({ id, opening }: ItemHistory): string {
  return `${id}: ${opening.what.replace(/\s+/g, ' ')}`;
}

function section(heading: string, lines: readonly string[]): string[] {
  return lines.length === 0 ? [] : [`# ${heading}:\n`, ...lines.map((each) => `#   ${each}\n`)];
}
