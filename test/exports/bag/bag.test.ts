/** Bags by the rules of RFC 8493, The BagIt File Packaging Format (V1.0); section numbers are of that document. */
import { execFileSync, spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { cpSync, mkdirSync, mkdtempSync, readFileSync, renameSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import * as fc from 'fast-check';
import { unzipSync } from 'fflate';
import { describe, expect, onTestFinished, test } from 'vitest';
import { decodePath, encodePath, manifestText, readManifest, readTags, tagsText } from '../../../src/exports/bag/manifest.ts';
import { verifyBag } from '../../../src/exports/bag/verify-bag.ts';
import { type BagFile, folderSink, writeBag, zipSink } from '../../../src/exports/bag/write-bag.ts';

const FILES: readonly BagFile[] = [
  { path: 'journal/sessions/2031-03-12-brakes.md', from: Buffer.from('---\ndate: 2031-03-12\n---\n') },
  { path: 'journal/100% wool.txt', from: Buffer.from('felt\n') },
  { path: 'empty.txt', from: Buffer.alloc(0) },
];
const FACTS = { day: '2031-03-12', about: [['External-Description', 'The bakery van']] as const };

function room(): string {
  const folder = mkdtempSync(join(tmpdir(), 'asfound-bag-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}

async function bagIn(folder: string): Promise<string> {
  const bag = join(folder, 'bag');
  await writeBag(FILES, FACTS, folderSink(bag));
  return bag;
}

const sha512 = (text: string) => createHash('sha512').update(text).digest('hex');
const problemsOf = async (bag: string) => (await verifyBag(bag)).problems.map(({ path, what }) => `${path}: ${what}`);

describe('a bag that is written', () => {
  test('holds the declaration, the manifests of both kinds and the oxum, and is found sound', async () => {
    const bag = await bagIn(room());
    const read = (file: string) => readFileSync(join(bag, file), 'utf8');
    // Section 2.1.1: the declaration, to the letter.
    expect(read('bagit.txt')).toBe('BagIt-Version: 1.0\nTag-File-Character-Encoding: UTF-8\n');
    expect(read('bag-info.txt')).toBe('External-Description: The bakery van\nBagging-Date: 2031-03-12\nPayload-Oxum: 30.3\n');
    // Section 2.1.3: the per cent sign of a path is encoded.
    expect(read('manifest-sha512.txt')).toContain(`${sha512('felt\n')}  data/journal/100%25 wool.txt\n`);
    expect(read('tagmanifest-sha512.txt')).toContain(`${sha512(read('manifest-sha512.txt'))}  manifest-sha512.txt\n`);
    expect(await verifyBag(bag)).toEqual({ problems: [], files: 6, octets: 30, algorithms: ['sha512'] });
  });

  const hasSums = spawnSync('sha512sum', ['--version']).status === 0;
  test.skipIf(!hasSums)('is found sound by the checksum program of the system', async () => {
    const bag = await bagIn(room());
    rmSync(join(bag, 'data/journal/100% wool.txt'));
    const manifest = readFileSync(join(bag, 'manifest-sha512.txt'), 'utf8').replace(/.*wool.*\n/, '');
    const said = execFileSync('sha512sum', ['--check', '-'], { cwd: bag, input: manifest, encoding: 'utf8' });
    expect(said.match(/: OK/g)).toHaveLength(2);
  });

  test('as a ZIP file has the same files in one folder, and the same bytes each time', async () => {
    const folder = room();
    const bag = await bagIn(folder);
    for (const name of ['one.zip', 'two.zip']) await writeBag(FILES, FACTS, zipSink(join(folder, name), 'van', FACTS.day));
    const bytes = readFileSync(join(folder, 'one.zip'));
    expect(readFileSync(join(folder, 'two.zip')).equals(bytes)).toBe(true);
    const unzipped = Object.entries(unzipSync(bytes)).map(([path, content]) => [path, Buffer.from(content).toString()]);
    const paths = [
      'bag-info.txt',
      'bagit.txt',
      'data/empty.txt',
      'data/journal/100% wool.txt',
      'data/journal/sessions/2031-03-12-brakes.md',
    ];
    for (const path of paths) expect(unzipped).toContainEqual([`van/${path}`, readFileSync(join(bag, path), 'utf8')]);
    expect(unzipped).toHaveLength(7);
  });

  test('of a file that cannot be read is not finished', async () => {
    await expect(writeBag([{ path: 'a', from: '/nowhere/at/all' }], FACTS, folderSink(join(room(), 'bag')))).rejects.toThrow('ENOENT');
    const zip = zipSink(join(room(), 'bag.zip'), 'van', FACTS.day);
    await expect(writeBag([{ path: 'a', from: '/nowhere/at/all' }], FACTS, zip)).rejects.toThrow('ENOENT');
  });
});

describe('a bag that is not as it says', () => {
  const spoil: readonly [string, (bag: string) => void, readonly string[]][] = [
    [
      'a byte of a file changed',
      (bag) => writeFileSync(join(bag, 'data/journal/100% wool.txt'), 'fell\n'),
      ['data/journal/100% wool.txt: differs from its sum (sha512)'],
    ],
    [
      'a file missing',
      (bag) => rmSync(join(bag, 'data/empty.txt')),
      ['data/empty.txt: is missing', 'bag-info.txt: says Payload-Oxum 30.3; 30.2 are there'],
    ],
    [
      'a file too many',
      (bag) => writeFileSync(join(bag, 'data/more.txt'), ''),
      ['data/more.txt: is too many: no manifest lists it', 'bag-info.txt: says Payload-Oxum 30.3; 4 files are there'],
    ],
    ['no declaration (section 3)', (bag) => rmSync(join(bag, 'bagit.txt')), ['bagit.txt: is missing: without it this is no bag']],
    [
      'a declaration of a version to come',
      (bag) => writeFileSync(join(bag, 'bagit.txt'), 'BagIt-Version: 7.0\nTag-File-Character-Encoding: UTF-8\n'),
      ['bagit.txt: speaks of version 7.0; 1.0 and 0.97 are known'],
    ],
    [
      'a declaration with a byte order mark (section 2.1.1)',
      (bag) => writeFileSync(join(bag, 'bagit.txt'), '\ufeffBagIt-Version: 1.0\nTag-File-Character-Encoding: UTF-8\n'),
      ['bagit.txt: begins with a byte order mark'],
    ],
    ['no manifest of the payload', (bag) => rmSync(join(bag, 'manifest-sha512.txt')), ['has no manifest of what it holds']],
    [
      'a tag file changed',
      (bag) => writeFileSync(join(bag, 'bag-info.txt'), 'Payload-Oxum: 30.3\n'),
      ['bag-info.txt: differs from its sum (sha512)'],
    ],
    [
      'a sum that no program here knows',
      (bag) => writeFileSync(join(bag, 'manifest-sha9000.txt'), readFileSync(join(bag, 'manifest-sha512.txt'))),
      ['manifest-sha9000.txt: sums by sha9000, which cannot be reckoned here'],
    ],
    [
      'a file that lies elsewhere (section 2.2.3)',
      (bag) => {
        rmSync(join(bag, 'data/empty.txt'));
        writeFileSync(join(bag, 'fetch.txt'), 'https://example.org/e - data/empty.txt\n');
      },
      ['data/empty.txt: lies elsewhere still: fetch.txt says where from'],
    ],
    [
      'a fetch that climbs out (section 5.1)',
      (bag) => writeFileSync(join(bag, 'fetch.txt'), 'https://example.org/e - data/../../x\n'),
      ['fetch.txt: line 1 is no address, length and path below data/'],
    ],
    [
      'a link in the payload',
      (bag) => symlinkSync('/etc/hostname', join(bag, 'data/link')),
      ['data/link: is a link or a device, and is not followed'],
    ],
    [
      'a line that is none',
      (bag) => writeFileSync(join(bag, 'manifest-md5.txt'), 'nonsense\n'),
      ['manifest-md5.txt: line 1 is no sum and path'],
    ],
  ];
  test.each(spoil)('%s is told', async (_, change, expected) => {
    const bag = await bagIn(room());
    change(bag);
    const problems = await problemsOf(bag);
    for (const one of expected) expect(problems.join('\n')).toContain(one);
  });

  test.each(['/etc/passwd', '../out', 'data/../../out', '~/out', 'C:/out', 'data\\..\\out', 'notes.txt'])(
    'a manifest may not lead to %s (section 5.1)',
    async (path) => {
      const bag = await bagIn(room());
      writeFileSync(join(bag, 'manifest-sha512.txt'), `${sha512('')}  data/empty.txt\n${sha512('')}  ${path}\n`);
      expect((await problemsOf(bag)).join('\n')).toMatch(/manifest-sha512.txt: lists .*(leads out of the bag|not below data)/);
    },
  );

  test('several manifests list the same files (section 3), except in a bag of version 0.97', async () => {
    const bag = await bagIn(room());
    const md5 = (text: string) => createHash('md5').update(text).digest('hex');
    writeFileSync(join(bag, 'manifest-md5.txt'), `${md5('')}  data/empty.txt\n${md5('felt\n')}  data/journal/100%25 wool.txt\n`);
    expect(await problemsOf(bag)).toEqual([
      'data/journal/sessions/2031-03-12-brakes.md: is not in manifest-md5.txt: every manifest lists the same files',
    ]);
    rmSync(join(bag, 'tagmanifest-sha512.txt'));
    writeFileSync(join(bag, 'bagit.txt'), 'BagIt-Version: 0.97\nTag-File-Character-Encoding: UTF-8\n');
    expect(await verifyBag(bag)).toMatchObject({ problems: [], algorithms: ['md5', 'sha512'] });
  });

  test('tag files may be in another encoding, and end their lines with CR, LF or both (sections 2.1.1, 2.1.3)', async () => {
    const bag = join(room(), 'bag');
    mkdirSync(join(bag, 'data'), { recursive: true });
    writeFileSync(join(bag, 'data/é.txt'), 'e');
    writeFileSync(join(bag, 'data/a.txt'), 'a');
    writeFileSync(join(bag, 'bagit.txt'), 'BagIt-Version: 1.0\r\nTag-File-Character-Encoding: ISO-8859-1\r\n');
    writeFileSync(
      join(bag, 'manifest-sha512.txt'),
      Buffer.from(`${sha512('e')}  data/é.txt\r${sha512('a').toUpperCase()} \t*data/a.txt`, 'latin1'),
    );
    expect(await problemsOf(bag)).toEqual([]);
  });

  test('a name whose accents are coded another way is told as what it is', async () => {
    const bag = await bagIn(room());
    const name = 'é.txt';
    cpSync(join(bag, 'data/empty.txt'), join(bag, `data/${name.normalize('NFC')}`));
    const manifest = readFileSync(join(bag, 'manifest-sha512.txt'), 'utf8');
    writeFileSync(join(bag, 'manifest-sha512.txt'), `${manifest}${sha512('')}  data/${name.normalize('NFD')}\n`);
    expect((await problemsOf(bag)).join('\n')).toContain('differs only in how its accents are coded');
  });

  test('whatever file is renamed is told twice, as missing and as too many', async () => {
    const bag = await bagIn(room());
    renameSync(join(bag, 'data/empty.txt'), join(bag, 'data/full.txt'));
    expect(await problemsOf(bag)).toEqual(['data/empty.txt: is missing', 'data/full.txt: is too many: no manifest lists it']);
  });
});

describe('the text of manifests and tags', () => {
  test('any path that a disk takes comes back from a manifest', () => {
    const path = fc
      .string({ unit: 'binary', minLength: 1 })
      .filter((text) => text.trim() !== '' && !text.startsWith('*') && !text.startsWith('./'));
    fc.assert(
      fc.property(path, (name) => {
        const written = manifestText([{ path: `data/${name}`, digest: 'abc' }]);
        expect(readManifest(written).lines).toEqual([{ path: `data/${name}`, digest: 'abc' }]);
        expect(decodePath(encodePath(name))).toBe(name);
      }),
    );
  });

  test('a value goes on over lines that begin with white space, names may recur, and ours are one line (section 2.2.2)', () => {
    expect(readTags('Source-Organization: A\r\n  workshop\nContact-Name: one\nContact-Name: two\n')).toEqual([
      ['Source-Organization', 'A workshop'],
      ['Contact-Name', 'one'],
      ['Contact-Name', 'two'],
    ]);
    expect(tagsText([['About', 'one\ntwo']])).toBe('About: one two\n');
  });
});
