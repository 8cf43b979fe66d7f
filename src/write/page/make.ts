/** Elements, made in one call. Text is only ever text: nothing that is written becomes markup. */

type Attributes = Readonly<Record<string, string | boolean | null>>;

export function make<K extends keyof HTMLElementTagNameMap>(
  tag: K,
  attributes: Attributes = {},
  ...inside: readonly (Node | string)[]
): HTMLElementTagNameMap[K] {
  const element = document.createElement(tag);
  for (const [name, value] of Object.entries(attributes)) {
    if (value === true) element.setAttribute(name, '');
    else if (typeof value === 'string') element.setAttribute(name, value);
  }
  element.append(...inside);
  return element;
}

export function button(words: string, act: (event: MouseEvent) => void, attributes: Attributes = {}): HTMLButtonElement {
  const element = make('button', { type: 'button', ...attributes }, words);
  element.addEventListener('click', act);
  return element;
}

let made = 0;

/** An id that no other element of the page has. */
export function newId(): string {
  made += 1;
  return `f${made}`;
}

/** The name of a field as a label: `goes-back` is `Goes back`. */
export function labelOf(name: string): string {
  const words = name.replaceAll('-', ' ');
  return words.charAt(0).toUpperCase() + words.slice(1);
}
