/** Plates: the same view as found and as left, side by side. */
import { eventsOfPosition } from '../journal/timelines/events.ts';
import { sentence } from '../site/views/page/words.ts';
import { altOf } from '../site/views/pictures/pictures.ts';
import { picturesIn } from '../site/views/position/chronicle.ts';
import { type ComparedView, comparedViews } from '../site/views/position/compared.ts';
import { type BookSetting, mention, pictureFile } from './setting.ts';
import { call, literal, words } from './typst-text.ts';

/** Every pair once, in the order of the positions that they show. */
export function platePairs({ sheet, record }: BookSetting): readonly { readonly name: string; readonly pair: ComparedView }[] {
  const positionOf = (part: string) => record.journal.parts.get(part)?.position ?? part;
  const seen = new Set<string>();
  return [...record.journal.positions.keys()].flatMap((position) => {
    const pairs = comparedViews(picturesIn(sheet, eventsOfPosition(record, position)), positionOf);
    return pairs.flatMap((pair) => {
      const key = `${pair.found.picture.file}\0${pair.left.picture.file}`;
      if (seen.has(key)) return [];
      seen.add(key);
      return [{ name: sheet.positionName(position), pair }];
    });
  });
}

/** '' where no view was taken twice. */
export function plates(setting: BookSetting): string {
  const set = platePairs(setting).flatMap(({ name, pair }) => {
    const [found, left] = [half(setting, pair.found), half(setting, pair.left)];
    if (found === null || left === null) return [];
    const shown = [...new Set([...pair.found.picture.shows, ...pair.left.picture.shows])].map((part) => mention(setting, part)).join('');
    return [`${shown}${call('plate', { title: `[${words(name)}]`, found, left })}`];
  });
  return set.length === 0 ? '' : `= Before and after\n\n${set.join('\n\n')}`;
}

function half(setting: BookSetting, { picture, session }: ComparedView['found']): string | null {
  const path = pictureFile(setting, picture.file);
  if (path === null) return null;
  const said = [sentence(picture.caption), `${setting.sheet.date(session.date)}.`].filter((one) => one !== '').join(' ');
  return `(path: ${literal(path)}, alt: ${literal(altOf(setting.sheet, picture, session))}, words: [${words(said)}])`;
}
