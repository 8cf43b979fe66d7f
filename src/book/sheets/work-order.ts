/** A work order: what goes out to a firm, as it is, what is to be done to it and what not, and lines to sign on. */
import type { PartEntry, PartId } from '../../journal/model.ts';
import { hazardsOfPart } from '../../journal/registers/hazards.ts';
import { seriesOf } from '../../journal/registers/measurements.ts';
import { type OffVehicle, outAt } from '../../journal/registers/stores.ts';
import { CAUTIONS, COMPETENT_FIRST } from '../../site/views/cautions/cautions.ts';
import { capital, sentence } from '../../site/views/page/words.ts';
import { altOf } from '../../site/views/pictures/pictures.ts';
import { type BookSetting, pictureFile } from '../setting.ts';
import { call, list, literal, words } from '../typst-text.ts';
import type { SheetText } from './frame.ts';

/** The firms that have something, on the record's day. */
export function firmsWith(setting: BookSetting): readonly string[] {
  return outAt(setting.record, null).map(({ firm }) => firm);
}

/** @param firm one of `firmsWith`; of any other there is nothing to say */
export function workOrder(firm: string): (setting: BookSetting) => SheetText {
  return (setting) => {
    const things = outAt(setting.record, null).find((one) => one.firm === firm)?.things ?? [];
    const { workshop } = setting.record.journal.settings;
    return {
      title: `Work order: ${firm}`,
      line: [workshop.name, workshop.address].filter((one) => one !== null).join(', '),
      parts: [
        things.length === 0 ? words('Nothing is out with them.') : '',
        ...things.map((thing) => thingText(setting, thing)),
        dangers(setting, things),
        call('to-sign', {}, words(`Taken away: ${countOf(things)} in all`)),
        call('to-sign', {}, words('Brought back: how many, and what is short')),
      ],
    };
  };
}

const countOf = (things: readonly OffVehicle[]): number => things.reduce((sum, { count }) => sum + count, 0);

function thingText(setting: BookSetting, { part, count, since, condition }: OffVehicle): string {
  const { sheet, record } = setting;
  const thing = record.journal.parts.get(part);
  const sent = sentWith(setting, part, since.session);
  const { figures } = sheet;
  const facts: [string, string | null][] = [
    ['How many', String(count)],
    ['To be done', sent?.work ?? null],
    ['Not to be done', 'Nothing else without asking. No blasting, no polishing, no paint and no marks beyond what is asked for.'],
    ['Due', sent?.due == null ? null : sheet.date(sent.due)],
    ['Quoted', sent?.quoted == null ? null : figures.money(sent.quoted)],
    ['Sent', sheet.date(since.date)],
    ['Marks', sent?.marks ?? thing?.marks ?? null],
    ['Finish', sent?.finish ?? thing?.finish ?? null],
    ['Condition', condition],
    ['Note', sent?.note ?? null],
    ...seriesOf(record, part).map((series): [string, string | null] => {
      const last = series.readings.at(-1)?.measurement;
      return [capital(series.what), last ? `${last.value.text}${last.limitsText === null ? '' : `, limits ${last.limitsText}`}` : null];
    }),
  ];
  const rows = facts.flatMap(([name, value]) => (value === null ? [] : [`[${words(name)}], [${words(value)}]`]));
  return `== ${words(sheet.partName(part))}\n\n#record-table(columns: (34mm, 1fr), head: ([], []), ${rows.join(', ')})\n\n${picturesOf(setting, part)}`;
}

/** The entry that sent it out. */
function sentWith({ record }: BookSetting, part: PartId, session: string | null): PartEntry | null {
  const found = record.journal.sessions.find(({ id }) => id === session);
  return found?.parts.findLast((entry) => entry.part === part && entry.did.includes('sent-out')) ?? null;
}

/** The last two pictures that show it, with what they point at. */
function picturesOf(setting: BookSetting, part: PartId): string {
  const { sheet, record } = setting;
  const all = record.journal.sessions.flatMap((session) =>
    session.pictures.filter(({ named }) => named.includes(part)).map((picture) => ({ picture, session })),
  );
  return all
    .slice(-2)
    .map(({ picture, session }) => {
      const path = pictureFile(setting, picture.file);
      if (path === null) return '';
      const points = picture.points.map(({ at }) => list([at.x, at.y, at.width ?? 'none', at.height ?? 'none'].map(String)));
      const key = picture.points.map(
        ({ shows, note }) => `[${words([shows === null ? null : sheet.partName(shows), note].filter((one) => one !== null).join(': '))}]`,
      );
      return call('pointing', {
        path: literal(path),
        alt: literal(altOf(sheet, picture, session)),
        caption: picture.caption === null ? 'none' : `[${words(sentence(picture.caption))}]`,
        points: list(points),
        key: list(key),
      });
    })
    .filter((one) => one !== '')
    .join('\n\n');
}

function dangers({ record, sheet }: BookSetting, things: readonly OffVehicle[]): string {
  const set = things.flatMap(({ part }) =>
    hazardsOfPart(record, part, record.day).map((hazard) =>
      call(
        'caution',
        { what: `[${words(sentence(`${sheet.partName(part)}: ${CAUTIONS[hazard].what.toLowerCase()}`))}]`, where: '[]' },
        words(CAUTIONS[hazard].text),
      ),
    ),
  );
  return set.length === 0 ? '' : `== What is dangerous in it\n\n${words(COMPETENT_FIRST)}\n\n${set.join('\n\n')}`;
}
