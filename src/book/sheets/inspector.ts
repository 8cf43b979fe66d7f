/**
 * For an inspector: which vehicle it is by its numbers, every departure from original, materials and methods, who did
 * what; and what a conservation record should hold, point by point (AIC Guidelines for Practice 24 to 28).
 */
import { classedOf } from '../../journal/registers/classed.ts';
import { identityAt } from '../../journal/registers/identity.ts';
import { registerAt } from '../../journal/registers/register.ts';
import { tellsRecordings, unrecordedAt } from '../../journal/registers/unrecorded.ts';
import { capital, counted, listed, listedNames, someOfAll, spelled } from '../../site/views/page/words.ts';
import { keepers, methods, temporary } from '../appendices.ts';
import { departures } from '../register-chapters.ts';
import type { BookSetting } from '../setting.ts';
import { words } from '../typst-text.ts';
import { cameShort } from './came-short.ts';
import { asPart, type SheetText } from './frame.ts';
import { planWords } from './plan-words.ts';

export function inspectorSheet(setting: BookSetting): SheetText {
  return {
    title: 'For an inspector',
    line: 'Which vehicle this is, how it differs from its original condition, and what was done by whom.',
    parts: [
      identity(setting),
      asPart(departures(setting)),
      asPart(temporary(setting)),
      asPart(methods(setting)),
      asPart(keepers(setting)),
      people(setting),
      points(setting),
    ],
  };
}

/** A table that nothing in the catalogue answers reaches nothing and misses nothing. */
const NOT_ANSWERED = 'No part of the catalogue says which component it is, so that the table is not answered.';

function identity({ record }: BookSetting): string {
  const { vehicle } = record.journal.settings;
  const facts = [
    ['Make and model', [vehicle.make, vehicle.model].filter((one) => one !== null).join(' ')],
    ['Year', vehicle.year ?? ''],
    ...vehicle.marks.map(({ what, mark }) => [`${capital(what)}, number found`, mark]),
  ];
  const rows = facts.flatMap(([name = '', value = '']) => (value === '' ? [] : [`[${words(name)}], [${words(value)}]`]));
  const tables = record.journal.identityTables.map((table) => {
    const { answers, points, reached } = identityAt(record, table, null);
    const cells = answers.map(({ line, answer, points: given }) =>
      [line.words, answer === 'unknown' ? 'not known' : answer, String(given)].map((cell) => `[${words(cell)}]`).join(', '),
    );
    const known = answers.some(({ answer }) => answer !== 'unknown');
    const count = `${counted(points, 'point')} of ${table.needed} needed; by this count they are ${reached ? '' : 'not '}reached.`;
    const sum = `${known ? count : NOT_ANSWERED} ${table.caution}`;
    return `#heading(level: 3)[${words(table.title)}]\n\n#record-table(columns: (1fr, auto, auto), align: (left, left, right), head: ([Component], [Answer], [Points]), ${cells.join(', ')})\n\n${words(`${sum} Source: ${table.source}. ${table.standing}`)}`;
  });
  return `== The vehicle and its numbers\n\n#record-table(columns: (46mm, 1fr), head: ([], []), ${rows.join(', ')})\n\n${tables.join('\n\n')}`;
}

/** Who worked, in how many sessions and how long, and which firms had what. */
function people(setting: BookSetting): string {
  const { record, sheet } = setting;
  const by = Map.groupBy(
    record.journal.sessions.flatMap(({ id, hours }) => hours.map((one) => ({ ...one, session: id }))),
    ({ by: person }) => person,
  );
  const cells = [...by].map(([person, hours]) => {
    const minutes = hours.reduce((sum, one) => sum + one.minutes, 0);
    return [sheet.personName(person), String(new Set(hours.map(({ session }) => session)).size), sheet.figures.time(minutes)]
      .map((cell) => `[${words(cell)}]`)
      .join(', ');
  });
  const firms = new Set(record.history.deeds.flatMap(({ to }) => (to.at === 'out' ? [to.firm] : [])));
  const out = firms.size === 0 ? '' : words(`Parts were out with ${listed([...firms].sort())}.`);
  const billed = workBilled(setting).map(([firm, what]) => `${firm} (${listedNames(what)})`);
  const outside = billed.length === 0 ? '' : words(`Outside work was done by ${listedNames(billed)}.`);
  const table =
    cells.length === 0
      ? words('Nobody’s hours are in this copy of the record.')
      : `#record-table(columns: (1fr, auto, auto), align: (left, right, right), head: ([Who], [Sessions], [Time]), ${cells.join(', ')})`;
  const short = cameShort(setting);
  const owed = short.length === 0 ? '' : words(`Came back short: ${listed(short)}.`);
  return `== Who did it\n\n${table}\n\n${outside}\n\n${out}\n\n${owed}`;
}

