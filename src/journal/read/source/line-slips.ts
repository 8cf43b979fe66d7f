/** Slips on one line of a note's fields or of a catalogue, found by what such a line should look like. */
import { flowSlips } from './flow-slips.ts';
import type { Edit } from './mended-text.ts';
import { valueSlip } from './plain-value.ts';
import { oneOfAKind, type Slip } from './slip.ts';

/** A line of a text: the end does not count its line end. */
export interface Line {
  readonly start: number;
  readonly end: number;
}

/** What nobody types by hand is not looked into. */
const LONGEST = 2000;

/**
 * @param known names that fields have
 * @param opens whether what follows the line belongs to it: deeper, or a list
 * @returns every slip on the line, the first of each kind
 */
export function lineSlips(text: string, { start, end }: Line, known: ReadonlySet<string>, opens: boolean): Slip[] {
  if (end - start > LONGEST) return [];
  const line = text.slice(start, end);
  const indent = /^[\s]*/.exec(line)?.[0] ?? '';
  if (/[^ ]/.test(indent)) return [indentSlip(start, indent)];
  if (/^\.\.\.\s*$/.test(line)) return [slipAt(start, end, 'Three dots end the fields in YAML.', 'Take them out.', '')];
  const dashes = /^(?:[-–—•*−]\s+)*/u.exec(line.slice(indent.length))?.[0] ?? '';
  const at = start + indent.length + dashes.length;
  const bullet = bulletSlip(text, start + indent.length, dashes, at, end);
  return oneOfAKind([
    ...(bullet ? [bullet] : []),
    ...contentSlips(text, at + (bullet?.code === 'A201' && dashes === '' ? 1 : 0), end, known, dashes !== '' || bullet !== null, opens),
  ]);
}

function slipAt(start: number, end: number, message: string, hint: string, put: string, code: Slip['code'] = 'A201'): Slip {
  return { code, start, end, message, hint, edits: [{ start, end, text: put }] };
}

function indentSlip(start: number, indent: string): Slip {
  const tab = indent.includes('\t');
  const message = tab ? 'A tab stands in the indentation.' : 'A space that is none to YAML stands in the indentation.';
  const put = indent.replaceAll('\t', '  ').replaceAll(/[^ ]/g, ' ');
  return slipAt(start, start + indent.length, message, 'Indent with spaces, two for each step.', put, tab ? 'A202' : 'A201');
}

const BULLET = 'An entry of a list begins with a hyphen and a space: `- `.';

