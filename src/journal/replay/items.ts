import { type Diagnostic, diagnostic, unknownName } from '../diagnostics/diagnostic.ts';
import { asQuestion, likeliest } from '../diagnostics/nearest.ts';
import type { ItemId, ItemOpening, MilestoneId, Place, Session } from '../model.ts';
import type { ItemHistory } from '../record.ts';

/** Open items as they are opened, deferred and closed while sessions are replayed. */
export class Items {
  readonly history = new Map<ItemId, ItemHistory>();
  readonly #closedAt = new Map<ItemId, Place>();
  /** Ids that no note opens, each with the one it was taken for. */
  readonly #meant = new Map<ItemId, ItemId>();
  readonly #doubted = new Set<ItemId>();
  /** The first opening of each item in the whole journal, to say "only later". */
  readonly #ever = new Map<ItemId, { session: Session; opening: ItemOpening }>();

  constructor(sessions: readonly Session[]) {
    for (const session of sessions) {
      for (const opening of session.opens) {
        if (!this.#ever.has(opening.id)) this.#ever.set(opening.id, { session, opening });
      }
    }
  }

  /** Opens, defers and closes what a session says, in this order. */
  apply(session: Session): Diagnostic[] {
    return [...this.#open(session), ...this.#defer(session), ...this.#close(session)];
  }

  /** The milestone an item is due before, deferrals counted; null when it names none. */
  due(item: ItemHistory): MilestoneId | null {
    return item.deferred.at(-1)?.to ?? item.opening.before;
  }

  #open(session: Session): Diagnostic[] {
    const { id: of, date } = session;
    return session.opens.flatMap((opening) => {
      const before = this.history.get(opening.id);
      if (before) return [openedTwice(opening, before)];
      this.history.set(opening.id, { id: opening.id, opening, opened: { session: of, date }, deferred: [], closed: null });
      if (opening.kind !== 'temporary' || opening.before !== null || opening.beforeUnknown) return [];
      const message = `The temporary measure \`${opening.id}\` does not say when it must be undone.`;
      return [diagnostic('A615', opening.place, message, { hint: 'Add `before:` and a milestone.' })];
    });
  }

  #defer(session: Session): Diagnostic[] {
    const { id: of, date } = session;
    return session.defers.flatMap(({ id, to, because, place }) => {
      const problem = this.#notOpen(id, 'deferred', place);
      const item = this.history.get(this.meant(id));
      if (item && !item.closed) {
        const deferral = { session: of, date, from: this.due(item), to, because };
        this.history.set(item.id, { ...item, deferred: [...item.deferred, deferral] });
      }
      return problem ? [problem] : [];
    });
  }

  #close(session: Session): Diagnostic[] {
    const { id: of, date } = session;
    return session.closes.flatMap(({ id, how, place }) => {
      const problem = this.#notOpen(id, 'closed', place);
      const item = this.history.get(this.meant(id));
      if (item && !item.closed) {
        this.history.set(item.id, { ...item, closed: { session: of, date, how } });
        this.#closedAt.set(item.id, place);
      }
      return problem ? [problem] : [];
    });
  }

  /** Why an item cannot be closed or put off; told once of each item. */
  #notOpen(written: ItemId, word: 'deferred' | 'closed', place: Place): Diagnostic | null {
    const id = this.meant(written);
    const item = this.history.get(id);
    const problem = item?.closed
      ? this.#closedBefore(item, word, place)
      : item
        ? null
        : (this.unknown(written, place) ?? this.#onlyLater(id, word, place));
    if (written !== id || this.#doubted.has(id)) return null;
    if (problem) this.#doubted.add(this.meant(written));
    return problem;
  }

  /** The id that was meant by one that no note opens and that has been told. */
  meant(id: ItemId): ItemId {
    return this.#meant.get(id) ?? id;
  }

  /** Something was told of the item: what is found of it after that only echoes it. */
  isDoubted(id: ItemId): boolean {
    return this.#doubted.has(this.meant(id));
  }

  #closedBefore({ id, closed }: ItemHistory, word: string, place: Place): Diagnostic {
    const at = this.#closedAt.get(id);
    const related = at ? [{ place: at, message: `\`${id}\` was closed here.` }] : [];
    const message = `\`${id}\` cannot be ${word}: it was closed in session ${closed?.session}.`;
    return diagnostic('A609', place, message, { hint: 'Take this entry out, or open an item anew with an id of its own.', related });
  }

  /** Null when some note opens the item. After that the id is taken for the nearest that is known. */
  unknown(id: ItemId, place: Place): Diagnostic | null {
    if (this.#ever.has(id)) return null;
    const more = unknownName('item', id, this.#ever.keys());
    this.#meant.set(id, more.unknown.nearest ?? id);
    const near = likeliest(id, [...this.#ever.keys()]);
    const hint = near === null ? `Open it first, under \`opens\`: \`- { id: ${id}, kind: task, what: … }\`.` : asQuestion(near);
    return diagnostic('A610', place, `No note opens an item \`${id}\`.`, { ...more, hint });
  }

  #onlyLater(id: ItemId, word: string, place: Place): Diagnostic {
    const later = this.#ever.get(id);
    const message = `\`${id}\` cannot be ${word}: it is opened only later, in session ${later?.session.id}.`;
    const related = later ? [{ place: later.opening.place, message: `\`${id}\` is opened here.` }] : [];
    const hint = `Take this entry out, and write it in that session or a later one.`;
    return diagnostic('A608', place, message, { ...unknownName('item', id, []), hint, related });
  }
}

function openedTwice({ id, place }: ItemOpening, before: ItemHistory): Diagnostic {
  const message = `An item \`${id}\` was opened before, in session ${before.opened.session}.`;
  const related = [{ place: before.opening.place, message: `\`${id}\` is first opened here.` }];
  return diagnostic('A607', place, message, { hint: 'Take this entry out, or give the new item an id of its own.', related });
}
