/** The page of any day: sets the record as it stood on the day that is asked for. */
import { recordCarried } from '../site/views/any-day/carried-journal.ts';
import { type DayShown, daySetter } from '../site/views/any-day/day-shown.ts';
import type { Packed } from '../site/views/any-day/pack.ts';

declare global {
  var asfoundJournal: Packed | undefined;
}

const byId = <T extends HTMLElement>(id: string): T => document.getElementById(id) as T;

/** Replays the journal on the first day that is asked for: whoever only passes by waits for nothing. */
function setterOf(journal: Packed): (day: string) => DayShown {
  let set: ((day: string) => DayShown) | null = null;
  return (day) => {
    set ??= daySetter(recordCarried(journal));
    return set(day);
  };
}

function begin(journal: Packed): void {
  const [form, input, said, shown] = [byId<HTMLFormElement>('any-day'), byId<HTMLInputElement>('day'), byId('said'), byId('shown')];
  const set = setterOf(journal);
  const show = (): void => {
    const asked = input.value !== '' && input.checkValidity();
    const { title, markup } = asked ? set(input.value) : { title: '', markup: '' };
    shown.innerHTML = markup;
    const heading = document.querySelector('h1');
    if (heading && asked) heading.textContent = title;
    said.textContent = asked ? '' : input.validationMessage;
    if (asked) history.replaceState(null, '', `#${input.value}`);
  };
  /** A day in the address is asked for: a link to a day can be passed on. */
  const fromAddress = (): void => {
    const day = location.hash.slice(1);
    if (!/^\d{4}-\d{2}-\d{2}$/.test(day) || day === input.value) return;
    input.value = day;
    show();
  };
  // The address keeps the day, so a way to a place on the page is gone without it.
  shown.addEventListener('click', (event) => {
    const to = (event.target as Element).closest('a[href^="#"]')?.getAttribute('href')?.slice(1);
    const place = to === undefined ? null : document.getElementById(to);
    if (place === null) return;
    event.preventDefault();
    place.tabIndex = -1;
    place.focus();
    place.scrollIntoView();
  });
  form.addEventListener('input', show);
  form.addEventListener('submit', (event) => event.preventDefault());
  addEventListener('hashchange', fromAddress);
  form.hidden = false;
  byId('without-script').hidden = true;
  fromAddress();
}

if (globalThis.asfoundJournal) begin(globalThis.asfoundJournal);
