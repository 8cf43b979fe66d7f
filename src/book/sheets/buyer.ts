/** For somebody who may buy the vehicle: what is original and how that is known, what is not, what comes with it, what is not recorded, what is dangerous. */
import { isAsTheWorks } from '../../journal/registers/as-the-works.ts';
import { marksOf } from '../../journal/registers/observations.ts';
import type { Occupant } from '../../journal/registers/occupant.ts';
import { opinionsOf, originAt } from '../../journal/registers/origins.ts';
import { type RegisterRow, registerAt } from '../../journal/registers/register.ts';
import { tellsRecordings, unrecordedAt } from '../../journal/registers/unrecorded.ts';
import { capital, heldByTheWorks, listedNames, sentence } from '../../site/views/page/words.ts';
import { cautions, comesWith, keepers, temporary } from '../appendices.ts';
import { backOtherwise, departures } from '../register-chapters.ts';
import type { BookSetting } from '../setting.ts';
import { words } from '../typst-text.ts';
import { cameShort } from './came-short.ts';
import { asPart, type SheetText } from './frame.ts';
import { manyNames, type NamedThing } from './many-names.ts';

export function buyerSheet(setting: BookSetting): SheetText {
  const rows = registerAt(setting.record, null);
  const own = rows.filter((row) => isAsTheWorks(setting.record, row));
  return {
    title: 'For a buyer',
    line: `${heldByTheWorks(own.length, rows.length)} That is a belief with its evidence, and no certificate.`,
    parts: [
      originals(setting),
      worked(setting),
      asPart(departures(setting)),
      asPart(backOtherwise(setting)),
      asPart(temporary(setting)),
      asPart(comesWith(setting)),
      asPart(keepers(setting)),
      gaps(setting),
      asPart(cautions(setting)),
    ],
  };
}

/** Originals with the evidence for them; those that have none but that nobody doubted are named together. */
function originals(setting: BookSetting): string {
  const { record } = setting;
  const known = registerAt(record, null).flatMap((row) => knownOriginal(setting, row));
  if (known.length === 0) return '';
  const cells = known.flatMap(({ name, evidence }) => (evidence === '' ? [] : [`[${words(name)}], [${words(evidence)}]`]));
  const table =
    cells.length === 0 ? '' : `#record-table(columns: (1fr, 1.6fr), head: ([Original], [How it is known]), ${cells.join(', ')})`;
  const silent = known.filter(({ evidence }) => evidence === '');
  const why = record.copy.leavesOut.includes('marks')
    ? 'Believed original; marks that may tell it this copy leaves out'
    : 'Believed original because nothing speaks against it';
  const rest = silent.length === 0 ? '' : manyNames(setting, why, ':', silent);
  return `== What is original\n\n${table}\n\n${rest}`;
}

/** A place where an original stands, of a lot with how many, and what is known of those that stand there; '' for nothing. */
function knownOriginal(
  { record, sheet }: BookSetting,
  { position, subsystem, fitted, count: places }: RegisterRow,
): readonly (NamedThing & { readonly evidence: string })[] {
  const own = fitted.filter(({ origin }) => origin === 'original');
  const many = own.reduce((sum, { count }) => sum + count, 0);
  if (many === 0) return [];
  const parts = [...new Set(own.map(({ part }) => part))];
  const because = parts.flatMap((part) => opinionsOf(record, part).at(-1)?.because ?? []);
  const marks = parts.flatMap((part) => marksOf(record, part, numbersOf(own.filter((one) => one.part === part))));
  const said = [...because.map(capital), ...(marks.length === 0 ? [] : [`Marks: ${marks.join('; ')}`])];
  const name = `${sheet.positionName(position)}${many < places ? ` (${many} of ${places})` : ''}`;
  return [{ name, subsystem, evidence: said.map(sentence).join(' ') }];
}

/** Which of a numbered lot stand there; null where they cannot be told apart. */
function numbersOf(standing: readonly Occupant[]): readonly number[] | null {
  const all = standing.flatMap(({ which }) => which ?? []).sort((a, b) => a - b);
  return all.length === 0 ? null : all;
}

/** What was done to originals that are on the vehicle: conserved, refinished, repaired, or worked on in a way that nobody stated. */
function worked({ record, sheet }: BookSetting): string {
  const rows = registerAt(record, null).filter(({ outcome }) =>
    ['kept-conserved', 'kept-refinished', 'kept-repaired', 'kept-worked-on'].includes(outcome.kind),
  );
  const cells = rows.map(({ position, outcome }) => `[${words(sheet.positionName(position))}], [${words(capital(outcome.words))}]`);
  return cells.length === 0
    ? ''
    : `== What was done to what was kept\n\n#record-table(columns: (1fr, 1fr), head: ([Place], [Outcome]), ${cells.join(', ')})`;
}

/** Where a copy leaves out marks, film or where things were put. */
const UNTOLD = 'What went back with neither marks nor a picture is not told: this copy leaves out what may say that they were taken.';

/** What the record itself lacks: said before it is asked. */
function gaps(setting: BookSetting): string {
  const { record, sheet } = setting;
  const backOn = tellsRecordings(record) ? unrecordedAt(record, null).backOn : [];
  const rows = registerAt(record, null);
  const unknown = rows.filter(({ fitted }) => fitted.some(({ part }) => ['unknown', null].includes(originAt(record, part, record.day))));
  const open = rows.filter(({ undecided }) => undecided > 0);
  const against = rows.flatMap(({ position, mismatches }) => mismatches.map((one) => `${sheet.positionName(position)}. ${one.words}`));
  const place = ({ position, subsystem }: RegisterRow): NamedThing => ({ name: sheet.positionName(position), subsystem });
  const back = backOn.map(
    ({ part }): NamedThing => ({ name: sheet.partName(part), subsystem: record.journal.parts.get(part)?.subsystem ?? '' }),
  );
  const names: [string, readonly NamedThing[]][] = [
    ['Went back or on with neither marks taken that time nor a picture', back],
    ['Origin not known', unknown.map(place)],
    ['Undecided', open.map(place)],
  ];
  const lists: [string, readonly string[]][] = [
    ['Against what was decided', against],
    ['Came back short', cameShort(setting)],
  ];
  const said = [
    ...names.filter(([, some]) => some.length > 0).map(([what, some]) => manyNames(setting, what, '.', some)),
    ...lists
      .filter(([, some]) => some.length > 0)
      .map(([what, some]) => `#remark[#strong[${words(`${what}.`)}] ${words(sentence(capital(listedNames(some))))}]`),
  ];
  const untold = tellsRecordings(record) ? [] : [words(UNTOLD)];
  const nothing = said.length + untold.length === 0 ? [words('Nothing that the record knows of.')] : [];
  return `== What is missing from the record\n\n${[...said, ...untold, ...nothing].join('\n\n')}`;
}
