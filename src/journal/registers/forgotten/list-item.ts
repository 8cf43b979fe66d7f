/** A text as it may stand in a list or between braces in front matter: within quotation marks where it must. */
export const listItem = (text: string): string => (/^[\p{L}\p{N}][^,:#[\]{}"]*$/u.test(text) ? text : JSON.stringify(text));
