/** What follows the story: methods, the account, what comes with the vehicle, cautions, papers, and the ways in. */
import { budgets } from '../journal/ledger/budgets.ts';
import { ledgerAt } from '../journal/ledger/ledger-at.ts';
import { NO_TOTALS } from '../journal/ledger/totals.ts';
import type { PartId } from '../journal/model.ts';
import { hazardsOfPart, hazardsOfParts } from '../journal/registers/hazards.ts';
import { unsafePlaces } from '../journal/registers/made-safe.ts';
import { methodsIndex } from '../journal/registers/methods.ts';
import { temporaryMeasuresAt } from '../journal/registers/open-items.ts';
import { goesWithVehicleAt, offVehicleAt } from '../journal/registers/stores.ts';
import { stayedInWords } from '../journal/registers/where-now.ts';
import { someInWords } from '../journal/replay/words.ts';
import { CAUTIONS, COMPETENT_FIRST, standingWords } from '../site/views/cautions/cautions.ts';
import { stillDangerous } from '../site/views/cautions/still-dangerous.ts';
import { keepingLines, stayedBehind } from '../site/views/keepers/keepers.ts';
import { dayWords } from '../site/views/page/links.ts';
import { capital, HAZARD_WORDS, leavesHoursOut, listedNames, RESULT_WORDS, sentence } from '../site/views/page/words.ts';
import { kindOfPapers, papersByKind } from '../site/views/papers/listed-papers.ts';
import { placeNowWords, placeWords } from '../site/views/stores/where.ts';
import { lotWords } from './lots.ts';
import { printFile } from './print-pictures.ts';
import { type BookSetting, mention } from './setting.ts';
import { call, list, literal, words } from './typst-text.ts';

const row = (...cells: readonly string[]): string => cells.map((cell) => `[${cell}]`).join(', ');

export function methods(setting: BookSetting): string {
  const { sheet } = setting;
  const trials = methodsIndex(setting.record).byMethod.flatMap((group) => [...group.trials].reverse());
  if (trials.length === 0) return '';
  const cells = trials.map(({ method, date }) => {
    const stuff = method.with.map((id) => sheet.consumableName(id));
    return row(
      words(sentence(method.how)),
      method.on.map((part) => mention(setting, part)).join('') +
        words(listedNames(method.on.map((part) => sheet.partName(part)))) +
        words(method.material === null ? '' : ` (${method.material})`),
      words(listedNames(stuff)),
      words([method.result === null ? '' : RESULT_WORDS[method.result], method.note ?? ''].filter((one) => one !== '').join(': ')),
      words(sheet.figures.shortDate(date)),
    );
  });
  return `= Methods and materials\n\n#record-table(columns: (1.6fr, 1.2fr, 1fr, 1.2fr, auto), head: ([What was done], [To], [With], [What came of it], [When]), ${cells.join(', ')})`;
}

/** What the work took, by subsystem and together: hours and money, as far as the copy tells of either. */
export function account(setting: BookSetting): string {
  const { sheet, record } = setting;
  const { figures } = sheet;
  const at = ledgerAt(record, record.day);
  const rows = budgets(record.journal, at).filter(({ worked, spent }) => worked !== 0 || (figures.hasMoney && spent !== 0));
  if (rows.length === 0) return '';
  const lines = rows.map(({ subsystem, worked, spent }) => ({
    of: subsystem.name,
    sums: { worked, spent, cost: (at.bySubsystem.get(subsystem.id) ?? NO_TOTALS).cost },
  }));
  const { title, said, columns } = accountTold(setting);
  const cellsOf = (of: string, figureOf: (sum: AccountSum) => number): string[] => [
    of,
    ...columns.map(([, sum]) => (sum === 'worked' ? figures.hours : figures.amount)(figureOf(sum))),
  ];
  const all = cellsOf('Together', (sum) => lines.reduce((total, { sums }) => total + sums[sum], 0));
  const cells = [
    ...lines.map(({ of, sums }) => row(...cellsOf(of, (sum) => sums[sum]).map(words))),
    ...(lines.length > 1 ? [row(...all.map((cell) => `#strong[${words(cell)}]`))] : []),
  ];
  const aligns = columns.map(() => 'right').join(', ');
  const heads = ['Subsystem', ...columns.map(([head]) => head)].map((head) => `[${head}]`).join(', ');
  return `= ${title}\n\n${words(said)}\n\n#record-table(columns: (1fr, ${columns.map(() => 'auto').join(', ')}), align: (left, ${aligns}), head: (${heads}), ${cells.join(', ')})`;
}

