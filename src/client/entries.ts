/** Narrows a page of ledger entries to a kind, a subsystem and words. Without this script every row is there. */
import { fragmentIn } from '../site/views/page/fragment.ts';

function begin(form: HTMLFormElement, status: HTMLElement): void {
  const rows = [...document.querySelectorAll<HTMLTableRowElement>('.entries tr[data-on]')];
  const months = [...document.querySelectorAll<HTMLDetailsElement>('details.month')];
  const text = new Map(rows.map((row) => [row, (row.textContent ?? '').toLowerCase()]));
  const kind = new Map(rows.map((row) => [row, row.querySelector('.kind')?.textContent ?? '']));
  const asked = (name: string): string => (form.elements.namedItem(name) as HTMLInputElement | HTMLSelectElement).value.trim();
  const narrow = (): void => {
    const [words, of, on] = [asked('words').toLowerCase().split(/\s+/), asked('kind'), asked('on')];
    const all = of === '' && on === '' && words.join('') === '';
    for (const row of rows) {
      row.hidden =
        (of !== '' && kind.get(row) !== of) ||
        (on !== '' && row.dataset.on !== on) ||
        !words.every((word) => text.get(row)?.includes(word));
    }
    for (const month of months) {
      const holds = rows.some((row) => !row.hidden && month.contains(row));
      month.hidden = !holds;
      if (!all) month.open = holds;
    }
    // Sums are of every row of their month.
    document.body.classList.toggle('narrowed', !all);
    const shown = rows.filter(({ hidden }) => !hidden).length;
    status.textContent = all ? '' : `${shown} of ${rows.length} ${rows.length === 1 ? 'entry' : 'entries'}.`;
  };
  form.addEventListener('input', narrow);
  form.addEventListener('submit', (event) => event.preventDefault());
  // A reader who comes back finds the lists as they were left.
  addEventListener('pageshow', narrow);
}

/** Browsers that do not open a fold themselves when a link leads into it. */
function unfold(): void {
  const to = location.hash === '' ? null : document.getElementById(fragmentIn(location.hash));
  const fold = to?.closest('details');
  if (!to || !fold || fold.open) return;
  fold.open = true;
  to.scrollIntoView();
}

const [asking, told] = [document.querySelector<HTMLFormElement>('#narrow'), document.getElementById('narrowed')];
if (asking && told) begin(asking, told);
addEventListener('hashchange', unfold);
unfold();
