/**
 * For an inspector: which vehicle it is by its numbers, every departure from original, materials and methods, who did
 * what; and what a conservation record should hold, point by point (AIC Guidelines for Practice 24 to 28).
 */
import { classedOf } from '../../journal/registers/classed.ts';
import { identityAt, isIdentityTold } from '../../journal/registers/identity.ts';
import { registerAt } from '../../journal/registers/register.ts';
import { tellsRecordings, unrecordedAt } from '../../journal/registers/unrecorded.ts';
import { capital, counted, listedNames, someOfAll, spelled } from '../../site/views/page/words.ts';
import { keepers, methods, temporary } from '../appendices.ts';
import { backOtherwise, departures } from '../register-chapters.ts';
import type { BookSetting } from '../setting.ts';
import { words } from '../typst-text.ts';
import { asPart, type SheetText } from './frame.ts';
import { planWords } from './plan-words.ts';
import { namesWorkers, whoDidIt, whoWorkedWords } from './who-did-it.ts';

export function inspectorSheet(setting: BookSetting): SheetText {
  const { copy } = setting.sheet;
  return {
    title: 'For an inspector',
    line: `Which vehicle this is, how it differs from its original condition, and what was done${namesWorkers(copy) ? ' by whom' : ''}.`,
    parts: [
      identity(setting),
      asPart(departures(setting)),
      asPart(backOtherwise(setting)),
      asPart(temporary(setting)),
      asPart(methods(setting)),
      asPart(keepers(setting)),
      whoDidIt(setting),
      points(setting),
    ],
  };
}

/** A table that nothing in the catalogue answers reaches nothing and misses nothing. */
const NOT_ANSWERED = 'No part of the catalogue says which component it is, so that the table is not answered.';

function identity({ record }: BookSetting): string {
  const bare = record.copy.leavesOut.includes('marks') ? words('This copy leaves numbers and marks out.') : '';
  const { vehicle } = record.journal.settings;
  const facts = [
    ['Make and model', [vehicle.make, vehicle.model].filter((one) => one !== null).join(' ')],
    ['Year', vehicle.year ?? ''],
    ...vehicle.marks.map(({ what, mark }) => [`${capital(what)}, number found`, mark]),
  ];
  const rows = facts.flatMap(([name = '', value = '']) => (value === '' ? [] : [`[${words(name)}], [${words(value)}]`]));
  const tables = (isIdentityTold(record) ? record.journal.identityTables : []).map((table) => {
    const { answers, points, reached } = identityAt(record, table, null);
    const cells = answers.map(({ line, answer, points: given }) =>
      [line.words, answer === 'unknown' ? 'not known' : answer, String(given)].map((cell) => `[${words(cell)}]`).join(', '),
    );
    const known = answers.some(({ answer }) => answer !== 'unknown');
    const count = `${capital(counted(points, 'point'))}, and ${table.needed} are needed: by this count they are ${reached ? '' : 'not '}reached.`;
    const sum = `${known ? count : NOT_ANSWERED} ${table.caution}`;
    return `#heading(level: 3)[${words(table.title)}]\n\n#record-table(columns: (1fr, auto, auto), align: (left, left, right), head: ([Component], [Answer], [Points]), ${cells.join(', ')})\n\n${words(`${sum} Source: ${table.source}. ${table.standing}`)}`;
  });
  return `== The vehicle and its numbers\n\n#record-table(columns: (46mm, 1fr), head: ([], []), ${rows.join(', ')})\n\n${[bare, ...tables].join('\n\n')}`;
}

/** So many parts are named; of more it is told how many. */
const NAMED = 12;

export function unrecordedWords(names: readonly string[]): string {
  const without = 'neither marks taken that time nor a picture';
  if (names.length === 0) return '';
  return names.length > NAMED
    ? ` ${names.length} parts or lots went back with ${without}.`
    : ` Went back with ${without}: ${listedNames(names)}.`;
}

/** Source: American Institute for Conservation, Guidelines for Practice, 24 to 28, read in the commentaries. */
function points({ record, sheet }: BookSetting): string {
  const { sessions, settings } = record.journal;
  const rows = registerAt(record, null);
  const classed = Map.groupBy(rows, ({ position }) => classedOf(record, position, record.day));
  const before = classed.get('before')?.length ?? 0;
  const after = classed.get('after')?.length ?? 0;
  const views = (view: string) => sessions.reduce((sum, { pictures }) => sum + pictures.filter((one) => one.view === view).length, 0);
  const backOn = tellsRecordings(record) ? unrecordedAt(record, null).backOn : [];
  const answers: [string, string][] = [
    [
      '24. A record whenever the thing is examined, treated or altered',
      `${capital(spelled(sessions.length, 'note'))}, ${sessions.length === 1 ? '' : 'each '}dated${whoWorkedWords(record)}.`,
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
      `${views('as-found')} as found, ${views('during')} during, ${views('as-left')} as left.${unrecordedWords([...new Set(backOn.map(({ part }) => sheet.partName(part)))])}`,
    ],
    [
      '28. Kept: two copies, not on electronic media alone',
      'The book and this sheet print; the archive carries sums of every file. Whether there are two copies, and where, the record cannot know.',
    ],
  ];
  const cells = answers.map(([point, answer]) => `[${words(point)}], [${words(answer)}]`);
  return `== What a conservation record should hold\n\n${words('By the Guidelines for Practice of the American Institute for Conservation, 24 to 28.')}\n\n#record-table(columns: (1fr, 1.6fr), head: ([Asked for], [In this record]), ${cells.join(', ')})`;
}
