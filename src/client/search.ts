/** The search page: lists what the documents script holds of what one types. */
import { excerpt } from '../site/views/page/excerpt.ts';
import { fragmentIn } from '../site/views/page/fragment.ts';
import { finderOf, wordsOf } from '../site/views/search/finder.ts';
import type { SearchDocument } from '../site/views/search/search-documents.ts';

declare global {
  var asfoundDocuments: SearchDocument[] | undefined;
}

const MOST = 100;
/** Before the words asked for, in the fragment of the address. */
const ASKED = 'q=';
const byId = <T extends HTMLElement>(id: string): T => document.getElementById(id) as T;

function begin(documents: readonly SearchDocument[]): void {
  const find = finderOf(documents);
  const [form, query, kind, subsystem] = [
    byId<HTMLFormElement>('search'),
    byId<HTMLInputElement>('query'),
    byId<HTMLSelectElement>('kind'),
    byId<HTMLSelectElement>('subsystem'),
  ];
  const show = (): void => {
    const asked = query.value.trim();
    const found = asked === '' ? [] : find(asked, { kind: kind.value, subsystem: subsystem.value });
    list(found.slice(0, MOST), wordsOf(asked));
    byId('found').textContent = asked === '' ? '' : countWords(found.length);
    remember(asked);
  };
  const asked = fragmentIn(location.hash);
  query.value = asked.startsWith(ASKED) ? asked.slice(ASKED.length) : '';
  form.addEventListener('input', show);
  form.addEventListener('submit', (event) => event.preventDefault());
  form.hidden = false;
  byId('without-script').hidden = true;
  show();
  query.focus();
}

function countWords(found: number): string {
  if (found === 0) return 'Nothing found. Fewer words, or the beginning of a word, may find it.';
  return found > MOST ? `${found} found, the nearest ${MOST} shown.` : `${found} found.`;
}

/** The words asked for stay in the address, so that a result can be left and come back to. */
function remember(asked: string): void {
  history.replaceState(null, '', `#${ASKED}${encodeURIComponent(asked)}`);
}

function list(found: readonly SearchDocument[], asked: readonly string[]): void {
  byId('results').replaceChildren(...found.map((one) => entry(one, asked)));
}

function entry(one: SearchDocument, asked: readonly string[]): HTMLLIElement {
  const item = document.createElement('li');
  const link = document.createElement('a');
  link.href = one.h;
  link.textContent = one.t;
  const facts = document.createElement('span');
  facts.className = 'note';
  facts.textContent = ` ${[one.k, one.d].filter((text) => text !== '').join(', ')}`;
  const text = document.createElement('p');
  text.className = 'small';
  text.textContent = excerpt(one.m ? `Marks: ${one.m}. ${one.x}` : one.x, asked, 180);
  item.append(link, facts, text);
  return item;
}

if (globalThis.asfoundDocuments) begin(globalThis.asfoundDocuments);
