import type { NoteDraft } from './note-draft.ts';
import type { Random } from './random.ts';
import { ITEMS } from './trade-sentences.ts';
import { MILESTONES } from './trade-words.ts';

interface OpenItem {
  readonly id: string;
  /** The place of the milestone it is due before; one past the last when it is due before none. */
  due: number;
}

const NEVER = MILESTONES.length;
const KINDS = ['task', 'task', 'question', 'buy', 'temporary'] as const;

/**
 * Opens, defers and closes items over the life of a journal, and reaches every milestone but the last
 * at even distances. Before a milestone is reached all that is due is closed but for, sometimes, one
 * item that the note owns up to.
 */
export class Gates {
  private readonly random: Random;
  private readonly sessions: number;
  private open: OpenItem[] = [];
  private opened = 0;

  constructor(random: Random, sessions: number) {
    this.random = random;
    this.sessions = sessions;
  }

  /** Plays one session. `on` is the subsystem or part the items of tonight are about. */
  play(session: number, on: string, note: NoteDraft): void {
    const reaching = this.milestoneAt(session);
    if (reaching !== null) this.reach(reaching, note);
    const closing = this.milestoneAt(session + 1);
    if (closing !== null) this.closeDue(closing, note);
    if (reaching !== null || closing !== null) return;
    if (this.random.chance(0.3)) this.openOne(this.nextMilestone(session), on, note);
    if (this.random.chance(0.28)) this.closeOne(note);
    if (this.random.chance(0.04)) this.deferOne(note);
  }

  private milestoneAt(session: number): number | null {
    if (this.sessions < 30) return null;
    const place = MILESTONES.findIndex((_, n) => session === Math.floor((this.sessions * (n + 1)) / NEVER));
    return place < 0 || place === NEVER - 1 ? null : place;
  }

  private nextMilestone(session: number): number {
    const passed = Math.floor(((session + 1) * NEVER) / this.sessions);
    return this.sessions < 30 ? 0 : Math.min(passed, NEVER - 1);
  }

  private openOne(from: number, on: string, note: NoteDraft): void {
    const kind = this.random.pick(KINDS);
    const id = `${kind}-${this.opened}`;
    const due = kind === 'temporary' || this.random.chance(0.7) ? this.random.between(from, NEVER - 1) : NEVER;
    this.opened += 1;
    this.open.push({ id, due });
    note.add('opens', { id, kind, what: this.random.pick(ITEMS[kind]), before: nameOf(due), on });
    note.sentences.push(`That leaves [one thing more](item:${id}) on the list.`);
  }

  private closeOne(note: NoteDraft): void {
    const item = this.open.shift();
    if (item === undefined) return;
    note.add('closes', { id: item.id, how: this.random.pick(['Done tonight', 'Found out', 'Undone and made good']) });
    note.sentences.push(`And [an old item](item:${item.id}) is *off the list*.`);
  }

  private closeDue(milestone: number, note: NoteDraft): void {
    const due = this.open.filter((item) => item.due <= milestone);
    const kept = this.random.chance(0.5) ? due.findLast((item) => item.due === milestone) : undefined;
    for (const item of due) {
      if (item !== kept) note.add('closes', { id: item.id, how: 'Done on the way to the milestone' });
    }
    this.open = this.open.filter((item) => item === kept || item.due > milestone);
  }

  private deferOne(note: NoteDraft): void {
    const item = this.open.find((one) => one.due < NEVER - 1);
    if (item === undefined) return;
    item.due += 1;
    note.add('defers', { id: item.id, to: nameOf(item.due), because: 'Cannot be reached until the panel is off.' });
  }

  private reach(milestone: number, note: NoteDraft): void {
    const admitted = this.open.filter((item) => item.due <= milestone).map((item) => item.id);
    note.add('reached', {
      milestone: nameOf(milestone),
      'with-open': admitted.length > 0 ? admitted : null,
      because: admitted.length > 0 ? 'It holds nothing up and nobody is put at risk.' : null,
    });
    note.sentences.push('**A milestone**, written down before anyone forgets.');
  }
}

function nameOf(place: number): string | null {
  return MILESTONES[place]?.id ?? null;
}
