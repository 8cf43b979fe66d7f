import { remark } from 'remark';
import remarkGfm from 'remark-gfm';

/**
 * A processor that reads the prose of a note: CommonMark with GitHub's tables, strikethrough, footnotes, task lists
 * and bare addresses. A single tilde is no strikethrough ("about ~5 mm"). What is checked and what is shown begin here.
 */
export const noteMarkdown = () => remark().use(remarkGfm, { singleTilde: false });