type AccountSum = 'worked' | 'spent' | 'cost';

/** What the account tells in a copy: its title, what it says of itself, and its columns of figures. */
function accountTold({ sheet: { figures }, record: { copy, journal } }: BookSetting): {
  readonly title: string;
  readonly said: string;
  readonly columns: readonly (readonly [head: string, sum: AccountSum])[];
} {
  const money = `Amounts are in ${journal.settings.currency}.`;
  if (leavesHoursOut(copy)) {
    const said = `What the work took, by subsystem: parts, materials as used and outside work. This copy leaves hours out, and labour is in no sum. ${money}`;
    return { title: 'The account', said, columns: [['Without labour', 'spent']] };
  }
  if (!figures.hasMoney) return { title: 'Hours', said: 'Time spent, by subsystem, by whoever worked it.', columns: [['Hours', 'worked']] };
  return {
    title: 'The account',
    said: `What the work took, by subsystem: hours by whoever worked them; parts, materials as used and outside work; and both together, hours at their rates. ${money}`,
    columns: [
      ['Hours', 'worked'],
      ['Without labour', 'spent'],
      ['Job cost', 'cost'],
    ],
  };
}

export function comesWith(setting: BookSetting): string {
  const { sheet, record } = setting;
  const kept = goesWithVehicleAt(record, null);
  const others = offVehicleAt(record, null).filter(
    (one) => !one.goesWithVehicle && one.stayed === null && one.where.at !== 'gone' && one.where.at !== 'missing',
  );
  const stayed = stayedBehind(sheet);
  const table = (things: typeof kept) =>
    `#record-table(columns: (1.6fr, 1fr, auto), head: ([Part], [Where], [Since]), ${things
      .map((thing) => {
        const { part, where, since, last } = thing;
        return row(
          `${mention(setting, part)}${words(lotWords(setting, thing))}`,
          words(capital(placeWords(sheet, where))),
          words([...new Set([since, last].map((day) => dayWords(sheet, day)))].join(', the last ')),
        );
      })
      .join(', ')})`;
  if (kept.length === 0 && others.length === 0 && stayed.length === 0) return '';
  return [
    '= What comes with the vehicle',
    ...(kept.length === 0 ? [] : [words('Originals that are off the vehicle stay with it.'), table(kept)]),
    ...(others.length === 0 ? [] : ['#heading(level: 2)[Other things off the vehicle]', table(others)]),
    ...stayed.flatMap(({ who, things }) => [`#heading(level: 2)[${words(`Stayed with ${who}`)}]`, table(things)]),
  ].join('\n\n');
}

/** In whose keeping the vehicle stood, and how it passed on; '' where the journal says nothing of keepers. */
export function keepers({ sheet }: BookSetting): string {
  const cells = keepingLines(sheet).map(({ who, from, to, how }) =>
    row(
      words(who),
      words(to === null ? `since ${sheet.date(from)}` : `${sheet.date(from)} to ${sheet.date(to)}`),
      words(how === null ? '' : sentence(capital(how))),
    ),
  );
  return cells.length === 0
    ? ''
    : `= Whose keeping it stood in\n\n#record-table(columns: (1fr, 1.2fr, 1.4fr), head: ([Keeper], [When], [How it passed]), ${cells.join(', ')})`;
}

/** Temporary measures that are still in place; '' where there is none. */
export function temporary({ sheet, record }: BookSetting): string {
  const cells = temporaryMeasuresAt(record, null).map(({ what, on, opened, due }) =>
    row(
      words(sentence(what)),
      words(on === null ? '' : sheet.charge(on).name),
      words(sheet.date(opened.date)),
      words(due === null ? '' : sheet.milestoneName(due)),
    ),
  );
  if (cells.length === 0) return '';
  const opening = 'Departures from the finished state that must be undone before the milestone named.';
  return `= Temporary measures still in place\n\n${words(opening)}\n\n#record-table(columns: (1.6fr, 1fr, auto, 1fr), head: ([What], [On], [Since], [To undo before]), ${cells.join(', ')})`;
}

