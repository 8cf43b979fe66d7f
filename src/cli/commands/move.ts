import { join, relative } from 'node:path';
import { writeNewFolder } from '../../disk/write-new.ts';
import { didYouMean } from '../../journal/diagnostics/nearest.ts';
import type { IsoDate } from '../../journal/model.ts';
import type { JournalRecord } from '../../journal/record.ts';
import { type OffVehicle, offVehicleAt } from '../../journal/registers/stores.ts';
import { counted } from '../../site/views/page/words.ts';
import { newFault } from '../change-files.ts';
import { CONTENT, type Command, DRY } from '../command.ts';
import { DATE, noteDate } from '../day-option.ts';
import { EXIT, Refusal } from '../exit-codes.ts';
import { asText } from '../new-note/as-text.ts';
import { freeId } from '../new-note/free-id.ts';
import { slugOf } from '../new-note/note-name.ts';
import { journalFolder, openJournal } from '../the-journal.ts';
import { refusing } from '../write-new.ts';

/** Everything on one shelf to another: a note with an entry for each thing. */
export const move: Command = {
  name: 'move',
  summary: 'writes a note that puts everything on one shelf onto another',
  takes: ['SHELF', 'to', 'SHELF'],
  options: { content: CONTENT, date: DATE, 'dry-run': DRY },
  more: 'Quote a name of several words: `asfound move "shelf A1" to "shelf B2"`. To give a shelf another name, `asfound rename store`.',
  run: async (values, [from = '', word = '', to = ''], effects) => {
    if (word !== 'to') throw new Refusal(EXIT.notUnderstood, '`move` is written `asfound move "shelf A1" to "shelf B2"`.');
    const folder = journalFolder(values, effects);
    const date = noteDate(values, effects);
    const opened = await openJournal(folder, effects);
    const { record } = opened;
    if (record === null) throw new Refusal(EXIT.journalHasErrors, 'journal.yaml cannot be understood; `asfound check` says why.');
    for (const store of [from, to]) knownStore(record, store);
    const entries = thingsAt(record, from, date).map((thing) => entryOf(record, thing, from, to));
    if (entries.length === 0) throw new Refusal(EXIT.notUnderstood, `nothing lies on ${from} at the end of ${date}.`);
    const title = `Everything from ${from} to ${to}`;
    const id = freeId(folder, `${date}-${slugOf(title)}`);
    const path = `sessions/${id}/index.md`;
    const text = `---\ndate: ${date}\ntitle: ${JSON.stringify(title)}\nparts:\n${entries.map((entry) => `  - ${entry}\n`).join('')}---\n\n`;
    const fault = newFault(opened, [{ path, to: path, becomes: text }], effects);
    if (fault) throw new Refusal(EXIT.journalHasErrors, `nothing was written: ${fault.message}`);
    if (values['dry-run'] === true) {
      effects.out(text);
      return EXIT.done;
    }
    const place = join(folder, 'sessions', id);
    refusing(place, () => writeNewFolder(place, new Map([['index.md', text]])));
    effects.out(`${relative(effects.cwd, join(place, 'index.md'))}\n`);
    effects.err(`${counted(entries.length, 'entry', 'entries')} for everything on ${from}.\n`);
    return EXIT.done;
  },
};

function knownStore({ journal }: JournalRecord, name: string): void {
  if (journal.stores.includes(name)) return;
  const hint = didYouMean(name, journal.stores) ?? 'Add it to `stores` in journal.yaml.';
  throw new Refusal(EXIT.notUnderstood, `there is no store \`${name}\`. ${hint}`);
}

/** What lies there by itself at the end of a day; what is in it goes along. */
function thingsAt(record: JournalRecord, store: string, date: IsoDate): readonly OffVehicle[] {
  return offVehicleAt(record, date).filter(({ where }) => where.at === 'stores' && where.store === store);
}

function entryOf({ journal }: JournalRecord, { part, count, which }: OffVehicle, from: string, to: string): string {
  const all = journal.parts.get(part)?.count ?? 1;
  const some = which !== null ? `, which: [${which.join(', ')}]` : count < all ? `, count: ${count}` : '';
  return `{ part: ${part}, did: stored${some}, from: ${asText(from)}, to: ${asText(to)} }`;
}
