/** What a restorer does to a journal between two builds, by chance: nothing of it is sure to leave the journal without errors. */
import sharp from 'sharp';
import type { Random } from '../bench/random.ts';

/** Files by path, as they are to lie in the journal's folder. */
export type Files = Map<string, string | Uint8Array>;

interface Edit {
  readonly what: string;
  /** Changes the files; leaves them alone where there is nothing to do it to. */
  make(files: Files, random: Random): void | Promise<void>;
}

/** Makes one of them. @returns what was done, in words */
export async function editByChance(files: Files, random: Random): Promise<string> {
  const edit = random.pick(EDITS);
  await edit.make(files, random);
  return edit.what;
}

/** The evening after all others: a note in a folder of its own with a picture, about a part that is there. */
export async function writeEvening(files: Files, random: Random): Promise<void> {
  const last = ['2026-11-24', ...notesIn(files).map(dayOf)].sort().at(-1) ?? '';
  const date = new Date(Date.parse(last) + 86_400_000).toISOString().slice(0, 10);
  const part = /id: ([a-z0-9-]+)/.exec(textOf(files, random.pick(cataloguesIn(files))))?.[1] ?? 'brakes';
  const note = [
    `---`,
    `date: ${date}`,
    `title: An evening with the lamp`,
    `hours: [{ by: rh, on: brakes, time: ${random.between(1, 5)}h }]`,
  ];
  files.set(
    `sessions/${date}-lamp/index.md`,
    [...note, '---', '', `Looked at [it](part:${part}).`, '', '![By the lamp](lamp.jpg)', ''].join('\n'),
  );
  files.set(`sessions/${date}-lamp/lamp.jpg`, await picture(random));
}

const EDITS: readonly Edit[] = [
  { what: 'a note is written', make: writeEvening },
  {
    what: 'prose is added',
    make: (files, random) =>
      change(files, random.pick(notesIn(files)), (text) => `${text}\nOne thing more, number ${random.below(1000)}.\n`),
  },
  {
    what: 'a title is changed',
    make: (files, random) =>
      change(files, random.pick(notesIn(files)), (text) => text.replace(/^title: .*$/m, `title: Evening ${random.below(1000)}`)),
  },
  {
    what: 'hours are changed',
    make: (files, random) =>
      change(files, random.pick(notesIn(files)), (text) => text.replace(/time: [^ ,]+/, `time: ${random.between(1, 9)}h`)),
  },
  { what: 'a note is deleted', make: (files, random) => void files.delete(random.pick(notesIn(files))) },
  {
    what: 'a note is renamed',
    make: (files, random) => rename(files, random.pick(notesIn(files)), (path) => path.replace(/(\/index)?\.md$/, '-again$1.md')),
  },
  {
    what: 'a part is given another name',
    make: (files, random) =>
      change(files, random.pick(cataloguesIn(files)), (text) =>
        text.replace(/name: (?:"[^"]*"|[^,}]*)/, `name: Thing ${random.below(1000)}`),
      ),
  },
  {
    what: 'a part is added',
    make: (files, random) =>
      change(
        files,
        random.pick(cataloguesIn(files)),
        (text) => `${text}- { id: added-${random.below(1000)}, name: Added, origin: original }\n`,
      ),
  },
  {
    what: 'a catalogue loses its last part',
    make: (files, random) => change(files, random.pick(cataloguesIn(files)), (text) => text.replace(/\n- [^\n]*\n$/, '\n')),
  },
  {
    what: 'a catalogue is renamed',
    make: (files, random) =>
      rename(files, random.pick(cataloguesIn(files)), () => `parts/${random.pick(['frame', 'brakes', 'trim'])}.yaml`),
  },
  {
    what: 'the journal is given another title',
    make: (files, random) => change(files, 'journal.yaml', (text) => text.replace(/^title: .*$/m, `title: Van ${random.below(1000)}`)),
  },
  {
    what: 'another locale is set',
    make: (files, random) =>
      change(files, 'journal.yaml', (text) => text.replace(/^locale: .*$/m, `locale: ${random.pick(['en-GB', 'de-DE', 'fr-FR'])}`)),
  },
  {
    what: 'a rate is changed',
    make: (files, random) =>
      change(files, 'journal.yaml', (text) => text.replace(/rate: [\d.]+ }$/m, `rate: ${random.between(10, 60)}.00 }`)),
  },
  {
    what: 'a consumable is given another name',
    make: (files, random) => change(files, 'consumables.yaml', (text) => text.replace(/name: [^,}]*/, `name: Stuff ${random.below(1000)}`)),
  },
  { what: 'a picture is replaced', make: replacePicture },
  { what: 'a picture is deleted', make: (files, random) => onPicture(files, random, (path) => void files.delete(path)) },
  {
    what: 'a picture is renamed',
    make: (files, random) => onPicture(files, random, (path) => rename(files, path, () => path.replace('.jpg', '-2.jpg'))),
  },
  { what: 'nothing is done', make: () => undefined },
];

const notesIn = (files: Files): string[] => [...files.keys()].filter((path) => path.endsWith('.md'));
const cataloguesIn = (files: Files): string[] => [...files.keys()].filter((path) => path.startsWith('parts/'));
const dayOf = (path: string): string => path.slice('sessions/'.length, 'sessions/2031-03-12'.length);
const textOf = (files: Files, path: string): string => String(files.get(path));

function change(files: Files, path: string, by: (text: string) => string): void {
  files.set(path, by(textOf(files, path)));
}

function rename(files: Files, path: string, to: (path: string) => string): void {
  const content = files.get(path);
  files.delete(path);
  if (content !== undefined) files.set(to(path), content);
}

async function replacePicture(files: Files, random: Random): Promise<void> {
  const bytes = await picture(random);
  onPicture(files, random, (path) => void files.set(path, bytes));
}

function onPicture(files: Files, random: Random, act: (path: string) => void): void {
  const pictures = [...files.keys()].filter((path) => path.endsWith('.jpg'));
  if (pictures.length > 0) act(random.pick(pictures));
}

/** A plain ground of some colour. */
async function picture(random: Random): Promise<Uint8Array> {
  const background = { r: random.below(256), g: random.below(256), b: random.below(256) };
  return new Uint8Array(
    await sharp({ create: { width: 64, height: 48, channels: 3, background } })
      .jpeg()
      .toBuffer(),
  );
}
