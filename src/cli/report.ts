/** Diagnostics as text on standard error. */
import { countsText, formatDiagnostics, type Paint, PLAIN } from '../journal/diagnostics/format.ts';
import type { Effects } from './effects.ts';
import { type OpenedJournal, shownFrom } from './the-journal.ts';

const wrap = (on: number, off: number) => (text: string) => `\u001B[${on}m${text}\u001B[${off}m`;
const COLOURS: Paint = { error: wrap(31, 39), warning: wrap(33, 39), faint: wrap(2, 22), strong: wrap(1, 22) };

/** Colour on a terminal, unless NO_COLOR says otherwise. */
export function paintFor({ terminal, env }: Effects): Paint {
  return terminal && !env.NO_COLOR ? COLOURS : PLAIN;
}

/** Every problem with its place, then how many there are. */
export function reportProblems(opened: OpenedJournal, effects: Effects): void {
  const texts = new Map(opened.sources.files.map((file) => [file.path, file.bytes]));
  const decoder = new TextDecoder();
  const text = formatDiagnostics(opened.diagnostics, {
    paint: paintFor(effects),
    sourceOf: (file) => {
      const bytes = texts.get(file);
      return bytes === undefined ? null : decoder.decode(bytes);
    },
    pathOf: shownFrom(effects.cwd, opened.folder),
  });
  effects.err(`${text}${text === '' ? '' : '\n'}${countsText(opened.diagnostics, opened.notes)}\n`);
}
