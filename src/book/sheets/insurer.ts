/** For an insurer: what it is worth, what it consists of, and where its parts lie. */
import { registerAt } from '../../journal/registers/register.ts';
import { goneAt, inBagsAt, outAt, storesAt } from '../../journal/registers/stores.ts';
import { someInWords } from '../../journal/replay/words.ts';
import { capital, listedNames, sentence } from '../../site/views/page/words.ts';
import { outWords, unplacedWords } from '../../site/views/stores/where.ts';
import { keepers } from '../appendices.ts';
import { lotWords } from '../lots.ts';
import type { BookSetting } from '../setting.ts';
import { words } from '../typst-text.ts';
import { cameShort } from './came-short.ts';
import { asPart, type SheetText } from './frame.ts';

export function insurerSheet(setting: BookSetting): SheetText {
  return {
    title: 'For an insurer',
    line: setting.sheet.figures.hasMoney
      ? 'What the vehicle is held to be worth, what it consists of, and where its parts are.'
      : 'What the vehicle consists of, and where its parts are.',
    parts: [asPart(keepers(setting)), values(setting), consists(setting), lies(setting)],
  };
}

/** What it is held to be worth; '' where the journal has no money, which a copy that leaves it out says. */
function values({ record, sheet }: BookSetting): string {
  if (sheet.copy.leavesOut.includes('money'))
    return `== Values\n\n${words('This copy leaves money out, and with it what the vehicle is held to be worth.')}`;
  if (!sheet.figures.hasMoney) return '';
  const named = record.ledger.valuations.some(({ by }) => by !== null);
  const cells = record.ledger.valuations.map(({ of, value, basis, by, date }) => {
    const what = of === null ? 'The vehicle' : sheet.partName(of);
    const cells = [what, sheet.figures.money(value), sentence(basis), ...(named ? [by ?? ''] : []), sheet.date(date)];
    return cells.map((cell) => `[${words(cell)}]`).join(', ');
  });
  if (cells.length === 0) return `== Values\n\n${words('No value is written down in this copy of the record.')}`;
  return `== Values\n\n#record-table(columns: (1.2fr, auto, 1.4fr, ${named ? '1fr, ' : ''}auto), align: (left, right, left, ${named ? 'left, ' : ''}left), head: ([Of], [Value], [Basis], ${named ? '[By], ' : ''}[On]), ${cells.join(', ')})`;
}

function consists({ record, sheet }: BookSetting): string {
  const groups = Map.groupBy(registerAt(record, null), ({ subsystem }) => subsystem);
  const cells = [...groups].map(([subsystem, rows]) => {
    const belong = rows.reduce((sum, { count }) => sum + count, 0);
    const on = rows.reduce((sum, { fitted }) => fitted.reduce((held, { count }) => held + count, sum), 0);
    const own = rows.reduce(
      (sum, { fitted }) => fitted.reduce((held, { count, origin }) => (origin === 'original' ? held + count : held), sum),
      0,
    );
    return [sheet.subsystemName(subsystem), String(belong), String(on), String(own)].map((cell) => `[${words(cell)}]`).join(', ');
  });
  return cells.length === 0
    ? ''
    : `== What it consists of\n\n#record-table(columns: (1fr, auto, auto, auto), align: (left, right, right, right), head: ([Subsystem], [Pieces that belong], [On the vehicle], [Of these original]), ${cells.join(', ')})`;
}

function lies(setting: BookSetting): string {
  const { record, sheet } = setting;
  const places = [
    ...storesAt(record, null).map(({ store, things }) => ({ place: capital(store ?? unplacedWords(sheet)), things })),
    ...inBagsAt(record, null).map(({ bag, things }) => ({ place: `Bag ${bag}`, things })),
    ...outAt(record, null).map(({ firm, things }) => ({ place: outWords(sheet, firm), things })),
  ];
  const some = places.filter(({ things }) => things.length > 0);
  const cells = some.map(({ place, things }) => {
    const lines = things.map((thing) => words(lotWords(setting, thing))).join(' #linebreak() ');
    return `[${words(place)}], [${lines}]`;
  });
  const table = cells.length === 0 ? [] : [`#record-table(columns: (1fr, 2fr), head: ([Place], [What lies there]), ${cells.join(', ')})`];
  const short = cameShort(setting);
  const owed = short.length === 0 ? [] : [words(`Came back short: ${listedNames(short)}.`)];
  const told = [...table, ...owed, ...stolen(setting)];
  return told.length === 0 ? '' : `== Where its parts lie\n\n${told.join('\n\n')}`;
}

/** `Stolen: Brass caps (1 of 4), 1 March 2031: the lock was cut.`, a paragraph each */
function stolen({ record, sheet }: BookSetting): readonly string[] {
  const things = goneAt(record, null).flatMap((gone) => (gone.how === 'stolen' ? gone.things : []));
  return things.map(({ part, count, which, since, note }) => {
    const some = someInWords(count, record.journal.parts.get(part)?.count ?? 1, which);
    const what = `${sheet.partName(part)}${some === '' ? '' : ` (${some})`}, ${sheet.date(since.date)}`;
    return words(sentence(`Stolen: ${what}${note === null ? '' : `: ${note}`}`));
  });
}
