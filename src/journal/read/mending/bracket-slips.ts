/** Braces and brackets that do not pair on their line, and what follows where an entry has ended. */
import { type FieldNames, patternOf, type Slip } from './slip.ts';

const CLOSERS = 'Close every `{` with `}` and every `[` with `]`';

interface Open {
  readonly mark: '{' | '[';
  readonly at: number;
}

/**
 * @param text the YAML up to the end of the line, its sound quotations masked
 * @param from where the first brace or bracket of the line stands
 */
export function bracketSlips(text: string, from: number, known: FieldNames): Slip[] {
  const slips: Slip[] = [];
  const open: Open[] = [];
  const field = new RegExp(`^,\\s*${patternOf(known)}\\s*:\\s`);
  const close = (at: number): void => {
    const last = open.pop();
    if (last) slips.push(unclosed(text, last, at));
  };
  for (let at = from; at < text.length; at += 1) {
    const mark = text[at] as string;
    const rest = text.slice(at);
    const last = open.at(-1);
    if (/^\s#[^}\]]*$/.test(rest)) return [...slips, ...open.reverse().map((each) => unclosed(text, each, at))];
    if (mark === ',' && last?.mark === '[' && field.test(rest)) close(at);
    if (mark === '{' || mark === '[') {
      if (at === from || /[{[,:-]\s*$/.test(text.slice(from, at))) open.push({ mark, at });
      else at += (/^\[[^[\]{},]*\]/.exec(rest)?.[0].length ?? 1) - 1;
    }
    if (
      (mark !== '}' && mark !== ']') ||
      !(/^.\s*(?:[,}\]#]|$)/.test(rest) || (at === text.lastIndexOf(mark) && (mark === '}' || text[from] === '[')))
    )
      continue;
    const opener = mark === '}' ? '{' : '[';
    if (last?.mark !== opener && open.some((each) => each.mark === opener)) close(at);
    else if (last && last.mark !== opener) {
      const start = listStart(text, at, mark);
      slips.push(start === null ? wrongCloser(text, last, at) : notOpened(start, at));
      if (start !== null) continue;
    }
    open.pop();
    if (open.length === 0) return [...slips, ...afterEnd(text, at + 1)];
  }
  return [...slips, ...open.reverse().map((each) => unclosed(text, each, text.length))];
}

function slip(code: Slip['code'], start: number, end: number, message: string, hint: string, edit: Slip['edits'][number]): Slip {
  return { code, start, end, message, hint, edits: [edit] };
}

function unclosed(text: string, { mark, at }: Open, before: number): Slip {
  const end = text.slice(0, before).trimEnd().length;
  const closer = mark === '{' ? '}' : ']';
  const hint = `${CLOSERS}: this \`${mark}\` wants a \`${closer}\` on its line.`;
  return slip('A201', at, at + 1, 'A brace or bracket that was opened is not closed.', hint, { start: end, end, text: ` ${closer}` });
}

function wrongCloser(text: string, { mark }: Open, at: number): Slip {
  const closer = mark === '{' ? '}' : ']';
  const edit = { start: at, end: at + 1, text: closer };
  return slip('A201', at, at + 1, `\`${mark}\` is closed with \`${text[at]}\`.`, `${CLOSERS}: write \`${closer}\`.`, edit);
}

/** `did: removed, inspected], …`: where the list was meant to be opened. */
function listStart(text: string, at: number, mark: string): number | null {
  if (mark !== ']' || !/^\]\s*[,}]/.test(text.slice(at))) return null;
  const before = [...text.slice(0, at).matchAll(/[{,]\s*[^\s,:{}[\]]+:\s+/g)].at(-1);
  return before ? before.index + before[0].length : null;
}

function notOpened(start: number, at: number): Slip {
  const edit = { start, end: start, text: '[' };
  return slip('A201', at, at + 1, 'A list is closed here that was not opened.', 'Write `[` before its first value.', edit);
}

/** What follows on a line where an entry in braces, or a list in brackets, has ended. */
function afterEnd(text: string, at: number): Slip[] {
  const rest = text.slice(at);
  const closers = /^\s*([}\]]+)\s*(?:#.*)?$/.exec(rest)?.[1];
  if (closers !== undefined) {
    const start = at + rest.indexOf(closers);
    const end = start + closers.length;
    return [
      slip('A201', start, end, 'More braces or brackets are closed than were opened.', `Take out \`${closers}\`.`, {
        start,
        end,
        text: '',
      }),
    ];
  }
  if (/^\s*(?:#.*)?$/.test(rest)) return [];
  const start = at + rest.search(/[^\s,]/);
  if (/^\s*,?\s*\{/.test(rest)) {
    const indent = /^\s*/.exec(text.slice(text.lastIndexOf('\n', at) + 1))?.[0] ?? '';
    const edit = { start: at, end: start + 1, text: `\n${indent}- {` };
    return [slip('A201', start, start + 1, 'Two entries stand on one line.', 'Begin each entry on a line of its own with `- `.', edit)];
  }
  const words = at + rest.search(/\S/);
  const hint = 'What belongs to the entry stands inside its braces: `note: "…"`.';
  return [slip('A208', words, text.length, 'Something follows where the entry ends.', hint, { start: words, end: text.length, text: '' })];
}
