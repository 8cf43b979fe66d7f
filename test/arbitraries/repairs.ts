/** Repairs as the hint of a message has them, typed into the files it is about. */
import type { Diagnostic } from '../../src/journal/diagnostics/diagnostic.ts';

export type Files = Readonly<Record<string, string>>;

/** The files with the repair typed in; null where the hint says nothing that this can type. */
export function repaired(files: Files, told: Diagnostic): Files | null {
  for (const [pattern, type] of REPAIRS) {
    const found = pattern.exec(told.hint ?? '');
    if (found) return type(files, told, found);
  }
  return null;
}

type Typing = (files: Files, told: Diagnostic, hint: RegExpExecArray) => Files | null;

const REPAIRS: readonly (readonly [RegExp, Typing])[] = [
  [/^Did you mean `([^`]+)`/, (files, told, [, name = '']) => withLine(files, told, (line) => replacedAt(line, told, name))],
  [/^Exchange their dates/, exchanged],
  [/^Take (?:it|this entry|the number) (?:out|out\b)/, (files, told) => withoutLine(files, told)],
  [/^(?:Say `count: (\d+)`|There is room for \d+: say `count: (\d+)`)/, (files, told, [, a, b]) => counted(files, told, a ?? b ?? '')],
  [
    /`did: \[removed, …\]`/,
    (files, told) =>
      withLine(files, told, (line) =>
        line.replace(/did: (?:\[([^\]]+)\]|([a-z-]+))/, (_, list, word) => `did: [removed, ${list ?? word}]`),
      ),
  ],
  [/record `(removed|fitted|sent-out)` where that was/, (files, told, [, word = '']) => recordedBefore(files, told, word)],
  [/^Record first how it came here: `returned`/, (files, told) => recordedBefore(files, told, 'acquired')],
  [/^Record first that it came back/, (files, told) => recordedBefore(files, told, 'returned')],
  [/^Leave `from` out/, (files, told) => withLine(files, told, withoutFrom)],
  [
    /^Record first what came off, and leave `from` out here: `- (\{[^}]+\})`/,
    (files, told, [, entry = '']) => withBefore(withLine(files, told, withoutFrom), told, entry),
  ],
  [/^Record first what was reached: `- (\{[^}]+\})`/, (files, told, [, entry = '']) => withBefore(files, told, entry)],
  [/^Open it first, under `opens`: `- (\{.+what: )…/, (files, told, [, entry = '']) => listed(files, told, 'opens', `${entry}x }`)],
  [
    /^Record first what came off/,
    (files, told) => recordedBefore(files, told, 'removed', /holds \d+ of `([^`]+)`/.exec(told.message)?.[1]),
  ],
  [
    /^Fill it under `bags` of this note: `- \{ bag: (\d+)/,
    (files, told, [, bag = '']) => listed(files, told, 'bags', `{ bag: ${bag}, holds: [things] }`),
  ],
  [/^Say `emptied: \[(\d+)\]`/, (files, told, [, bag = '']) => listed(files, told, 'emptied', bag)],
  [
    /or own up: `(\{ milestone: .+, because: )… \}`/,
    (files, told, [, entry = '']) => withLine(files, told, () => `  - ${entry}so it is }`),
  ],
  [/^Say so under `parts`: `- (\{ part: [^}]+\})`/, (files, told, [, entry = '']) => listed(files, told, 'parts', entry)],
];

const fileOf = ({ place }: Diagnostic): string => place.file;

function withLine(files: Files, told: Diagnostic, change: (line: string) => string): Files {
  const lines = (files[fileOf(told)] ?? '').split('\n');
  const at = told.place.line - 1;
  lines[at] = change(lines[at] ?? '');
  return { ...files, [fileOf(told)]: lines.join('\n') };
}

function replacedAt(line: string, { place, message }: Diagnostic, name: string): string {
  const written = line.slice(place.column - 1, place.endColumn - 1);
  // Of an entry as a whole, what is not known is the name that the message quotes.
  const unknown = /`([^`]+)`/.exec(message)?.[1] ?? '';
  return /^\{/.test(written) ? line.replace(unknown, name) : line.slice(0, place.column - 1) + name + line.slice(place.endColumn - 1);
}

function withoutLine(files: Files, told: Diagnostic): Files {
  const lines = (files[fileOf(told)] ?? '').split('\n');
  lines.splice(told.place.line - 1, 1);
  return { ...files, [fileOf(told)]: lines.join('\n').replace(/\n[a-z]+:\n(?! )/, '\n') };
}

function counted(files: Files, told: Diagnostic, count: string): Files {
  return withLine(files, told, (line) =>
    /count: \d+/.test(line) ? line.replace(/count: \d+/, `count: ${count}`) : line.replace(/ \}$/, `, count: ${count} }`),
  );
}

/** An entry put before the one that the message is about. */
function recordedBefore(files: Files, told: Diagnostic, did: string, part?: string): Files | null {
  const lines = (files[fileOf(told)] ?? '').split('\n');
  const at = told.place.line - 1;
  const about = part ?? /part: ([a-z0-9-]+)/.exec(lines[at] ?? '')?.[1];
  if (about === undefined) return null;
  const where = did === 'sent-out' ? ', to: a firm' : '';
  return withBefore(files, told, `{ part: ${about}, did: ${did}${where} }`);
}

function withBefore(files: Files, told: Diagnostic, entry: string): Files {
  const lines = (files[fileOf(told)] ?? '').split('\n');
  lines.splice(told.place.line - 1, 0, `  - ${entry}`);
  return { ...files, [fileOf(told)]: lines.join('\n') };
}

const withoutFrom = (line: string): string => line.replace(/, from: [^,}]+/, '').replace('} ', '}');

/** An entry put last into a list of the note. */
function listed(files: Files, told: Diagnostic, field: string, entry: string): Files {
  const text = files[fileOf(told)] ?? '';
  const list = new RegExp(`(\n${field}:\n(?:  - .*\n)*)`);
  const body = list.test(text) ? text.replace(list, `$1  - ${entry}\n`) : text.replace(/---\n$/, `${field}:\n  - ${entry}\n---\n`);
  return { ...files, [fileOf(told)]: body };
}

/** Two notes under each other's names, with each other's dates. */
function exchanged(files: Files, told: Diagnostic): Files | null {
  const other = told.related[0]?.place.file;
  if (other === undefined) return null;
  const [a, b] = [files[fileOf(told)] ?? '', files[other] ?? ''];
  const date = (text: string) => /^date: .*$/m.exec(text)?.[0] ?? '';
  return { ...files, [fileOf(told)]: b.replace(/^date: .*$/m, date(a)), [other]: a.replace(/^date: .*$/m, date(b)) };
}
