/** Links and anchors of a page as written. The pages are well formed (a validator sees to that), so patterns are enough. */
export interface Markup {
  /** Every address in `href`, `src` and `srcset`, decoded from HTML. */
  readonly links: readonly string[];
  readonly ids: ReadonlySet<string>;
  /** Attributes and elements that the content security policy forbids. */
  readonly forbidden: readonly string[];
}

export function readMarkup(html: string): Markup {
  const links = [...html.matchAll(/\s(?:href|src|poster)="([^"]*)"/g)].map((found) => found[1] ?? '');
  const sets = [...html.matchAll(/\ssrcset="([^"]*)"/g)].flatMap((found) =>
    (found[1] ?? '').split(', ').map((one) => one.split(' ')[0] ?? ''),
  );
  const ids = [...html.matchAll(/\sid="([^"]*)"/g)].map((found) => decoded(found[1] ?? ''));
  const forbidden = [
    ...[...html.matchAll(/<script(?![^>]*\ssrc=)[^>]*>/g)].map(([text]) => text),
    ...[...html.matchAll(/<[a-z][^>]*\s(?:style|on[a-z]+)="/g)].map(([text]) => text),
    ...[...html.matchAll(/<style[^>]*>/g)].map(([text]) => text),
  ];
  return { links: [...links, ...sets].map(decoded), ids: new Set(ids), forbidden };
}

/** A link as written: where it leads, and the key that it is reached by. */
export interface Anchor {
  readonly href: string;
  readonly key: string;
}

/** Every link of a page; an attribute that one has not is empty. */
export function readAnchors(html: string): Anchor[] {
  const written = (attributes: string, name: string): string => {
    const [, value = ''] = new RegExp(`\\s${name}="([^"]*)"`).exec(attributes) ?? [];
    return decoded(value);
  };
  return [...html.matchAll(/<a(\s(?:[^">]|"[^"]*")*)>/g)].map(([, attributes = '']) => ({
    href: written(attributes, 'href'),
    key: written(attributes, 'accesskey'),
  }));
}

function decoded(text: string): string {
  return text
    .replaceAll('&quot;', '"')
    .replaceAll('&#39;', "'")
    .replaceAll('&lt;', '<')
    .replaceAll('&gt;', '>')
    .replaceAll(/&(?:amp|#38);/g, '&');
}
