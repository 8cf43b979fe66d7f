/** The sessions as a feed: Atom (RFC 4287), each note with its whole prose, in the limits of the copy. */
import { createHash } from 'node:crypto';
import type { IsoDate, Session } from '../journal/model.ts';
import { PAGES, sessionAddress } from './addresses.ts';
import type { SiteRecord } from './record.ts';

/** Where the feed lies in the site. */
export const FEED = 'feed.atom';

/** The last sessions that the feed holds. */
const MOST = 40;

/**
 * @param record of a journal that says where its site lives
 * @returns an Atom document, newest session first; null where the site has no address, for a feed needs one
 */
export async function feedOf(record: SiteRecord): Promise<string | null> {
  const { settings, sessions, people } = record.journal;
  const { address, title } = settings;
  if (address === null) return null;
  const { Feed } = await import('feed');
  const feed = new Feed({
    id: idOf(settings.arrived, 'feed'),
    title,
    ...(settings.about === null ? {} : { description: settings.about }),
    link: address + PAGES.home,
    language: settings.locale,
    updated: noon(record.day),
    feedLinks: { atom: address + FEED },
    author: { name: people.size === 1 ? ([...people.values()][0]?.name ?? title) : title },
    copyright: '',
    generator: 'asfound',
  });
  for (const session of sessions.slice(-MOST).reverse()) feed.addItem(await entryOf(record, session, address));
  return feed.atom1();
}

async function entryOf(record: SiteRecord, session: Session, address: string) {
  const link = address + sessionAddress(session.id);
  return {
    // An id never changes: it hangs on the note's own name and the day the vehicle arrived, not on where the site lives.
    id: idOf(record.journal.settings.arrived, session.id),
    // The library says of a title that it is HTML.
    title: session.title.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;'),
    link,
    date: noon(session.date),
    content: absolute(await record.noteHtml(session.id), link),
  };
}

const noon = (date: IsoDate): Date => new Date(`${date}T12:00:00Z`);

/** A name-based UUID as a URN (RFC 9562, version 5, section 5.5), in a namespace of ours. */
function idOf(arrived: IsoDate, name: string): string {
  const bytes = createHash('sha1').update(`asfound ${arrived} ${name}`).digest().subarray(0, 16);
  bytes[6] = ((bytes[6] ?? 0) & 0x0f) | 0x50;
  bytes[8] = ((bytes[8] ?? 0) & 0x3f) | 0x80;
  const hex = bytes.toString('hex');
  return `urn:uuid:${[hex.slice(0, 8), hex.slice(8, 12), hex.slice(12, 16), hex.slice(16, 20), hex.slice(20)].join('-')}`;
}

/** Links and pictures of a page, as they are from anywhere. */
function absolute(html: string, page: string): string {
  const whole = (written: string): string => new URL(written, page).href;
  return html
    .replaceAll(
      / (href|src)="([^"]*)"/g,
      (_, name: string, written: string) =>
        ` ${name}="${whole(written.replaceAll('&#x26;', '&').replaceAll('&amp;', '&')).replaceAll('&', '&amp;')}"`,
    )
    .replaceAll(/ srcset="([^"]*)"/g, (_, set: string) => {
      const files = set.split(', ').map((one) => one.split(' '));
      return ` srcset="${files.map(([file = '', width = '']) => `${whole(file)} ${width}`).join(', ')}"`;
    });
}
