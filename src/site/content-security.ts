/**
 * The content security policy of every page. No inline script, no style attribute, nothing from elsewhere.
 *
 * `file:` stands beside 'self' because some browsers do not count a file on disk as 'self'; on the web it
 * allows nothing. While a page is being written, the server of Astro pushes changes over a socket and shows
 * mistakes in a box with a style of its own; only then are these two allowed.
 *
 * @param developing whether the page is served by `dev`
 */
export function contentSecurityPolicy(developing: boolean): string {
  const own = "'self' file:";
  return [
    "default-src 'none'",
    `script-src ${own}`,
    `style-src ${own}${developing ? " 'unsafe-inline'" : ''}`,
    `font-src ${own}`,
    `img-src ${own} data:`,
    `media-src ${own}`,
    ...(developing ? ["connect-src 'self' ws:"] : []),
    "base-uri 'none'",
    "form-action 'self'",
  ].join('; ');
}
