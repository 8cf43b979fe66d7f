import type { Options } from 'rehype-sanitize';
import { LINK_SCHEMES } from '../journal/values/link.ts';

/** Stands before every id that a note gives. */
export const ID_PREFIX = 'note-';

const LABELS = ['ariaDescribedBy', 'ariaLabel', 'ariaLabelledBy'];

/**
 * What a note may put on its page. What Markdown itself makes, and of raw HTML the elements that carry
 * prose; no script, style, form, frame or event, no class but those that our stages look for, and no
 * address but the web's and ours.
 */
export const SAFE_HTML: Options = {
  tagNames: [
    ...['p', 'br', 'hr', 'blockquote', 'pre', 'code', 'h1', 'h2', 'h3', 'h4', 'h5', 'h6', 'section', 'div', 'span'],
    ...['em', 'strong', 'b', 'i', 's', 'del', 'ins', 'u', 'mark', 'small', 'sub', 'sup', 'kbd', 'samp', 'var', 'q', 'cite', 'abbr', 'time'],
    ...['ul', 'ol', 'li', 'dl', 'dt', 'dd', 'details', 'summary', 'a', 'img', 'input'],
    ...['table', 'caption', 'thead', 'tbody', 'tfoot', 'tr', 'th', 'td'],
  ],
  attributes: {
    a: [...LABELS, 'href', 'dataFootnoteBackref', 'dataFootnoteRef', ['className', 'data-footnote-backref']],
    code: [['className', /^language-./]],
    h2: [['className', 'sr-only']],
    img: ['src', 'alt', 'width', 'height'],
    input: [['type', 'checkbox'], ['disabled', true], 'checked'],
    li: [['className', 'task-list-item'], 'value'],
    ol: ['start', 'reversed', ['className', 'contains-task-list']],
    ul: [['className', 'contains-task-list']],
    section: ['dataFootnotes', ['className', 'footnotes']],
    td: ['align', 'colSpan', 'rowSpan', 'headers'],
    th: ['align', 'colSpan', 'rowSpan', 'headers', 'scope', 'abbr'],
    time: ['dateTime'],
    details: ['open'],
    '*': ['title', 'id', 'lang', 'dir'],
  },
  ancestors: {
    ...Object.fromEntries(['caption', 'thead', 'tbody', 'tfoot', 'tr', 'th', 'td'].map((name) => [name, ['table']])),
    li: ['ul', 'ol'],
    summary: ['details'],
  },
  clobber: ['id', 'ariaDescribedBy', 'ariaLabelledBy'],
  clobberPrefix: ID_PREFIX,
  protocols: {
    href: ['http', 'https', 'mailto', 'HTTP', 'HTTPS', 'MAILTO', 'tel', ...LINK_SCHEMES],
    src: ['http', 'https'],
  },
  required: { input: { type: 'checkbox', disabled: true } },
  strip: ['script', 'style', 'template', 'iframe', 'object', 'svg', 'math'],
};
