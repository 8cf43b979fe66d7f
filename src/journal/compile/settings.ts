/** journal.yaml → the settings of the journal, its people, subsystems, milestones and stores. */
import { unknownName } from '../diagnostics/diagnostic.ts';
import { didYouMean } from '../diagnostics/nearest.ts';
import { ENTRY_KINDS, type EntryKind, GENERAL, type Settings, type Subsystem } from '../model.ts';
import type { JournalFields } from '../read/journal-source.ts';
import type { Reporter } from '../read/reporter.ts';
import type { Tree } from '../read/source/tree.ts';
import { readNewId } from '../schema/fields.ts';
import { readCurrency, readOwnAmount } from '../values/money.ts';
import { isTimeZone } from '../values/zone.ts';
import type { Catalogues } from './context.ts';
import { peopleOf, type ReadMoney } from './people.ts';

/**
 * @param source journal.yaml, understood
 * @param tree where its fields are written
 * @returns the catalogues it holds; parts and consumables are still empty
 */
export function compileSettings(source: JournalFields, tree: Tree, out: Reporter): Catalogues {
  const currency = currencyOf(source, tree, out);
  const money: ReadMoney = (text, path) => {
    const amount = out.take(readOwnAmount(text, { currency: currency.code, currencyDigits: currency.digits }), tree.placeOf(path));
    if (amount === null || amount >= 0) return amount;
    out.report('A808', tree.placeOf(path), 'Neither a rate nor a budget is negative.', { hint: 'Write it without the minus.' });
    return null;
  };
  const settings: Settings = {
    title: source.title,
    about: source.about,
    vehicle: vehicleOf(source),
    keeper: keeperOf(source, tree, out),
    arrived: source.arrived,
    arrivedPlace: tree.placeOf(['arrived']),
    currency: currency.code,
    currencyDigits: currency.digits,
    timeZone: timeZoneOf(source, tree, out),
    locale: localeOf(source, tree, out),
    address: source.address ? source.address.replace(/\/*$/, '/') : null,
    stock: source.stock,
    markUp: markUpOf(source, tree, out),
    deductible: source.deductible,
    workshop: workshopOf(source, tree, out),
    client: source.client,
    shows: source.statement.shows,
    copies: new Map(Object.entries(source.copies).map(([name, copy]) => [name, copy])),
    front: source.front,
    keepPictureFacts: source.pictures.keep,
  };
  for (const field of ['people', 'subsystems', 'milestones'] as const) {
    for (const id of Object.keys(source[field])) out.take(readNewId(id), tree.keyPlaceOf([field, id]));
  }
  return {
    settings,
    people: peopleOf(source, tree, money, out),
    subsystems: subsystemsOf(source, tree, money, out),
    milestones: Object.entries(source.milestones).map(([id, name], order) => ({ id, name, order })),
    stores: source.stores,
    identityTables: [],
    statements: [],
    consumables: new Map(),
    parts: new Map(),
    positions: new Map(),
  };
}

/** Of ISO 4217: for where there is no currency. */
const NO_CURRENCY = 'XXX';

/** Null code for a journal without money. One that is unknown is believed where it has the form of a code, which is all that writing an amount takes. */
function currencyOf({ currency }: JournalFields, tree: Tree, out: Reporter): { readonly code: string | null; readonly digits: number } {
  if (currency === null) return { code: null, digits: 2 };
  return (
    out.take(readCurrency(currency), tree.placeOf(['currency'])) ?? {
      code: /^[a-z]{3}$/i.test(currency) ? currency : NO_CURRENCY,
      digits: 2,
    }
  );
}

function vehicleOf({ vehicle }: JournalFields): Settings['vehicle'] {
  return { ...vehicle, marks: Object.entries(vehicle.marks).map(([what, mark]) => ({ what, mark })) };
}

function keeperOf({ keeper, people }: JournalFields, tree: Tree, out: Reporter): Settings['keeper'] {
  if (keeper === null || Object.hasOwn(people, keeper)) return keeper;
  const unknown = unknownName('person', keeper, Object.keys(people));
  out.report('A402', tree.placeOf(['keeper']), `There is no person \`${keeper}\`.`, unknown);
  return unknown.unknown.nearest;
}

function workshopOf({ workshop }: JournalFields, tree: Tree, out: Reporter): Settings['workshop'] {
  if (workshop.taxNumber !== null && workshop.tax === null) {
    const hint = 'Say at what rate it charges: `tax: 20%`.';
    out.report('A302', tree.placeOf(['workshop']), 'The workshop has a tax number, and the field `tax` is missing.', { hint });
  }
  return { ...workshop, tax: workshop.taxNumber === null ? null : workshop.tax };
}

function timeZoneOf(source: JournalFields, tree: Tree, out: Reporter): string {
  const zone = source.timeZone;
  if (isTimeZone(zone)) return zone;
  const hint = didYouMean(zone, Intl.supportedValuesOf('timeZone')) ?? 'Zones are named such as Europe/London.';
  out.report('A315', tree.placeOf(['time-zone']), `\`${zone}\` is not a time zone.`, { hint });
  return 'UTC';
}

function localeOf(source: JournalFields, tree: Tree, out: Reporter): string {
  const locale = source.locale;
  try {
    if (Intl.NumberFormat.supportedLocalesOf(locale).length > 0) return locale;
  } catch {
    // Not even the form of a language tag: reported like one that is unknown.
  }
  out.report('A315', tree.placeOf(['locale']), `\`${locale}\` is not a locale.`, { hint: 'Locales are named such as en-GB.' });
  return 'en-GB';
}

function markUpOf(source: JournalFields, tree: Tree, out: Reporter): Settings['markUp'] {
  const known: readonly string[] = ENTRY_KINDS;
  const entries = Object.entries(source.markUp).filter(([kind]) => {
    if (known.includes(kind)) return true;
    const hint = didYouMean(kind, known) ?? `One of ${known.map((each) => `\`${each}\``).join(', ')}.`;
    out.report('A301', tree.keyPlaceOf(['mark-up', kind]), `There is no kind of entry \`${kind}\`.`, { hint });
    return false;
  });
  return new Map(entries.map(([kind, share]) => [kind as EntryKind, share]));
}

function subsystemsOf(source: JournalFields, tree: Tree, money: ReadMoney, out: Reporter): Map<string, Subsystem> {
  const subsystems = new Map<string, Subsystem>();
  for (const [id, subsystem] of Object.entries(source.subsystems)) {
    const { hours, money: sum } = subsystem.budget;
    const minutes = hours === null ? null : hoursOf(hours);
    if (hours !== null && minutes === null) {
      out.report('A303', tree.placeOf(['subsystems', id, 'budget', 'hours']), `\`${hours}\` is not a number of hours.`, {
        hint: 'Write hours as a number: `60` or `7.5`.',
      });
    }
    const budgetMoney = sum === null ? null : money(sum, ['subsystems', id, 'budget', 'money']);
    subsystems.set(id, { id, name: subsystem.name, budgetMinutes: minutes, budgetMoney });
  }
  if (!subsystems.has(GENERAL)) {
    subsystems.set(GENERAL, { id: GENERAL, name: 'General', budgetMinutes: null, budgetMoney: null });
  }
  return subsystems;
}

/** `60` or `7.5` hours in whole minutes. */
function hoursOf(text: string): number | null {
  const found = /^(\d{1,6})(?:\.(\d{1,2}))?$/.exec(text);
  if (!found) return null;
  return Number(found[1]) * 60 + Math.round((Number((found[2] ?? '0').padEnd(2, '0')) * 60) / 100);
}
