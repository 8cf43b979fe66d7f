import { type Diagnostic, diagnostic } from '../diagnostics/diagnostic.ts';
import type { Decision, Journal, PartId, PositionId, Session } from '../model.ts';
import { keptIn } from '../values/once.ts';
import type { State } from './state.ts';

/** Decisions by position, oldest first; those that cannot be are left out and reported. */
export class Decisions {
  readonly history = new Map<PositionId, Decision[]>();
  /** On parts that had never stood anywhere: they say nothing of the place, and overturn nothing that was decided on it. */
  readonly aside: Decision[] = [];
  readonly #journal: Journal;
  readonly #state: State;

  /** @param state as the entries of a session left it, when its decisions are applied */
  constructor(journal: Journal, state: State) {
    this.#journal = journal;
    this.#state = state;
  }

  apply(session: Session): Diagnostic[] {
    return session.decisions.flatMap((decision) => {
      const problem = this.#problem(decision);
      if (problem) return [problem];
      if (this.#isAside(decision)) this.aside.push(decision);
      else keptIn(this.history, decision.position, () => []).push(decision);
      return decision.because === null ? [reasonless(decision)] : [];
    });
  }

  #isAside({ part, position, verdict }: Decision): boolean {
    return part !== position && verdict !== 'replace' && !this.#state.hasStood(part);
  }

  #isNumbered(part: PartId): boolean {
    return (this.#journal.parts.get(part)?.numbered ?? null) !== null;
  }

  #problem(decision: Decision): Diagnostic | null {
    const { verdict, with: other, count, position, place } = decision;
    if (other !== null && verdict !== 'replace') {
      const message = `\`with: ${other}\` goes with the verdict \`replace\`, and the verdict here is \`${verdict}\`.`;
      return diagnostic('A702', place, message, { hint: 'Say `verdict: replace`, or leave `with` out.' });
    }
    const takes = this.#journal.positions.get(position);
    if (!takes) return null;
    if (count < takes.count && decision.which === null && this.#isNumbered(decision.part)) return choiceLeft(decision, takes.count);
    if (count <= takes.count) return null;
    const message = `The decision speaks of ${count}, and \`${position}\` takes ${takes.count}.`;
    const related = this.#journal.parts.get(position)?.place;
    return diagnostic('A703', place, message, {
      hint: `Say \`count: ${takes.count}\`, or correct the count of \`${position}\` in the catalogue.`,
      related: related ? [{ place: related, message: `\`${position}\` has its count here.` }] : [],
    });
  }
}

function choiceLeft({ part, count, place }: Decision, of: number): Diagnostic {
  const message = `The decision speaks of ${count} of \`${part}\`, and does not say which of ${of}.`;
  return diagnostic('A517', place, message, {
    hint: `Say which: \`which: [${Array.from({ length: count }, (_, n) => n + 1).join(', ')}]\`, or others of them.`,
  });
}

function reasonless({ verdict, part, place }: Decision): Diagnostic {
  return diagnostic('A704', place, `The decision to ${verdict} \`${part}\` has no reason.`, {
    hint: 'Add the reason to the entry: `because: …`.',
  });
}
