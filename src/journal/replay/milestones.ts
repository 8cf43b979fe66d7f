import { type Diagnostic, diagnostic, type Related } from '../diagnostics/diagnostic.ts';
import type { ItemId, ItemKind, Milestone, MilestoneId, Place, Session } from '../model.ts';
import type { ItemHistory, MilestoneReached } from '../record.ts';
import type { Items } from './items.ts';

type Reaching = Session['reached'][number];

/** Milestones as they are reached, and the gates before them. */
export class Milestones {
  readonly history = new Map<MilestoneId, MilestoneReached>();
  readonly #reachedAt = new Map<MilestoneId, Place>();
  readonly #declared: ReadonlyMap<MilestoneId, Milestone>;
  readonly #items: Items;
  /** Items that have kept a gate shut. That is told once, and after it the note is believed. */
  readonly #told = new Set<ItemId>();
  /** Milestones that a later one was reached before. */
  readonly #overlooked = new Set<MilestoneId>();

  constructor(milestones: readonly Milestone[], items: Items) {
    this.#declared = new Map(milestones.map((milestone) => [milestone.id, milestone]));
    this.#items = items;
  }

  /**
   * Says what stands against items that a session opens or puts off: none can be due before a milestone that an
   * earlier session reached. Such an item then holds no gate: that it is open has been told.
   */
  tooLate(session: Session): Diagnostic[] {
    const opened = session.opens.map(({ id, kind, before, place }) => ({ id, kind, due: before, place, word: 'opened' }));
    const deferred = session.defers.map(({ id, to, place }) => ({ id, kind: null, due: to, place, word: 'put off' }));
    return [...opened, ...deferred].flatMap(({ id, kind, due, place, word }) => {
      const passed = due === null ? undefined : this.history.get(due);
      if (!passed) return [];
      this.#told.add(id);
      const message = `\`${id}\` cannot be ${word} to be done before \`${due}\`: that was reached in session ${passed.session}.`;
      const at = this.#reachedAt.get(passed.milestone);
      const related = at ? [{ place: at, message: `\`${due}\` was reached here.` }] : [];
      return [diagnostic('A617', place, message, { hint: this.#laterThan(word === 'opened' ? 'before' : 'to', kind), related })];
    });
  }

  /** What to write instead: the first milestone still to come. */
  #laterThan(field: string, kind: ItemKind | null): string {
    const next = [...this.#declared.values()].find(({ id }) => !this.history.has(id));
    if (next) return `Say \`${field}: ${next.id}\`, which is still to come.`;
    if (field === 'to') return 'Take the entry out: no milestone is still to come.';
    return kind === 'temporary' ? 'No milestone is still to come: say `kind: task` and leave `before` out.' : 'Leave `before` out.';
  }

  /**
   * Reaches what a session says, after its items were opened, deferred and closed. A milestone whose gate is held is
   * reached all the same, with what is told; one that was reached before is not reached again. Owning up holds for
   * this milestone alone. Of `with-open` only what was open and due is kept.
   */
  apply(session: Session): Diagnostic[] {
    return session.reached.flatMap((reaching) => {
      const twice = this.#twice(reaching);
      if (twice) return [twice];
      const holding = this.#holding(reaching.milestone);
      const held = this.#held(reaching, holding);
      this.#reach(session, reaching, holding);
      return [...held, ...this.#idleAdmissions(reaching, holding), ...this.#overtaken(reaching)];
    });
  }

  #reach(session: Session, { milestone, withOpen, because, place }: Reaching, holding: readonly ItemHistory[]): void {
    const admitted = withOpen.map((id) => this.#items.meant(id)).filter((id) => holding.some((item) => item.id === id));
    this.history.set(milestone, { milestone, session: session.id, date: session.date, withOpen: admitted, because });
    this.#reachedAt.set(milestone, place);
  }

  #twice({ milestone, place }: Reaching): Diagnostic | null {
    const before = this.history.get(milestone);
    const at = this.#reachedAt.get(milestone);
    if (!before || !at) return null;
    const message = `\`${milestone}\` was reached before, in session ${before.session}.`;
    return diagnostic('A612', place, message, {
      hint: 'Take this entry out.',
      related: [{ place: at, message: `\`${milestone}\` was reached here.` }],
    });
  }

  /** Open items due before this milestone or an earlier one. */
  #holding(milestone: MilestoneId): readonly ItemHistory[] {
    const order = (id: MilestoneId | null) => (id === null ? undefined : this.#declared.get(id)?.order);
    const gate = order(milestone) ?? -1;
    return [...this.#items.history.values()].filter((item) => {
      const due = order(this.#items.due(item));
      return item.closed === null && due !== undefined && due <= gate;
    });
  }

  /** What keeps the gate shut: items not owned up to, or an admission without its reason. */
  #held({ milestone, withOpen, because, place }: Reaching, holding: readonly ItemHistory[]): Diagnostic[] {
    const owned = withOpen.map((id) => this.#items.meant(id));
    const silent = holding.filter(({ id }) => !this.#told.has(id) && !owned.includes(id));
    for (const { id } of silent) this.#told.add(id);
    const shut = silent.length === 0 ? [] : [gateShut(milestone, withOpen, silent, place)];
    if (withOpen.length === 0 || because !== null) return shut;
    return [...shut, diagnostic('A613', place, '`with-open` is an admission and needs its reason.', { hint: 'Add it: `because: …`.' })];
  }

  #idleAdmissions({ milestone, withOpen, place }: Reaching, holding: readonly ItemHistory[]): Diagnostic[] {
    const idle = withOpen.filter((id) => !this.#told.has(id) && !holding.some((item) => item.id === this.#items.meant(id)));
    return idle.flatMap((id) => {
      const message = `\`${id}\` is not open, or not due before \`${milestone}\`.`;
      if (this.#items.isDoubted(id)) return [];
      return [this.#items.unknown(id, place) ?? diagnostic('A614', place, message, { hint: `Take \`${id}\` out of \`with-open\`.` })];
    });
  }

  #overtaken({ milestone, place }: Reaching): Diagnostic[] {
    const order = this.#declared.get(milestone)?.order ?? 0;
    const missed = [...this.#declared.values()].filter(
      (one) => one.order < order && !this.history.has(one.id) && !this.#overlooked.has(one.id),
    );
    for (const { id } of missed) this.#overlooked.add(id);
    if (missed.length === 0) return [];
    const message = `\`${milestone}\` is reached, and ${quotedList(missed.map(({ id }) => id))} before it ${missed.length === 1 ? 'is' : 'are'} not.`;
    return [
      diagnostic('A616', place, message, {
        hint: `Record first what was reached: \`- { milestone: ${missed[0]?.id} }\`; or change the order in journal.yaml.`,
      }),
    ];
  }
}

function gateShut(milestone: MilestoneId, withOpen: readonly string[], silent: readonly ItemHistory[], place: Place): Diagnostic {
  const ids = silent.map(({ id }) => id);
  const message = `\`${milestone}\` cannot be reached: ${quotedList(ids)} ${ids.length === 1 ? 'is' : 'are'} open before it.`;
  const all = [...withOpen, ...ids].join(', ');
  const hint = `Close or defer them, or own up: \`{ milestone: ${milestone}, with-open: [${all}], because: … }\`.`;
  return diagnostic('A611', place, message, { hint, related: silent.map(openedHere) });
}

function openedHere({ id, opening }: ItemHistory): Related {
  return { place: opening.place, message: `\`${id}\` was opened here: ${opening.what}` };
}

function quotedList(ids: readonly string[]): string {
  return ids.map((id) => `\`${id}\``).join(', ');
}
