/** Links in the prose that do not say what they name: a file of the journal, an address, or a slip. */
import { unknownName } from '../diagnostics/diagnostic.ts';
import { asQuestion, nearest } from '../diagnostics/nearest.ts';
import type { Place } from '../model.ts';
import type { OtherLink } from '../read/prose.ts';
import { decoded, LINK_SCHEMES, linkNamed, linkText } from '../values/link.ts';
import type { Linkable } from './linkable.ts';
import { folderOf, inside } from './paths.ts';
import type { NoteAtHand } from './session.ts';

/** Addresses that lead out of the journal. */
const AWAY = /^(?:https?:|mailto:|tel:|\/\/|#)/i;
const SCHEME = /^([a-z][a-z0-9+.-]+):/i;
const KINDS = `A link names ${LINK_SCHEMES.map((scheme) => `\`${scheme}:\``).join(', ')}, a file of the journal, or an address that begins with \`https:\`.`;

export function checkOtherLinks(links: readonly OtherLink[], linkable: Linkable, context: NoteAtHand): void {
  for (const { url, place } of links) {
    if (AWAY.test(url)) continue;
    const scheme = SCHEME.exec(url)?.[1];
    if (/\s/.test(url) && linkNamed(url.replace(/\s+/g, ''))) checkSpaced(url, place, linkable, context);
    else if (scheme !== undefined) context.out.report('A903', place, ...ofScheme(url, scheme));
    else if (!isThere(url, linkable.files, context))
      context.out.report('A903', place, `The link \`${url}\` leads to nothing.`, { hint: hintFor(url, context) });
  }
}

/** A space is one too many, or stands for a hyphen: whichever of the two names something that is there was meant. */
function checkSpaced(url: string, place: Place, linkable: Linkable, { out }: NoteAtHand): void {
  const meant = [
    url.replace(/\s+/g, ''),
    url
      .replace(/\s*:\s*/, ':')
      .trim()
      .replace(/\s+/g, '-'),
  ].flatMap((each) => linkNamed(each) ?? []);
  const found = meant.find(({ scheme, id }) => linkable.has(scheme, id));
  const message = `A space keeps \`${url}\` from being a link.`;
  if (found) {
    out.report('A903', place, message, { hint: `Write \`${linkText(found)}\`.` });
    out.repairs.push({ place, text: linkText(found), told: place });
    return;
  }
  for (const { scheme, id } of meant.slice(-1)) out.report('A903', place, message, unknownName(scheme, id, linkable.names(scheme)));
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
