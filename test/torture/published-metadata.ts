/** Every published file read back by a reader of metadata that knows nothing of us: ExifTool, where it is installed. */
import { spawnSync } from 'node:child_process';
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import sharp from 'sharp';
import { onePagePdf } from '../photos/one-page-pdf.ts';
import { box, FIRST, film, PICTURES } from '../photos/sample-film.ts';
import { FACE_TAG, SCENE, scene, TELLING } from '../photos/sample-pictures.ts';
import { journalIn, put, start } from './stand.ts';
import type { Outcome, Part } from './torture.ts';

const DEMO = fileURLToPath(new URL('../../content/', import.meta.url));

/** Groups and tags that a file must have, or that say nothing of who made it, when, where and with what. */
const PLAIN = new RegExp(
  [
    '^(ExifTool|File|System|Composite|JFIF|RIFF|ICC_Profile|ICC-|PNG|SVG|HTML|ZIP|XML|Font|MPF|APP14):',
    '^PDF:(PDFVersion|Linearized|PageCount|Title|Language|PageLayout|PageMode|TaggedPDF|Warning)$',
    '^QuickTime:(MajorBrand|MinorVersion|CompatibleBrands|MediaData|Movie|Track|Media|Image|Source|XResolution|YResolution|BitDepth|Handler|Preferred|Preview|Poster|Selection|Current|Next|TimeScale|Duration|Matrix|Graphics|OpColor|Compressor|Audio|Balance|Video|Chroma|VideoFieldOrder|PixelAspect)',
  ].join('|'),
);
/** Times that are nought, and names that are empty, are what is left of what was there. */
const NOTHING = /^(0000:00:00 00:00:00|0|)$/;

export const publishedMetadata: Part = {
  name: 'published-metadata',
  shows: 'no file that is published tells who made it, when, where or with what',
  usual: 1,
  run: async ({ folder, progress }): Promise<Outcome> => {
    if (spawnSync('exiftool', ['-ver']).status !== 0) return { counts: { 'ExifTool is not installed': 1 }, failures: [] };
    progress('the demo');
    const demo = await published(join(folder, 'demo'), DEMO);
    progress('hostile pictures');
    const hostile = join(folder, 'hostile');
    mkdirSync(hostile);
    await journalIn(hostile);
    const planted = await plant(hostile);
    const theirs = await published(hostile, 'van');
    const before = readBack(join(hostile, 'van/sessions/2031-03-06-hostile')).told.length;
    const blind = before > 20 ? [] : [`of what the hostile files tell only ${before} tags were found`];
    const failures = [...blind, ...demo.told, ...theirs.told, ...(await secretsIn(join(hostile, 'site')))];
    return {
      counts: { 'files of the demo': demo.files, 'of the hostile set': theirs.files, 'hostile files': planted, 'tags they tell': before },
      failures,
    };
  },
};

async function published(cwd: string, content: string): Promise<{ files: number; told: string[] }> {
  mkdirSync(cwd, { recursive: true });
  const { code, said } = await start(['build', '--content', content, '--out', 'site'], cwd).ended;
  if (code !== 0) return { files: 0, told: [`the build ended with ${code}: ${/error A.*/.exec(said)?.[0]}`] };
  return readBack(join(cwd, 'site'));
}

/** What an outside reader finds in every file of a folder. */
function readBack(folder: string): { files: number; told: string[] } {
  const options = ['-r', '-json', '-G', '-a', '-ee', '-api', 'LargeFileSupport=1'];
  const read = spawnSync('exiftool', [...options, folder], { encoding: 'utf8', maxBuffer: 1 << 30 });
  const files = JSON.parse(read.stdout) as Record<string, unknown>[];
  return { files: files.length, told: files.flatMap(telling) };
}

function telling(tags: Record<string, unknown>): string[] {
  const { SourceFile: file } = tags;
  const told = Object.entries(tags).filter(([tag, value]) => tag.includes(':') && !PLAIN.test(tag) && !NOTHING.test(String(value).trim()));
  return told.map(([tag, value]) => `${String(file).split('/site/')[1]}: ${tag} ${String(value).slice(0, 60)}`);
}

const SECRETS = ['Owner Of The Camera', 'SERIAL-4417', 'Tagged Person', 'hidden word', 'Obscura', '+51.5000'];

/** Pictures of every kind, papers and a film, each of which tells what it can. */
async function plant(cwd: string): Promise<number> {
  const at = 'van/sessions/2031-03-06-hostile';
  const telling = () =>
    sharp(scene(), { raw: { ...SCENE, channels: 3 } })
      .withExif(TELLING)
      .withXmp(FACE_TAG);
  const jpeg = await telling().jpeg({ progressive: true }).toBuffer();
  const comment = Buffer.from('\xff\xfe\0\x0dhidden word', 'latin1');
  const files: Record<string, Buffer> = {
    'plain.jpg': jpeg,
    'after.jpg': Buffer.concat([jpeg, Buffer.from('hidden word')]),
    'comment.jpg': Buffer.concat([jpeg.subarray(0, 2), Buffer.from([0xff, 0xff]), comment, jpeg.subarray(2)]),
    'a.png': await telling().png().toBuffer(),
    'a.webp': await telling().webp().toBuffer(),
    'a.tif': await telling().tiff().toBuffer(),
    'a.avif': await telling().avif({ effort: 0 }).toBuffer(),
    'reel.mp4': Buffer.concat([
      film(box('udta', box('\xa9xyz', '\0\x12\x15\xc7+51.5000-000.1166/')), box('meta', 'Obscura SERIAL-4417')),
      box('uuid', `0123456789abcdef${FACE_TAG}`),
      Buffer.from('\0\0\0\0hidden word', 'latin1'),
    ]),
    'wide.mov': Buffer.concat([
      box('wide'),
      box('free', 'hidden word'),
      box('mdat', PICTURES),
      film().subarray(FIRST.length + PICTURES.length + 8),
    ]),
    'paper.pdf': onePagePdf('Owner Of The Camera'),
  };
  for (const [name, bytes] of Object.entries(files)) put(cwd, `${at}/${name}`, bytes);
  const film_ = ['reel.mp4', 'wide.mov'].map((name) => `  - { clip: ${name}, title: A }\n`).join('');
  const pictures = Object.keys(files)
    .filter((name) => /\.(jpg|png|webp|tif|avif)$/.test(name))
    .map((name) => `  - { file: ${name}, caption: A }\n`)
    .join('');
  put(
    cwd,
    `${at}/index.md`,
    `---\ndate: 2031-03-06\ntitle: Hostile\npictures:\n${pictures}film:\n${film_}papers: [{ paper: paper.pdf, kind: receipt }]\n---\n`,
  );
  writeFileSync(join(cwd, 'van/.planted'), '');
  return Object.keys(files).length;
}

/** What the hostile files told, looked for byte by byte in all that is published. */
async function secretsIn(site: string): Promise<string[]> {
  return SECRETS.flatMap((secret) => {
    const { stdout } = spawnSync('grep', ['-rlaF', '--', secret, site], { encoding: 'utf8' });
    return stdout
      .split('\n')
      .filter((line) => line !== '')
      .map((file) => `${file.split('/site/')[1]} holds "${secret}"`);
  });
}
