/** A work order, set as a sheet: what the page of work orders says of a firm, with lines to sign on. */
import { CAUTIONS, COMPETENT_FIRST } from '../../site/views/cautions/cautions.ts';
import { type OrderedThing, workOrders } from '../../site/views/firms/work-orders.ts';
import { sentence } from '../../site/views/page/words.ts';
import { altOf } from '../../site/views/pictures/pictures.ts';
import { type BookSetting, pictureFile } from '../setting.ts';
import { call, list, literal, words } from '../typst-text.ts';
import type { SheetText } from './frame.ts';

/** The firms that have something, on the record's day. */
export function firmsWith({ sheet }: BookSetting): readonly string[] {
  return workOrders(sheet).map(({ firm }) => firm);
}

/** @param firm one of `firmsWith`; of any other there is nothing to say */
export function workOrder(firm: string): (setting: BookSetting) => SheetText {
  return (setting) => {
    const order = workOrders(setting.sheet).find((one) => one.firm === firm);
    const things = order?.things ?? [];
    return {
      title: `Work order: ${firm}`,
      line: order?.from ?? '',
      parts: [
        things.length === 0 ? words('Nothing is out with them.') : '',
        ...things.map((thing) => thingText(setting, thing)),
        dangers(setting, things),
        call('to-sign', {}, words(`Taken away and still out: ${order?.count ?? 0} in all`)),
        call('to-sign', {}, words('Brought back: how many, and what is short')),
      ],
    };
  };
}

function thingText(setting: BookSetting, thing: OrderedThing): string {
  const facts = [...thing.facts, ...thing.short.map((one) => ['Came back short', one] as const)];
  const rows = facts.map(([name, value]) => `[${words(name)}], [${words(value)}]`);
  return `== ${words(setting.sheet.partName(thing.part))}\n\n#record-table(columns: (34mm, 1fr), head: ([], []), ${rows.join(', ')})\n\n${picturesOf(setting, thing)}`;
}

/** Its pictures, with what they point at. */
function picturesOf(setting: BookSetting, { pictures }: OrderedThing): string {
  const { sheet } = setting;
  return pictures
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

function dangers({ sheet }: BookSetting, things: readonly OrderedThing[]): string {
  const set = things.flatMap(({ part, hazards }) =>
    hazards.map((hazard) =>
      call(
        'caution',
        { what: `[${words(sentence(`${sheet.partName(part)}: ${CAUTIONS[hazard].what.toLowerCase()}`))}]`, where: '[]' },
        words(CAUTIONS[hazard].text),
      ),
    ),
  );
  return set.length === 0 ? '' : `== What is dangerous in it\n\n${words(COMPETENT_FIRST)}\n\n${set.join('\n\n')}`;
}
