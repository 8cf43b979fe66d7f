/** A position's page beside the record of its life: everything that the record holds of it can be read there. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parseHTML } from 'linkedom';
import { beforeAll, describe, expect, it } from 'vitest';
import { compileJournal } from '../../../src/journal/pipeline.ts';
import type { JournalRecord, Moment } from '../../../src/journal/record.ts';
import { partTimeline, positionTimeline } from '../../../src/journal/timelines/timelines.ts';
import { loadJournal } from '../../../src/load/load.ts';
import type { Bench } from '../bench.ts';

const DEMO = fileURLToPath(new URL('../../../content', import.meta.url));

export function lives(bench: Bench): void {
  describe('the life of each position', () => {
    let record: JournalRecord;
    const read = new Map<string, Document>();
    const pageOf = (id: string): Document => {
      const page = read.get(id) ?? parseHTML(readFileSync(join(bench.site.folder, 'parts', `${id}.html`), 'utf8')).document;
      read.set(id, page);
      return page;
    };
    beforeAll(() => {
      const compiled = compileJournal(loadJournal(DEMO), { today: '2100-01-01' });
      if (!compiled.record) throw new Error('the demo has no record');
      record = compiled.record;
    });

    it.each([
      ['occupants with their dates, empty spells and candidates that were never used', 'life', lifeOf],
      ['decisions with their reasons in full, and what overturned them', 'decisions', decisionsOf],
      ['actions, measurements and marks on film', 'chronicle', chronicleOf],
      ['measurements as found and as left', 'measured', measuredOf],
      ['where each part has been and who has had it', 'parts', partsOf],
    ] as const)('tells %s', (_, heading, told) => {
      const missing: string[] = [];
      let looked = 0;
      for (const id of record.journal.positions.keys()) {
        const page = pageOf(id);
        // Where nothing ever happened no line is drawn: the state says what has stood there since it was found.
        const still = heading === 'life' && page.getElementById('life') === null && isUneventful(record, id);
        const text = still ? plain(page.querySelector('dl.state')?.textContent ?? '') : under(page, heading);
        for (const words of still ? [nameOf(record, id), 'since it was found'] : told(record, id)) {
          looked += 1;
          if (!text.includes(plain(words))) missing.push(`${id}: ${words}`);
        }
      }
      expect(missing).toEqual([]);
      expect(looked).toBeGreaterThan(30);
    });
  });
}

/** The text from a heading up to the next of its rank. */
function under(page: Document, id: string): string {
  const heading = page.getElementById(id);
  let text = '';
  for (let next = heading?.nextElementSibling; next && next.localName !== 'h2'; next = next.nextElementSibling)
    text += ` ${next.textContent}`;
  return plain(text);
}

function plain(text: string): string {
  return text.replaceAll(/\s+/g, ' ').trim().toLowerCase();
}

const day = new Intl.DateTimeFormat('en-GB', { day: 'numeric', month: 'short', year: 'numeric', timeZone: 'UTC' });
const longDay = new Intl.DateTimeFormat('en-GB', { day: 'numeric', month: 'long', year: 'numeric', timeZone: 'UTC' });
const nameOf = ({ journal }: JournalRecord, part: string) => journal.parts.get(part)?.name ?? part;

/** What is told in order and leaves no mark on a line of life. */
const UNMARKED: ReadonlySet<string> = new Set(['paper', 'opened']);

function isUneventful(record: JournalRecord, id: string): boolean {
  const { occupancies, gaps, unused, events } = positionTimeline(record, id);
  return events.every(({ kind }) => UNMARKED.has(kind)) && gaps.length === 0 && unused.length === 0 && occupancies.length === 1;
}

function lifeOf(record: JournalRecord, id: string): string[] {
  const { occupancies, gaps, unused, position } = positionTimeline(record, id);
  const end = (to: { date: string } | null) => (to === null ? 'now' : day.format(new Date(to.date)));
  const many = (count: number) => (position.count > 1 ? `${count} of ${position.count}, ` : '');
  const spell = ({ count, from, to }: (typeof gaps)[number]) =>
    `${many(count)}${from.session === null ? 'as found' : day.format(new Date(from.date))} to ${end(to)}`;
  return [
    ...occupancies.flatMap(({ part, steps }) => [nameOf(record, part), ...steps.map(spell)]),
    ...gaps.map(spell),
    ...unused.map(({ part }) => nameOf(record, part)),
  ];
}

function decisionsOf(record: JournalRecord, id: string): string[] {
  const { decisions } = positionTimeline(record, id);
  return decisions.flatMap(({ decision, supersededBy }) => [
    decision.because ?? '',
    ...supersededBy.map((later) => `Superseded by decision ${decisions.findIndex((one) => one.decision === later.decision) + 1} on`),
  ]);
}

function chronicleOf(record: JournalRecord, id: string): string[] {
  return positionTimeline(record, id).events.flatMap((event) => {
    if (event.kind === 'deed') return [nameOf(record, event.deed.part), event.deed.entry.note ?? ''];
    if (event.kind === 'measurement') return [event.measurement.what, event.measurement.value.text];
    return event.kind === 'film' ? [event.mark.text] : [];
  });
}

function measuredOf(record: JournalRecord, id: string): string[] {
  return positionTimeline(record, id).measurements.flatMap(({ what, asFound, asLeft, readings }) => [
    what,
    ...[asFound, asLeft].flatMap((side) => (side ? [side.measurement.value.text] : [])),
    ...readings.map(({ measurement, date }) => `${measurement.value.text} ${day.format(new Date(date))}`),
  ]);
}

function partsOf(record: JournalRecord, id: string): string[] {
  const parts = record.journal.positions.get(id)?.parts ?? [];
  return parts.flatMap((part) =>
    partTimeline(record, part).custody.flatMap(({ custody, from, to }) => [
      nameOf(record, part),
      custody.by === 'firm' ? custody.firm : '',
      heldWords(record, from, to),
    ]),
  );
}

/** `since it was found`, `until 2 May 2025`, `since 12 March 2025`, `from 12 March 2025 to 2 May 2025`. */
function heldWords({ journal }: JournalRecord, from: Moment, to: Moment | null): string {
  const [begun, ended] = [from, to].map((one) => (one === null ? null : longDay.format(new Date(one.date))));
  if (from.session === null && from.date === journal.settings.arrived) return ended === null ? 'since it was found' : `until ${ended}`;
  return ended === null ? `since ${begun}` : `from ${begun} to ${ended}`;
}
