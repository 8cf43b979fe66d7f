/** A journal as an editor has it: what lies on disk, and over it what is typed and not saved yet. */
import { type Mentions, mentionsIn } from '../journal/mentions/mentions.ts';
import type { NamedSort } from '../journal/mentions/written-name.ts';
import type { IsoDate } from '../journal/model.ts';
import { type Compiled, compileJournal, nothingMade } from '../journal/pipeline.ts';
import type { SourceFile, Sources } from '../journal/read/source/sources.ts';
import { type SourceText, sourceText } from '../journal/read/source/text.ts';
import { isSource, type LoadedSources, loadJournal } from '../load/load.ts';
import { type Thing, thingsOf } from './things.ts';

/** A journal at one moment, and all that follows from it. */
export interface State extends Compiled {
  readonly sources: Sources;
  readonly mentions: Mentions;
  readonly things: readonly Thing[];
  thing(sort: NamedSort, id: string): Thing | undefined;
  /** Null for what is no file of the journal. */
  textOf(path: string): SourceText | null;
}

export class Workspace {
  readonly folder: string;
  readonly #today: () => IsoDate;
  readonly #before = nothingMade();
  readonly #typed = new Map<string, SourceFile>();
  #disk: LoadedSources;
  #state: State | null = null;
  #last: State | null = null;

  /**
   * @param folder the absolute path of the journal
   * @throws the error of the file system when it cannot be read
   */
  constructor(folder: string, today: () => IsoDate) {
    this.folder = folder;
    this.#today = today;
    this.#disk = loadJournal(folder);
  }

  /** What is typed in a file, saved or not; null once it is closed. Of no other files anything is kept. */
  typed(path: string, text: string | null): void {
    if (text === null) this.#typed.delete(path);
    else if (isSource(path)) this.#typed.set(path, { path, bytes: new TextEncoder().encode(text) });
    this.#state = null;
  }

  /** Looks at the disk again. What cannot be read now stays as it was. */
  reload(): void {
    try {
      this.#disk = loadJournal(this.folder, this.#disk);
    } catch {
      return;
    }
    this.#state = null;
  }

  get state(): State {
    this.#state ??= this.#compiled();
    this.#last = this.#state;
    return this.#state;
  }

  /** The same, but that what follows from the files may be as it was before the last letters: an answer that cannot wait. */
  get whileTyping(): State {
    const last = this.#last ?? this.state;
    const textOf = (path: string) => textIn(this.#typed.get(path)) ?? last.textOf(path);
    return this.#state ?? Object.create(last, { textOf: { value: textOf } });
  }

  #compiled(): State {
    const onDisk = this.#disk.files.filter(({ path }) => !this.#typed.has(path));
    const files = [...onDisk, ...this.#typed.values()].sort((a, b) => (a.path < b.path ? -1 : a.path > b.path ? 1 : 0));
    const sources = { ...this.#disk, files };
    const compiled = compileJournal(sources, { today: this.#today(), before: this.#before });
    return stateOf(sources, compiled);
  }
}

/** What follows from a journal is worked out when it is first asked for: most changes ask for its faults alone. */
export function stateOf(sources: Sources, compiled: Compiled): State {
  let mentions: Mentions | null = null;
  let things: readonly Thing[] | null = null;
  const byPath = new Map(sources.files.map((file) => [file.path, file]));
  return {
    ...compiled,
    sources,
    get mentions() {
      mentions ??= mentionsIn(sources);
      return mentions;
    },
    get things() {
      things ??= compiled.record === null ? [] : thingsOf(compiled.record);
      return things;
    },
    thing(sort, id) {
      return this.things.find((one) => one.sort === sort && one.id === id);
    },
    textOf: (path) => textIn(byPath.get(path)),
  };
}

function textIn(file: SourceFile | undefined): SourceText | null {
  return file === undefined ? null : sourceText(file.path, new TextDecoder().decode(file.bytes));
}