function bulletSlip(text: string, start: number, dashes: string, at: number, end: number): Slip | null {
  const line = text.slice(at, end);
  if (dashes === '' && /^-(?=[{["'A-Za-z])/.test(line)) {
    const slip = slipAt(at, at + 1, BULLET, 'Put a space after the hyphen.', '- ');
    return { ...slip, end: at + 2, edits: [...slip.edits, ...alongside(text, start - text.lastIndexOf('\n', start - 1), end)] };
  }
  if (/^(?:- +)*$/.test(dashes)) return null;
  const put = '- '.repeat(dashes.trim().split(/\s+/).length);
  return { ...slipAt(start, at, BULLET, 'Write a plain hyphen and a space.', put), end: start + dashes.trimEnd().length };
}

/** Fields that stand under the one after the hyphen go along with it. */
function alongside(text: string, column: number, end: number): Edit[] {
  const edits: Edit[] = [];
  for (const { index, 0: all } of text.slice(end).matchAll(/\n *(?=\S)/g)) {
    if (all.length - 1 < column) break;
    if (all.length - 1 === column) edits.push({ start: end + index + 1, end: end + index + 1, text: ' ' });
  }
  return edits;
}

function contentSlips(text: string, at: number, end: number, known: ReadonlySet<string>, inList: boolean, opens: boolean): Slip[] {
  const content = text.slice(at, end);
  if (/^[{[]/.test(content)) return flowSlips(text, at, end, known);
  if (inList && /^\(\s*[a-z-]+\s*:/.test(content)) return [parentheses(at, content)];
  if (inList && /^[a-z-]+\s*:[^{]*,\s*[a-z-]+\s*:.*\}\s*$/.test(content)) return [unopened(at, content)];
  const key = /^([A-Za-z][\w-]*)(\s*)(::|：|:|=)?(\s*)/.exec(content);
  const [head = '', name = '', , colon, gap = ''] = key ?? [];
  if (!key || (colon === undefined && inList)) return [];
  if (colon === undefined) return withoutColon(at, content, name, known, opens);
  if (content.startsWith('//', head.length) || (colon === '=' && !known.has(name))) return [];
  const value = { field: name, start: at + head.length, text: withoutComment(content.slice(head.length)) };
  const sound = colon === ':' && (gap === '' ? value.text === '' : / /.test(gap[0] ?? '') || /^\t/.test(gap));
  const slips = sound ? [] : [colonSlip(at + name.length, at + head.length, name, value.text)];
  return [...slips, ...valueSlips(text, value, end, known)];
}

function valueSlips(text: string, value: { field: string; start: number; text: string }, end: number, known: ReadonlySet<string>): Slip[] {
  if (value.text === '' || /^[|>][+-]?\d?$/.test(value.text)) return [];
  if (/^[{[]/.test(value.text)) {
    const slips = flowSlips(text, value.start, end, known);
    if (slips.length > 0) return slips;
  }
  if (/^(?:\{.*\}|\[.*\]|"(?:[^"\\]|\\.)*"|'(?:[^']|'')*')$/.test(value.text)) return [];
  const slip = valueSlip(value, false);
  return slip ? [slip] : [];
}

/** A comment begins with ` #`; a value that begins with `#` was hardly meant as one. */
function withoutComment(text: string): string {
  const sound = /^(?:"(?:[^"\\]|\\.)*"|'(?:[^']|'')*')/.exec(text)?.[0] ?? '';
  return (/^#\s/.test(text) ? '' : sound + text.slice(sound.length).replace(/\s#.*$/, '')).trimEnd();
}

function colonSlip(start: number, end: number, name: string, value: string): Slip {
  const message = 'After the name of a field stand a colon and a space.';
  return slipAt(start, end, message, `Write \`${name}: ${value}\`.`, value === '' ? ':' : ': ', 'A208');
}

function withoutColon(at: number, content: string, name: string, known: ReadonlySet<string>, opens: boolean): Slip[] {
  const end = at + content.trimEnd().length;
  const rest = content.slice(name.length).trim();
  const message = 'A colon is missing: every field is `name: value`.';
  if (rest === '' && opens) return [{ ...slipAt(at + name.length, at + name.length, message, `Write \`${name}:\`.`, ':'), start: at, end }];
  if (known.has(name) && rest !== '') {
    const edits: Edit[] = [{ start: at + name.length, end: at + name.length, text: ':' }];
    return [{ code: 'A201', start: at, end, message, hint: `Write \`${name}: ${rest}\`.`, edits }];
  }
  const hint = 'If it goes on from the line above, indent it with two spaces.';
  return [slipAt(at, end, message, hint, '')];
}

function unopened(at: number, content: string): Slip {
  const edits: Edit[] = [{ start: at, end: at, text: '{ ' }];
  const end = at + content.trimEnd().length;
  return {
    code: 'A201',
    start: end - 1,
    end,
    message: 'A brace is closed here that was not opened.',
    hint: 'Begin the entry with `- {`.',
    edits,
  };
}

function parentheses(at: number, content: string): Slip {
  const close = content.lastIndexOf(')');
  const edits: Edit[] = [{ start: at, end: at + 1, text: '{' }];
  if (close !== -1) edits.push({ start: at + close, end: at + close + 1, text: '}' });
  const message = 'The fields of an entry stand in braces, not in parentheses.';
  return { code: 'A201', start: at, end: at + content.trimEnd().length, message, hint: 'Write `- { name: value, name: value }`.', edits };
}
