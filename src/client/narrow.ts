/** Narrows the register to an outcome, an origin and a subsystem. Without this script every row is there. */
import { BETWEEN_ORIGINS } from '../site/views/register/between-origins.ts';

function begin(form: HTMLFormElement, status: HTMLElement): void {
  const rows = [...document.querySelectorAll<HTMLTableRowElement>('.register tr[data-outcome]')];
  const groups = [...document.querySelectorAll<HTMLTableSectionElement>('.register tbody')];
  const asked = (name: string): string => (form.elements.namedItem(name) as HTMLSelectElement).value;
  const narrow = (): void => {
    const [outcome, origin, subsystem] = [asked('outcome'), asked('origin'), asked('subsystem')];
    const holds = ({ dataset, parentElement }: HTMLTableRowElement): boolean =>
      (outcome === '' || dataset.outcome === outcome) &&
      (origin === '' || (dataset.origin ?? '').split(BETWEEN_ORIGINS).includes(origin)) &&
      (subsystem === '' || parentElement?.id === subsystem);
    for (const row of rows) row.hidden = !holds(row);
    for (const group of groups) group.hidden = !rows.some((row) => row.parentElement === group && !row.hidden);
    const shown = rows.filter(({ hidden }) => !hidden).length;
    status.textContent = shown === rows.length ? '' : `${shown} of ${rows.length} ${rows.length === 1 ? 'position' : 'positions'}.`;
  };
  form.addEventListener('input', narrow);
  form.addEventListener('submit', (event) => event.preventDefault());
  // A reader who comes back finds the lists as they were left.
  addEventListener('pageshow', narrow);
}

const [form, status] = [document.querySelector<HTMLFormElement>('#narrow'), document.getElementById('narrowed')];
if (form && status) begin(form, status);
