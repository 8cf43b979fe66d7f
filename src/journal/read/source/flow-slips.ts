/** Slips inside braces and brackets that open on one line and are meant to close on it. */
import { endingSlip } from './flow-ending.ts';
import { endsValue, isFieldAfterComma, NAME } from './flow-marks.ts';
import { valueSlip } from './plain-value.ts';
import type { Slip } from './slip.ts';

const UNCLOSED = 'A brace or bracket that was opened is not closed.';
const CLOSERS = 'Close every `{` with `}` and every `[` with `]`';

/**
 * Reads a line from its first brace or bracket, as a person would.
 *
 * @param text the YAML
 * @param start where the brace or bracket stands
 * @param end the end of the line
 * @param known names that fields have
 * @returns every slip; none when the line is sound, or is not to be made out
 */
export function flowSlips(text: string, start: number, end: number, known: ReadonlySet<string>): Slip[] {
  const reader = new FlowReader(text, start, end, known);
  return reader.whole() ? reader.slips : [];
}

class FlowReader {
  readonly slips: Slip[] = [];
  readonly #text: string;
  readonly #end: number;
  readonly #known: ReadonlySet<string>;
  #at: number;
  /** Brackets open around the place that is read. */
  #lists = 0;

  constructor(text: string, start: number, end: number, known: ReadonlySet<string>) {
    this.#text = text.slice(0, end);
    this.#at = start;
    this.#end = end;
    this.#known = known;
  }

