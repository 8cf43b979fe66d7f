import { type Diagnostic, diagnostic, unknownName } from '../diagnostics/diagnostic.ts';
import type { ItemId, ItemOpening, MilestoneId, Place, Session } from '../model.ts';
import type { ItemHistory } from '../record.ts';

/** Open items as they are opened, deferred and closed while sessions are replayed. */
export class Items {
  readonly history = new Map<ItemId, ItemHistory>();
  readonly #closedAt = new Map<ItemId, Place>();
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
      if (problem) return [problem];
      const item = this.history.get(id) as ItemHistory;
      const deferral = { session: of, date, from: this.due(item), to, because };
      this.history.set(id, { ...item, deferred: [...item.deferred, deferral] });
      return [];
    });
  }

  #close(session: Session): Diagnostic[] {
    const { id: of, date } = session;
    return session.closes.flatMap(({ id, how, place }) => {
      const problem = this.#notOpen(id, 'closed', place);
      if (problem) return [problem];
      const item = this.history.get(id) as ItemHistory;
      this.history.set(id, { ...item, closed: { session: of, date, how } });
      this.#closedAt.set(id, place);
      return [];
    });
  }

  #notOpen(id: ItemId, word: 'deferred' | 'closed', place: Place): Diagnostic | null {
    const item = this.history.get(id);
    if (!item) return this.unknown(id, place) ?? this.#onlyLater(id, word, place);
    if (!item.closed) return null;
    const at = this.#closedAt.get(id);
    const related = at ? [{ place: at, message: `\`${id}\` was closed here.` }] : [];
    const message = `\`${id}\` cannot be ${word}: it was closed in session ${item.closed.session}.`;
    return diagnostic('A609', place, message, { related });
  }

  /** Null when some note opens the item. */
  unknown(id: ItemId, place: Place): Diagnostic | null {
    if (this.#ever.has(id)) return null;
    return diagnostic('A610', place, `No note opens an item \`${id}\`.`, unknownName('item', id, this.#ever.keys()));
  }

  #onlyLater(id: ItemId, word: string, place: Place): Diagnostic {
    const later = this.#ever.get(id);
    const message = `\`${id}\` cannot be ${word}: it is opened only later, in session ${later?.session.id}.`;
    const related = later ? [{ place: later.opening.place, message: `\`${id}\` is opened here.` }] : [];
    return diagnostic('A608', place, message, { ...unknownName('item', id, []), related });
  }
}

function openedTwice({ id, place }: ItemOpening, before: ItemHistory): Diagnostic {
  const message = `An item \`${id}\` was opened before, in session ${before.opened.session}.`;
  const related = [{ place: before.opening.place, message: `\`${id}\` is first opened here.` }];
  return diagnostic('A607', place, message, { hint: 'Give the new item an id of its own.', related });
}