/** The hazards of what is still here, with where it lies. */
export function cautions({ record, sheet }: BookSetting): string {
  const named = (id: PartId): string => {
    const still = stillDangerous(sheet, id);
    if (still !== null) return `${sheet.partName(id)} (${still})`;
    const off = unsafePlaces(record, id, record.day).filter(({ where }) => where.at !== 'fitted');
    const of = record.journal.parts.get(id)?.count ?? 1;
    const places = new Set(
      off.map(({ where, count, which }) => {
        const some = someInWords(count, of, which);
        return `${some === '' ? '' : `${some}: `}${placeNowWords(sheet, where, stayedInWords(record, id, where, null))}`;
      }),
    );
    return `${sheet.partName(id)}${places.size === 0 ? '' : ` (${[...places].join(' and ')})`}`;
  };
  const ids = [...record.journal.parts.keys()];
  const set = hazardsOfParts(record, ids, record.day).map((hazard) => {
    const here = ids.filter((id) => hazardsOfPart(record, id, record.day).includes(hazard));
    const { what, text, sources } = CAUTIONS[hazard];
    const names = listedNames(here.map(named));
    const from = sources.map((source) => `${source.name}${standingWords(source)}`).join('; ');
    const where = `${capital(HAZARD_WORDS[hazard])}: ${names}. ${sentence(capital(from))}`;
    return call('caution', { what: `[${words(sentence(what))}]`, where: `[${words(where)}]` }, words(text));
  });
  return set.length === 0 ? '' : `= Cautions\n\n${words(COMPETENT_FIRST)}\n\n${set.join('\n\n')}`;
}

export function papers(setting: BookSetting): string {
  const { sheet, record } = setting;
  const kinds = papersByKind(record);
  if (kinds.length === 0) return '';
  const set = kinds.map(([kind, all]) => {
    const cells = all.map((paper) =>
      row(
        words(paper.what ?? paper.file.slice(paper.file.lastIndexOf('/') + 1)),
        words(paper.dated ? sheet.date(paper.date) : ''),
        words(listedNames(paper.sessions.map(({ title }) => title))),
      ),
    );
    const pages = all.flatMap(({ file, what }) => {
      const first = record.pictures.paper(file)?.firstPage;
      return kind === 'bill' || kind === 'receipt' || !first
        ? []
        : [
            call('picture', {
              path: literal(`/${printFile(first)}`),
              alt: literal(what ?? 'A paper.'),
              share: '80%',
              tall: '150mm',
              // Under the list that names it, and not at the head of what follows.
              float: 'false',
              caption: what === null ? 'none' : `[${words(what)}]`,
            }),
          ];
    });
    const head = `#heading(level: 2)[${words(kindOfPapers(kind, all.length))}]`;
    const table = `#record-table(columns: (1.6fr, auto, 1.4fr), head: ([Paper], [Of], [Laid in]), ${cells.join(', ')})`;
    const list = `${head}\n\n${table}`;
    return [pages.length === 0 ? list : `#block(sticky: true)[\n${list}\n]`, ...pages].join('\n\n');
  });
  return `= Papers\n\n${set.join('\n\n')}`;
}

/** Where a part is spoken of in volumes before: by part, as `1: 33, 48`. */
export type ElsewhereInBook = ReadonlyMap<string, readonly string[]>;

/** The index; to be set last, when all mentions are known. */
export function indexOfParts({ record, named }: BookSetting, elsewhere: ElsewhereInBook, own: string): string {
  const names = [...named].map((id) => [id, record.journal.parts.get(id)?.name ?? id] as const);
  names.sort(([, a], [, b]) => a.localeCompare(b, record.journal.settings.locale));
  if (names.length === 0) return '';
  const rows = names.map(([id, name]) => `(${literal(id)}, ${literal(name)}, ${list((elsewhere.get(id) ?? []).map(literal))})`);
  const said = own === '' ? '' : `${words('Before the colon stands the volume, after it the pages.')}\n\n`;
  return `= Index of parts\n\n${said}#index-of(${list(rows)}, own: ${literal(own)})`;
}

export const LIST_OF_PICTURES = '#pictures-list()';
