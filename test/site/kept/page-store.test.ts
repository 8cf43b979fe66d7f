/** Pages that are kept come back as they were kept, or not at all. */
import { readdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import type { Asked } from '../../../src/site/kept/asking.ts';
import { type KeptPage, openPageStore } from '../../../src/site/kept/page-store.ts';
import { folderWith } from '../../load/folder.ts';

const OF = ['program', 'journal', 'record'];
const SHARED: readonly Asked[] = [{ question: 'part', words: ['drum'], answer: '"Drum"' }];
const page = (text: string): KeptPage => ({ told: { shared: new Set([0]), own: [] }, bytes: Buffer.from(text) });
const open = (cache: string, edition = 'one') => openPageStore(cache, OF, edition);
const textOf = (kept: KeptPage | undefined): string | undefined => kept && Buffer.from(kept.bytes).toString();

function kept(): { readonly cache: string; readonly folder: string; packs(): string[] } {
  const cache = folderWith({});
  open(cache).save(
    new Map([
      ['a.html', page('first')],
      ['b.html', page('second')],
    ]),
    SHARED,
  );
  const [name = ''] = readdirSync(join(cache, 'site-pages'));
  const folder = join(cache, 'site-pages', name);
  return { cache, folder, packs: () => readdirSync(folder).filter((one) => one.endsWith('.pack')) };
}

test('by their addresses, with what they were told', () => {
  const { cache } = kept();
  const store = open(cache);
  expect([textOf(store.get('a.html')), textOf(store.get('b.html')), store.get('c.html')]).toEqual(['first', 'second', undefined]);
  expect([store.shared, [...(store.get('a.html')?.told.shared ?? [])]]).toEqual([SHARED, [0]]);
});

test('and not by another edition', () => {
  expect(open(kept().cache, 'two').get('a.html')).toBeUndefined();
});

test('only those that were kept last', () => {
  const { cache, packs } = kept();
  const store = open(cache);
  store.save(
    new Map([
      ['b.html', store.get('b.html') as KeptPage],
      ['c.html', page('third')],
    ]),
    SHARED,
  );
  const again = open(cache);
  expect(['a.html', 'b.html', 'c.html'].map((one) => textOf(again.get(one)))).toEqual([undefined, 'second', 'third']);
  again.save(new Map([['c.html', page('fourth')]]), SHARED);
  expect(packs()).toHaveLength(1);
});

test.each([
  ['cut short', (bytes: Buffer) => bytes.subarray(0, -1)],
  ['flipped', (bytes: Buffer) => Buffer.concat([Buffer.from([(bytes[0] ?? 0) ^ 1]), bytes.subarray(1)])],
  ['longer', (bytes: Buffer) => Buffer.concat([bytes, Buffer.from('x')])],
])('nor from a pack that was %s', (_, spoil) => {
  const { cache, folder, packs } = kept();
  const file = join(folder, packs()[0] ?? '');
  writeFileSync(file, spoil(readFileSync(file)));
  expect(open(cache).get('a.html')).toBeUndefined();
});

test('nor from one that was put in the place of another', () => {
  const { cache, folder, packs } = kept();
  const [name = ''] = packs();
  writeFileSync(join(folder, 'other'), 'FIRSTSECOND');
  renameSync(join(folder, 'other'), join(folder, name));
  expect(open(cache).get('a.html')).toBeUndefined();
});

test('nor with an index that was spoilt', () => {
  const { cache, folder } = kept();
  writeFileSync(join(folder, 'index.json'), readFileSync(join(folder, 'index.json'), 'utf8').replace('a.html', 'b.html'));
  expect(open(cache).get('b.html')).toBeUndefined();
});