/** Firms whose bills are of outside work, and what that was, in the order of the notes; what was given back is no work. */
function workBilled({ record }: BookSetting): readonly [firm: string, what: readonly string[]][] {
  const bills = record.journal.sessions.flatMap((session) => session.bills);
  const lines = bills.flatMap(({ from, lines }) =>
    lines.flatMap(({ as, what, gross }) => (from !== null && as === 'outside-work' && gross >= 0 ? [{ from, what }] : [])),
  );
  return [...Map.groupBy(lines, ({ from }) => from)].map(([firm, of]) => [firm, [...new Set(of.map(({ what }) => what))]]);
}

/** Source: American Institute for Conservation, Guidelines for Practice, 24 to 28, read in the commentaries. */
function points({ record, sheet }: BookSetting): string {
  const { sessions, settings } = record.journal;
  const rows = registerAt(record, null);
  const unnamed = sessions.filter(({ hours }) => hours.length === 0);
  const classed = Map.groupBy(rows, ({ position }) => classedOf(record, position, record.day));
  const before = classed.get('before')?.length ?? 0;
  const after = classed.get('after')?.length ?? 0;
  const views = (view: string) => sessions.reduce((sum, { pictures }) => sum + pictures.filter((one) => one.view === view).length, 0);
  const backOn = tellsRecordings(record) ? unrecordedAt(record, null).backOn : [];
  const answers: [string, string][] = [
    [
      '24. A record whenever the thing is examined, treated or altered',
      `${capital(spelled(sessions.length, 'note'))}, each dated${unnamed.length === 0 ? ', each with who worked' : `; nobody is named in ${listedNames(unnamed.map(({ title }) => title))}`}.`,
    ],
    [
      '24. What it is: maker, owner, numbers, marks, measurements',
      `${settings.vehicle.marks.length === 0 ? 'No number is given in this copy. ' : `${counted(settings.vehicle.marks.length, 'number')} given. `}${capital(
        counted(
          sessions.reduce((sum, { measured }) => sum + measured.length, 0),
          'measurement',
        ),
      )}.`,
    ],
    [
      '25. Condition before treatment',
      `A condition class from before any work is written down for ${someOfAll(before, rows.length, 'place').which}${after === 0 ? '' : `, for ${after} only from when work on it had begun`}; ${counted(views('as-found'), 'picture')} as found.`,
    ],
    ['26. The plan, and departures from it', planWords(record)],
    [
      '27. Treatment: dated, by whom, with what',
      `${counted(record.history.deeds.length, 'action')} dated; ${counted(
        sessions.reduce((sum, one) => sum + one.methods.length, 0),
        'method',
      )} with materials and result.`,
    ],
    [
      '27. Pictures before, during and after, above all of what will be hidden',
      `${views('as-found')} as found, ${views('during')} during, ${views('as-left')} as left.${backOn.length === 0 ? '' : ` Went back with neither marks taken that time nor a picture: ${listedNames(backOn.map(({ part }) => sheet.partName(part)))}.`}`,
    ],
    [
      '28. Kept: two copies, not on electronic media alone',
      'The book and this sheet print; the archive carries sums of every file. Whether there are two copies, and where, the record cannot know.',
    ],
  ];
  const cells = answers.map(([point, answer]) => `[${words(point)}], [${words(answer)}]`);
  return `== What a conservation record should hold\n\n${words('By the Guidelines for Practice of the American Institute for Conservation, 24 to 28.')}\n\n#record-table(columns: (1fr, 1.6fr), head: ([Asked for], [In this record]), ${cells.join(', ')})`;
}
