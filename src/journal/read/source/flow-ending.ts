/** What follows on a line where an entry in braces, or a list in brackets, has ended. */
import type { Slip } from './slip.ts';

/**
 * @param text the YAML up to the end of the line
 * @param at where the entry ended
 */
export function endingSlip(text: string, at: number): Slip | null {
  const rest = text.slice(at);
  const closers = /^\s*([}\]]+)\s*(?:#.*)?$/.exec(rest)?.[1];
  if (closers !== undefined) return tooMany(at + rest.indexOf(closers), closers);
  if (/^\s*,?\s*\{/.test(rest)) return secondEntry(text, at, at + rest.indexOf('{'));
  if (/^\s*(?:#.*)?$/.test(rest)) return null;
  const start = at + rest.search(/\S/);
  const hint = 'What belongs to the entry stands inside its braces: `note: "…"`.';
  const edits = [{ start, end: text.length, text: '' }];
  return { code: 'A208', start, end: text.length, message: 'Something follows where the entry ends.', hint, edits };
}

function tooMany(start: number, closers: string): Slip {
  const end = start + closers.length;
  const message = 'More braces or brackets are closed than were opened.';
  return { code: 'A201', start, end, message, hint: `Take out \`${closers}\`.`, edits: [{ start, end, text: '' }] };
}

function secondEntry(text: string, at: number, start: number): Slip {
  const end = start + 1;
  const indent = /^\s*/.exec(text.slice(text.lastIndexOf('\n', start) + 1))?.[0] ?? '';
  const hint = 'Begin each entry on a line of its own with `- `.';
  const edits = [{ start: at, end, text: `\n${indent}- {` }];
  return { code: 'A201', start, end, message: 'Two entries stand on one line.', hint, edits };
}
