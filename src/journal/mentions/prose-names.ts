/** Names in the prose of a note: the links that lead to what they name. */
import { readProse } from '../read/prose.ts';
import type { SourceText } from '../read/source/text.ts';
import type { Span } from '../read/source/tree.ts';
import { LINK_SCHEMES, linkNamed } from '../values/link.ts';
import type { WrittenName } from './written-name.ts';

const SCHEMES = LINK_SCHEMES.join('|');
/** The address of an inline link, of one between angle brackets, and of one written as HTML. */
const ADDRESS = new RegExp(`(?:\\]\\(\\s*<?|^<|href\\s*=\\s*["']?)((?:${SCHEMES}):[^\\s)>"']+)`, 'g');
/** The address under the name of a link: \`[drum]: part:front-drum\`. */
const DEFINITION = new RegExp(`^[ \\t>]*\\[[^\\]\\n]+\\]:[ \\t]*<?((?:${SCHEMES}):[^\\s>]+)`, 'gm');

/** @param start where the prose begins in the text, and `end` where it ends */
export function namesInProse(source: SourceText, [start, end]: Span): WrittenName[] {
  const { links } = readProse(source, start, end);
  const definitions = addressesIn(source, [start, end], DEFINITION);
  return links.flatMap(({ scheme, id, place }) => {
    const span = [source.offset(place.line, place.column), source.offset(place.endLine, place.endColumn)] as const;
    const isMeant = ({ name, sorts }: WrittenName) => name === id && sorts.includes(scheme);
    const here = addressesIn(source, span, ADDRESS).filter(isMeant);
    return here.length > 0 ? here : definitions.filter(isMeant);
  });
}

function addressesIn(source: SourceText, [start, end]: Span, pattern: RegExp): WrittenName[] {
  return [...source.text.slice(start, end).matchAll(pattern)].flatMap((match) => {
    const [all, address = ''] = match;
    const named = linkNamed(address);
    if (named === null) return [];
    const until = start + match.index + all.length;
    const from = until - (address.length - named.scheme.length - 1);
    const place = source.place(from, until);
    return [{ sorts: [named.scheme], name: named.id, brings: false, place, around: 'address' as const }];
  });
}
