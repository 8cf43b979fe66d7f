/** The style sheets, in the order in which they build on one another. */
export const STYLES = [
  'stand-ins',
  'type',
  'page',
  'navigation',
  'tables',
  'columns',
  'pictures',
  'full-size',
  'article',
  'home',
  'lists',
  'letters',
  'drawings',
  'charts',
  'narrow',
  'print',
] as const;

/** All of them in one file: a phone waits for one answer of the network, not for three rounds of them. */
export const ONE_STYLE = 'site';

/** The faces of the record, taken however late they come: loaded where a page is opened from a disk. */
export const FACES_FROM_DISK = 'faces-from-disk';
