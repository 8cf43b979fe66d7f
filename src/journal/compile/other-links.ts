/** Links in the prose that do not say what they name: a file of the journal, an address, or a slip. */
import { asQuestion, nearest } from '../diagnostics/nearest.ts';
import type { OtherLink } from '../read/prose.ts';
import { decoded, LINK_SCHEMES, linkNamed } from '../values/link.ts';
import { folderOf, inside } from './paths.ts';
import type { NoteAtHand } from './session.ts';

/** Addresses that lead out of the journal. */
const AWAY = /^(?:https?:|mailto:|tel:|\/\/|#)/i;
const SCHEME = /^([a-z][a-z0-9+.-]+):/i;
const KINDS = `A link names ${LINK_SCHEMES.map((scheme) => `\`${scheme}:\``).join(', ')}, a file of the journal, or an address that begins with \`https:\`.`;

/** @param notes the files of all notes */
export function checkOtherLinks(links: readonly OtherLink[], notes: ReadonlySet<string>, context: NoteAtHand): void {
  for (const { url, place } of links) {
    if (AWAY.test(url)) continue;
    const scheme = SCHEME.exec(url)?.[1];
    const close = url.replace(/\s+/g, '');
    if (close !== url && linkNamed(close)) {
      context.out.report('A903', place, `A space keeps \`${url}\` from being a link.`, { hint: `Write \`${close}\`.` });
      context.out.repairs.push({ place, text: close, told: place });
    } else if (scheme !== undefined) context.out.report('A903', place, ...ofScheme(url, scheme));
    else if (!isThere(url, notes, context))
      context.out.report('A903', place, `The link \`${url}\` leads to nothing.`, { hint: hintFor(url, context) });
  }
}

function ofScheme(url: string, scheme: string): [string, { hint: string }] {
  if ((LINK_SCHEMES as readonly string[]).includes(scheme)) {
    return [`The link \`${url}\` names no ${scheme}.`, { hint: `Write which after the colon: \`${scheme}:…\`.` }];
  }
  const near = nearest(scheme, LINK_SCHEMES);
  return [`There is no kind of link \`${scheme}:\`.`, { hint: near === null ? KINDS : asQuestion(near) }];
}

function isThere(url: string, notes: ReadonlySet<string>, { file, assets }: NoteAtHand): boolean {
  const path = inside(folderOf(file), decoded(url.replace(/[?#].*$/, '')));
  return path !== null && path !== '' && (assets.files.has(path) || notes.has(path));
}

function hintFor(url: string, { catalogues, assets, file }: NoteAtHand): string {
  if (catalogues.parts.has(url)) return `Write \`part:${url}\`.`;
  if (/^www\./i.test(url)) return `Write \`https://${url}\`.`;
  const beside = (assets.folders.get(folderOf(file)) ?? []).map((path) => path.slice(path.lastIndexOf('/') + 1));
  const near = nearest(url, beside);
  return near === null ? KINDS : asQuestion(near);
}
