/** The feed against RFC 4287, section numbers of that document, read by an XML parser of its own (linkedom). */
import { DOMParser } from 'linkedom';
import { beforeAll, describe, expect, test } from 'vitest';
import { picturePlan } from '../../src/photos/plan.ts';
import { feedOf } from '../../src/site/feed.ts';
import type { SiteRecord } from '../../src/site/record.ts';
import { compileFiles, JOURNAL, NOTE, note } from '../journal/base.ts';

const compiled = compileFiles({
  journal: `${JOURNAL}address: https://example.org/van/\n`,
  more: { [NOTE]: note('', 'x'), 'sessions/2031-03-14-more.md': '---\ndate: 2031-03-14\ntitle: "Ash & <iron>"\n---\nMore.\n' },
});
const HTML =
  '<p><a href="../parts/drum.html#a">Drum</a> &amp; <img src="../pictures/a-1.jpg" srcset="../pictures/a-1.webp 1w, ../pictures/a-2.webp 2w" alt="x"></p>';
const record = (html = HTML): SiteRecord => ({
  ...(compiled.record as NonNullable<typeof compiled.record>),
  pictures: picturePlan({ renditions: [], papers: [], inOrder: [] }),
  warnings: [],
  noteHtml: async () => html,
});

describe('the feed', () => {
  let text = '';
  let feed: Element;
  beforeAll(async () => {
    text = (await feedOf(record())) ?? '';
    feed = new DOMParser().parseFromString(text, 'text/xml').documentElement as unknown as Element;
  });
  const children = (of: Element, name: string) => [...of.children].filter((one) => one.tagName === name);

  test('has one id, title and updated, a link to itself and an author (4.1.1), the day of the record as its own', () => {
    expect(text).toMatch(/^<\?xml version="1.0" encoding="utf-8"\?>\s*<feed xmlns="http:\/\/www.w3.org\/2005\/Atom">/);
    for (const name of ['id', 'title', 'updated', 'author']) expect(children(feed, name), name).toHaveLength(1);
    expect(children(feed, 'updated')[0]?.textContent).toBe('2031-03-14T12:00:00.000Z');
    expect(children(feed, 'link').map((link) => [link.getAttribute('rel'), link.getAttribute('href')])).toContainEqual([
      'self',
      'https://example.org/van/feed.atom',
    ]);
  });

  test('each entry has one id, title, updated and an alternate link, and its whole content (4.1.2); newest first', () => {
    const entries = children(feed, 'entry');
    expect(entries.map((entry) => children(entry, 'title')[0]?.textContent)).toEqual(['Ash &amp; &lt;iron&gt;', 'Front brakes']);
    // As HTML, which its type says it is (3.1.1.2).
    expect(children(entries[0] as Element, 'title')[0]?.getAttribute('type')).toBe('html');
    for (const entry of entries)
      for (const name of ['id', 'title', 'updated', 'link', 'content']) expect(children(entry, name), name).toHaveLength(1);
    const content = children(entries[0] as Element, 'content')[0];
    expect(content?.getAttribute('type')).toBe('html');
    expect(content?.textContent).toContain('href="https://example.org/van/parts/drum.html#a"');
    expect(content?.textContent).toContain(
      'srcset="https://example.org/van/pictures/a-1.webp 1w, https://example.org/van/pictures/a-2.webp 2w"',
    );
    expect(text).not.toMatch(/(href|src)="\.\./);
  });

  test('ids are IRIs, no two alike (4.2.6), and stay when the site moves or a note is written over', async () => {
    const ids = [...text.matchAll(/<id>([^<]*)<\/id>/g)].map(([, id]) => id);
    expect(new Set(ids).size).toBe(3);
    for (const id of ids) expect(id).toMatch(/^urn:uuid:[0-9a-f]{8}-[0-9a-f]{4}-5[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/);
    const moved = record('<p>Other words.</p>');
    const journal = { ...moved.journal, settings: { ...moved.journal.settings, address: 'https://other.example/' } };
    expect([...((await feedOf({ ...moved, journal })) ?? '').matchAll(/<id>([^<]*)<\/id>/g)].map(([, id]) => id)).toEqual(ids);
  });

  test('is the same to the byte when made again, and there is none without an address', async () => {
    expect(await feedOf(record())).toBe(text);
    const bare = record();
    expect(await feedOf({ ...bare, journal: { ...bare.journal, settings: { ...bare.journal.settings, address: null } } })).toBeNull();
  });
});
