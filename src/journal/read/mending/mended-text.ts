/** A text in which slips have been mended, so that the rest is read as it was meant, with every offset traced back. */

/** What takes the place of the text between two offsets. */
export interface Edit {
  readonly start: number;
  readonly end: number;
  readonly text: string;
}

/** A run of the mended text, and where it is from: `span` characters of what was written. */
interface Run {
  readonly at: number;
  readonly length: number;
  readonly from: number;
  readonly span: number;
}

export class MendedText {
  readonly text: string;
  readonly #runs: readonly Run[];

  constructor(text: string, runs: readonly Run[] = [{ at: 0, length: text.length, from: 0, span: text.length }]) {
    this.text = text;
    this.#runs = runs;
  }

  /** Where the character at an offset, or what it stands for, was written. */
  origin(offset: number): number {
    const run = this.#runs.findLast((each) => each.at <= offset);
    return run === undefined ? offset : run.from + Math.min(offset - run.at, run.span);
  }

  /** @param edits must not overlap */
  with(edits: readonly Edit[]): MendedText {
    return [...edits].sort((a, b) => b.start - a.start).reduce((mended, edit) => mended.#replaced(edit), this as MendedText);
  }

  #replaced({ start, end, text }: Edit): MendedText {
    const from = this.origin(start);
    const put: Run = { at: start, length: text.length, from, span: this.origin(end) - from };
    const shift = text.length - (end - start);
    const before = this.#runs.flatMap((run) => clipped(run, 0, start));
    const after = this.#runs.flatMap((run) => clipped(run, end, this.text.length)).map((run) => ({ ...run, at: run.at + shift }));
    return new MendedText(this.text.slice(0, start) + text + this.text.slice(end), [...before, put, ...after]);
  }
}

function clipped(run: Run, start: number, end: number): Run[] {
  const at = Math.max(run.at, start);
  const length = Math.min(run.at + run.length, end) - at;
  if (length <= 0) return [];
  const from = run.from + Math.min(at - run.at, run.span);
  const whole = at + length === run.at + run.length;
  return [{ at, length, from, span: whole ? run.from + run.span - from : Math.min(length, run.from + run.span - from) }];
}
