/** The first sheets: title, what the book is and how to read it, the vehicle. */
import { isAsTheWorks } from '../journal/registers/as-the-works.ts';
import { opinionsOf } from '../journal/registers/origins.ts';
import { registerAt } from '../journal/registers/register.ts';
import { vehicleLine } from '../site/views/home/vehicle.ts';
import { capital, copyWords, heldByTheWorks, listed, ORIGIN_MEANINGS, ORIGIN_WORDS, spelled } from '../site/views/page/words.ts';
import { headPicture } from '../site/views/pictures/pictures.ts';
import { printedSmaller } from './print-pictures.ts';
import { type BookSetting, pictureFile } from './setting.ts';
import { call, list, literal, words } from './typst-text.ts';

/** @param volume which of the volumes it opens, in words; null for a book that is one */
export function titlePage(setting: BookSetting, volume: string | null): string {
  const { sheet, record } = setting;
  const { settings } = record.journal;
  const head = headPicture(sheet, 0);
  const path = head === null ? null : pictureFile(setting, head.picture.file);
  const alt = head?.picture.alt ?? head?.picture.caption ?? 'The vehicle.';
  const lines = [
    ...(volume === null ? [] : [volume]),
    `The record of its restoration, as it stood on ${sheet.date(record.day)}`,
    copyWords(record.copy),
    ...keptBy(setting),
  ];
  return call('title-page', {
    picture: path === null ? 'none' : `image(${literal(path)}, width: 100%, alt: ${literal(alt)})`,
    name: `[${words(settings.title)}]`,
    vehicle: `[${words(vehicleLine(settings))}]`,
    lines: list(lines.map((line) => `[${words(line)}]`)),
  });
}

/** The people of the journal, but for whoever only gave an opinion of an origin. Who of them wrote is not known. */
function keptBy({ record: { journal, copy } }: BookSetting): readonly string[] {
  const worked = new Set(journal.sessions.flatMap(({ hours }) => hours.map(({ by }) => by)));
  const asked = new Set(journal.sessions.flatMap(({ attributed }) => attributed.map(({ by }) => by)));
  const names = [...journal.people].flatMap(([id, { name }]) => (worked.has(id) || !asked.has(id) ? [name] : []));
  return names.length === 0 || copy.leavesOut.includes('people') ? [] : [`Kept and worked on by ${listed(names)}`];
}

export function howToRead(setting: BookSetting): string {
  const { record } = setting;
  const smaller = printedSmaller(record.pictures);
  const opinions = [...record.journal.parts.keys()].flatMap((part) => opinionsOf(record, part));
  const origins = [...new Set(opinions.flatMap(({ origin }) => origin ?? []))];
  const paragraphs = [
    `This book was made from ${notesWritten(setting)}. Nothing in it was typed for the book: the story is the notes as they were written, and every table is counted from them.`,
    'What was decided and what stands on the vehicle are told apart. A decision that was later overturned is still here, with its reason.',
    'A part is called original where it is believed to have left the works on this vehicle. That is a belief, with the evidence it rests on; it is not a certificate.',
    'A continuous line means that the part found there stood in its place; a broken line, that another did.',
    ...(smaller === null
      ? []
      : [`Of its ${smaller} pictures each is printed smaller than the record has it, so that the file can be opened and handed on.`]),
  ];
  const meanings = origins.map((origin) => `[#strong[${words(capital(ORIGIN_WORDS[origin]))}]], [${words(ORIGIN_MEANINGS[origin])}]`);
  const table =
    meanings.length === 0
      ? ''
      : `#heading(level: 2)[Where parts come from]\n#record-table(columns: (auto, 1fr), head: ([Word], [Meaning]), ${meanings.join(', ')})`;
  return `= How to read this book\n\n${paragraphs.map(words).join('\n\n')}\n\n${table}`;
}

/** How many notes, and of which days. */
function notesWritten({ sheet, record: { journal } }: BookSetting): string {
  const { sessions } = journal;
  const [first, last] = [sessions[0], sessions.at(-1)];
  const notes = spelled(sessions.length, 'note');
  if (first === undefined || last === undefined) return `${notes} written in the workshop`;
  const each = sessions.length === 1 ? '' : ', one for each sitting of work';
  if (first.date === last.date) return `${notes} written on ${sheet.date(first.date)}${each}`;
  return `${notes} written between ${sheet.date(first.date)} and ${sheet.date(last.date)}${each}`;
}

/** Which volume holds what, where there are several. */
export function listOfVolumes(holds: readonly (readonly string[])[]): string {
  if (holds.length < 2) return '';
  const rows = holds.map((chapters, n) => `[${n + 1}], [${words(chapters.join(', '))}]`);
  return `#heading(level: 2)[${words(`Bound in ${spelled(holds.length, 'volume')}`)}]\n#record-table(columns: (auto, 1fr), head: ([Volume], [Holds]), ${rows.join(', ')})`;
}

export function theVehicle(setting: BookSetting): string {
  const { sheet, record } = setting;
  const { settings } = record.journal;
  const { make, model, year, marks } = settings.vehicle;
  const facts: [string, string | null][] = [
    ['Make', make],
    ['Model', model],
    ['Year', year],
    ...marks.map(({ what, mark }): [string, string] => [capital(what), mark]),
    ['Arrived', sheet.date(settings.arrived)],
  ];
  const rows = facts.flatMap(([name, value]) => (value === null ? [] : [`[${words(name)}], [${words(value)}]`]));
  const about = settings.about === null ? '' : `#remark[${words(settings.about)}]`;
  return `= The vehicle\n\n#record-table(columns: (38mm, 1fr), head: ([], []), ${rows.join(', ')})\n\n${words(standingWords(setting))}\n\n${about}`;
}

/** How much of it is what the works put there, in words that anybody understands. */
function standingWords({ record }: BookSetting): string {
  const rows = registerAt(record, null);
  const own = rows.filter((row) => isAsTheWorks(record, row)).length;
  const open = rows.filter(({ undecided }) => undecided > 0).length;
  const asks = open === 0 ? '' : ` ${capital(spelled(open, 'place'))} still ${open === 1 ? 'asks' : 'ask'} for a decision.`;
  return `${heldByTheWorks(own, rows.length)}${asks}`;
}
