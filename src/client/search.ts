/** The search page: builds its index from the documents script and lists what it finds as one types. */
import MiniSearch, { type SearchResult } from 'minisearch';
import { excerpt } from '../site/views/excerpt.ts';
import type { SearchDocument } from '../site/views/search-documents.ts';

declare global {
  var asfoundDocuments: SearchDocument[] | undefined;
}

const MOST = 100;
/** Before the words asked for, in the fragment of the address. */
const ASKED = '#q=';
const byId = <T extends HTMLElement>(id: string): T => document.getElementById(id) as T;

/** A mark is typed as it is found: `C 4417`, `c4417` and `4417` lead to the same part. */
const words = (text: string): string[] => text.split(/[^\p{L}\p{N}]+/u).filter((word) => word !== '');

function begin(documents: readonly SearchDocument[]): void {
  const index = new MiniSearch<SearchDocument & { id: number }>({
    fields: ['t', 'x'],
    tokenize: words,
    searchOptions: {
      boost: { t: 3 },
      prefix: (term) => term.length > 1,
      fuzzy: (term) => (term.length > 5 ? 0.15 : false),
      combineWith: 'AND',
    },
  });
  index.addAll(documents.map((one, id) => ({ ...one, id })));
  const [form, query, kind, subsystem] = [
    byId<HTMLFormElement>('search'),
    byId<HTMLInputElement>('query'),
    byId<HTMLSelectElement>('kind'),
    byId<HTMLSelectElement>('subsystem'),
  ];
  const show = (): void => {
    const asked = query.value.trim();
    const wanted = ({ id }: SearchResult): boolean => {
      const one = documents[id];
      return (kind.value === '' || one?.k === kind.value) && (subsystem.value === '' || one?.s === subsystem.value);
    };
    const found = asked === '' ? [] : index.search(asked, { filter: wanted });
    list(
      found.slice(0, MOST).flatMap(({ id }) => documents[id] ?? []),
      words(asked),
    );
    byId('found').textContent = asked === '' ? '' : countWords(found.length);
    remember(asked);
  };
  query.value = location.hash.startsWith(ASKED) ? decodeURIComponent(location.hash.slice(ASKED.length)) : '';
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
  history.replaceState(null, '', `${ASKED}${encodeURIComponent(asked)}`);
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
  text.textContent = excerpt(one.x, asked, 180);
  item.append(link, facts, text);
  return item;
}

if (globalThis.asfoundDocuments) begin(globalThis.asfoundDocuments);