  /** @returns whether the line was made out */
  whole(): boolean {
    if (!this.#value(null)) return false;
    const slip = endingSlip(this.#text, this.#at);
    if (slip) this.slips.push(slip);
    return true;
  }

  #value(field: string | null): boolean {
    this.#skipSpace();
    const mark = this.#text[this.#at];
    if (mark === '{') return this.#fields();
    if (mark === '[' && this.#closesAsList()) return this.#list(field);
    return this.#scalar(field);
  }

  /** `[x] y` in braces is a value that begins with a bracket. */
  #closesAsList(): boolean {
    const close = this.#text.indexOf(']', this.#at);
    return close === -1 || /^\s*(?:[,}\]#]|$)/.test(this.#text.slice(close + 1));
  }

  #fields(): boolean {
    const open = this.#at++;
    for (let comma = true; ; ) {
      this.#skipSpace();
      const mark = this.#text[this.#at];
      if (mark === undefined || this.#atComment()) return this.#unclosed(open, '}');
      if (mark === '}') return this.#step();
      if (mark === ']') return this.#lists > 0 ? this.#unclosed(open, '}') : this.#wrongCloser(open, '}');
      if (mark === ',') {
        if (comma) this.#slip('A201', this.#at, this.#at + 1, 'A comma stands here with nothing before it.', 'Take it out.', '');
        comma = this.#step();
        continue;
      }
      if (mark === ';') this.#step();
      else if (!this.#field()) return false;
      comma = false;
    }
  }

  #field(): boolean {
    const start = this.#at;
    const name = NAME.exec(this.#rest())?.[0];
    if (name === undefined) return false;
    this.#at += name.length;
    const mark = /^\s*(?:::?|：|=)/.exec(this.#rest())?.[0];
    if (mark === undefined) return this.#withoutColon(name, start);
    const spaced = /^\s/.test(this.#text[this.#at + mark.length] ?? ' ');
    const quotedName = /^["']/.test(name);
    if (mark.trim() !== ':' || (!spaced && !quotedName)) this.#colon(name, start, mark);
    this.#at += mark.length;
    return this.#value(name);
  }

  #colon(name: string, start: number, mark: string): void {
    const end = this.#at + mark.length;
    const message = mark.trim() === ':' ? 'After the colon of a field stands a space.' : 'Between a field and its value stands `: `.';
    const value = /^\s*[^,}\]]*/.exec(this.#text.slice(end))?.[0].trim() ?? '';
    this.#slip('A208', start, end, message, `Write \`${name}: ${value}\`.`, ': ', this.#at);
  }

  #withoutColon(name: string, start: number): boolean {
    const hint = this.#known.has(name) ? `Write \`${name}: \` and its value.` : 'Every field is `name: value`.';
    const value = /^[^,}\]]*/.exec(this.#rest())?.[0] ?? '';
    if (this.#known.has(name) && value.trim() !== '') {
      this.#slip('A208', start, this.#at, `\`${name}\` has no colon.`, hint, `${name}:`, start);
      return this.#value(name);
    }
    this.#at += value.length;
    this.#slip('A208', start, this.#at, `\`${this.#text.slice(start, this.#at).trim()}\` has no value.`, hint, '', start);
    if (this.#text[this.#at] === ',') this.#at += 1;
    return true;
  }

  #list(field: string | null): boolean {
    const open = this.#at++;
    this.#lists += 1;
    const read = this.#items(open, field);
    this.#lists -= 1;
    return read;
  }

  #items(open: number, field: string | null): boolean {
    for (;;) {
      this.#skipSpace();
      const mark = this.#text[this.#at];
      if (mark === undefined || this.#atComment()) return this.#unclosed(open, ']');
      if (mark === ']') return this.#step();
      if (mark === '}') return this.#endsInBrace(open);
      if (mark === ',' && isFieldAfterComma(this.#rest(), this.#known)) return this.#unclosed(open, ']');
      if (mark === ',') this.#at += 1;
      else if (!(mark === '{' ? this.#fields() : this.#item(field))) return false;
    }
  }

  /** `[a }`: the brace closes what is around the list, where there is something, else it stands for the bracket. */
  #endsInBrace(open: number): boolean {
    const before = this.#text.slice(this.#text.lastIndexOf('\n', open) + 1, open);
    return before.includes('{') ? this.#unclosed(open, ']') : this.#wrongCloser(open, ']');
  }

  #item(field: string | null): boolean {
    const before = this.#at;
    return this.#scalar(field, true) && this.#at > before;
  }

  #scalar(field: string | null, inList = false): boolean {
    const start = this.#at;
    const sound = this.#soundQuoted();
    if (sound > 0) {
      this.#at += sound;
      return true;
    }
    this.#at = this.#plainEnd(inList, field);
    if (!inList && this.#lists === 0 && /^\]\s*[,}]/.test(this.#rest())) return this.#unopened(start);
    const text = this.#text.slice(start, this.#at).trimEnd();
    const slip = text === '' ? null : valueSlip({ field: inList ? null : field, start, text }, true);
    if (slip) this.slips.push(slip);
    return true;
  }

  /** The length of a value in quotation marks that are closed where the value ends; 0 for any other. */
  #soundQuoted(): number {
    const found = /^(?:"(?:[^"\\]|\\.)*"|'(?:[^']|'')*')(?=\s*(?:[,}\]]|$|\s#))/.exec(this.#rest());
    return found?.[0].length ?? 0;
  }

  #plainEnd(inList: boolean, field: string | null): number {
    let depth = 0;
    const lastBrace = this.#text.lastIndexOf('}');
    for (let i = this.#at; i < this.#end; i += 1) {
      const mark = this.#text[i] as string;
      const rest = this.#text.slice(i);
      if (mark === '[') depth += 1;
      else if (mark === ']' && depth > 0) depth -= 1;
      else if ((mark === '}' || mark === ']') && (/^[}\]]\s*(?:[,}\]#]|$)/.test(rest) || i === lastBrace)) return i;
      else if (mark === ',' && (inList || endsValue(rest, field, this.#known))) return i;
      else if (!inList && this.#missesComma(i, rest)) return i;
      else if (/\s/.test(mark) && /^\s+#[^}\]]*$/.test(rest)) return i;
    }
    return this.#end;
  }

  /** `did: removed, inspected]`: the list was meant to be opened. */
  #unopened(start: number): true {
    const message = 'A list is closed here that was not opened.';
    this.#slip('A201', this.#at, this.#at + 1, message, 'Write `[` before its first value.', '[', start, start);
    return this.#step();
  }

  /** The next field begins, and only a semicolon or nothing stands before it. */
  #missesComma(i: number, rest: string): boolean {
    const found = /^(;?)\s+([a-z-]+)\s*:\s/.exec(rest);
    if (!found?.[2] || !this.#known.has(found[2])) return false;
    const message = found[1] ? 'Fields inside braces are kept apart by commas.' : 'A comma is missing between two fields.';
    const at = i + rest.indexOf(found[2]);
    this.#slip('A208', at, at + found[2].length, message, `Write a comma before \`${found[2]}:\`.`, ',', i, i + (found[1]?.length ?? 0));
    return true;
  }

  #unclosed(open: number, closer: string): boolean {
    const at = this.#text.slice(0, this.#at).trimEnd().length;
    const opened = this.#text[open] ?? '';
    this.#slip('A201', open, open + 1, UNCLOSED, `${CLOSERS}: this \`${opened}\` wants a \`${closer}\` on its line.`, ` ${closer}`, at, at);
    return true;
  }

  #wrongCloser(open: number, closer: string): boolean {
    const found = this.#text[this.#at] ?? '';
    const message = `\`${this.#text[open]}\` is closed with \`${found}\`.`;
    this.#slip('A201', this.#at, this.#at + 1, message, `${CLOSERS}: write \`${closer}\`.`, closer);
    return this.#step();
  }

  #slip(code: Slip['code'], start: number, end: number, message: string, hint: string, put: string, from = start, to = end): void {
    this.slips.push({ code, start, end, message, hint, edits: [{ start: from, end: to, text: put }] });
  }

  #rest(): string {
    return this.#text.slice(this.#at);
  }

  #step(): true {
    this.#at += 1;
    return true;
  }

  #skipSpace(): void {
    this.#at += /^\s*/.exec(this.#rest())?.[0].length ?? 0;
  }

  #atComment(): boolean {
    return this.#text[this.#at] === '#' && /\s/.test(this.#text[this.#at - 1] ?? '');
  }
}
