/**
 * Links of the prose that name a thing by what it is: `part:front-drum`, `bag:14`. Nothing else reads them, so that
 * what a check follows is what a page links to.
 */
export const LINK_SCHEMES = ['part', 'bag', 'item', 'session', 'consumable'] as const;

export type LinkScheme = (typeof LINK_SCHEMES)[number];

/** What a link names. */
export interface LinkName {
  readonly scheme: LinkScheme;
  /** Of a bag, its number without zeros before it. */
  readonly id: string;
}

/**
 * @param address of a link, its marks encoded (`part:front%2Ddrum`) or not
 * @returns null for an address of any other kind, and for one that names nothing
 */
export function linkNamed(address: string): LinkName | null {
  const [, word, rest = ''] = /^([a-z]+):(\S+)$/.exec(address) ?? [];
  const scheme = LINK_SCHEMES.find((each) => each === word);
  if (scheme === undefined) return null;
  const id = decoded(rest);
  return { scheme, id: scheme === 'bag' ? id.replace(/^0+(?=\d+$)/, '') : id };
}

/** A link as it is written where nothing is encoded. */
export function linkText({ scheme, id }: LinkName): string {
  return `${scheme}:${id}`;
}

/** Undoes percent-encoding; text that is not well encoded stays as it is. */
export function decoded(text: string): string {
  try {
    return decodeURIComponent(text);
  } catch {
    return text;
  }
}
