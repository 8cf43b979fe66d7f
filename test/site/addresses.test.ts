import fc from 'fast-check';
import { expect, test } from 'vitest';
import { bagAddress, hrefBetween, PAGES, pageOf, partAddress, positionAddress, sessionAddress } from '../../src/site/addresses.ts';

test.each([
  ['index.html', 'bags.html#bag-14', 'bags.html#bag-14'],
  ['sessions/a.html', 'bags.html#bag-14', '../bags.html#bag-14'],
  ['sessions/a.html', 'sessions/b.html', 'b.html'],
  ['sessions/a.html', 'parts/drum.html#drum', '../parts/drum.html#drum'],
  ['ledger/entries/2031.html', 'ledger.html', '../../ledger.html'],
  ['ledger.html', 'ledger/entries/2031.html', 'ledger/entries/2031.html'],
  ['bags.html', 'bags.html#bag-2', '#bag-2'],
  ['bags.html#bag-1', 'bags.html', 'bags.html'],
  ['sessions/a.html', 'sessions/a.html', 'a.html'],
  ['index.html', 'papers/a bill & 50%?.pdf', 'papers/a%20bill%20%26%2050%25%3F.pdf'],
  ['a/b/c.html', 'a/d.html', '../d.html'],
])('from %s to %s it is %s', (from, to, href) => {
  expect(hrefBetween(from, to)).toBe(href);
});

test('a link leads where it says, from a disk and from under any path of the web (checked against the URL standard\u2019s parser)', () => {
  const name = fc.stringMatching(/^[a-zA-Z0-9 ._~!$&'()*+,;=@%-]{1,8}$/).filter((text) => !/^\.{1,2}$/.test(text));
  const path = fc.array(name, { minLength: 1, maxLength: 4 }).map((names) => names.join('/'));
  fc.assert(
    fc.property(
      path,
      path,
      fc.constantFrom('', '#bag-14'),
      fc.constantFrom('file:///home/me/dist/', 'https://example.org/van/'),
      (from, to, fragment, root) => {
        const encoded = (text: string): string => text.split('/').map(encodeURIComponent).join('/');
        const base = root + encoded(from);
        const reached = new URL(hrefBetween(from, to + fragment), base);
        expect(decodeURIComponent(reached.href)).toBe(decodeURIComponent(root + encoded(to) + fragment));
      },
    ),
  );
});

test('every page is a file of its own, and its fragment is no part of that', () => {
  expect(new Set(Object.values(PAGES)).size).toBe(Object.keys(PAGES).length);
  for (const page of [...Object.values(PAGES), sessionAddress('a'), positionAddress('b')]) expect(page).toMatch(/\.html$/);
  expect(pageOf(bagAddress(3))).toBe('bags.html');
  expect(partAddress({ id: 'spare', position: 'drum' })).toBe('parts/drum.html#spare');
});
