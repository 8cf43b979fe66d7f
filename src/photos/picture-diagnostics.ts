/** What is wrong with pictures and papers, said at the place of the notes that names them. */
import { posix } from 'node:path';
import { type Diagnostic, diagnostic, startOf } from '../journal/diagnostics/diagnostic.ts';
import type { Journal, Picture, Place, Session } from '../journal/model.ts';
import { papersNamedIn } from '../journal/registers/named-papers.ts';
import type { Seal } from './clean-pdf.ts';
import { kindByName, type PictureFacts } from './facts.ts';
import type { PictureProblem } from './inspect.ts';
import { clockThere, takenInSession } from './taken.ts';

/**
 * A907 and A909: files that cannot be used.
 *
 * @param journal null when it cannot be understood; the problems then stand at the files themselves
 */
export function unusablePictures(problems: readonly PictureProblem[], journal: Journal | null): Diagnostic[] {
  const places = journal ? mentions(journal) : new Map<string, Mention>();
  return problems.map(({ path, message, hint }) => {
    const code = kindByName(path) === 'pdf' ? 'A909' : 'A907';
    return diagnostic(code, places.get(path)?.place ?? startOf(path), `${path} ${message}.`, { hint });
  });
}

/** A907 and A909: what a note calls a picture or paper, and is neither a picture nor a PDF by its name. */
export function notPictures(journal: Journal): Diagnostic[] {
  return [...mentions(journal)].flatMap(([path, { place, as }]) => {
    if (kindByName(path) !== null) return [];
    const code = as === 'paper' ? 'A909' : 'A907';
    return [diagnostic(code, place, `${path} is neither a picture nor a PDF, so no page can show it.`, { hint: HINTS[as] })];
  });
}

const HINTS = {
  picture: 'Save it as JPEG, PNG, WebP, TIFF, AVIF or HEIC.',
  paper: 'Save it as PDF, or as a picture.',
} as const;

/** A908: pictures in a session's folder that were taken on another day. Those of other sessions may be shown again anywhere. */
export function picturesOfOtherDays(journal: Journal, facts: ReadonlyMap<string, PictureFacts>): Diagnostic[] {
  const { timeZone } = journal.settings;
  return journal.sessions.flatMap((session) =>
    session.pictures
      .filter((picture) => isInFolderOf(picture, session))
      .flatMap((picture) => {
        const taken = facts.get(picture.file)?.takenAt ?? null;
        if (taken === null || takenInSession(taken, session.date, timeZone)) return [];
        const [day, clock = ''] = clockThere(taken, timeZone).split('T');
        const message = `${picture.file} was taken on ${day} at ${clock.slice(0, 5)}; the session is of ${session.date}.`;
        const hint = 'Put it into the session of its day. If the clock of the camera was wrong, nothing needs to be done.';
        return [diagnostic('A908', picture.place ?? startOf(picture.file), message, { hint })];
      }),
  );
}

const GOES_ALONG = 'What it says of who made it goes with it.';
const SEALS: Readonly<Record<Seal, readonly [why: string, hint: string]>> = {
  signed: ['is signed, so it is published as it is', `${GOES_ALONG} A scan of the printed page says nothing.`],
  locked: ['is locked with a password, so it is published as it is', `${GOES_ALONG} Save it without the password.`],
  large: ['is very large, so it is published as it is', `${GOES_ALONG} Scan it at a lower resolution.`],
  unpacks: ['unpacks to more than any paper holds, so it is published as it is', `${GOES_ALONG} Print it into a new PDF.`],
  unread: ['cannot be followed well enough to be written again, so it is published as it is', `${GOES_ALONG} Print it into a new PDF.`],
  parts: [
    'holds files or pictures that cannot be looked into; they are published as they are',
    'What they say of who made them goes with them. Print it into a new PDF.',
  ],
};

/** A910: papers that a note names and that are published as they are, or in part, with their metadata. */
export function sealedPapers(journal: Journal, facts: ReadonlyMap<string, PictureFacts>): Diagnostic[] {
  return [...mentions(journal)].flatMap(([path, { place }]) => {
    const seal = facts.get(path)?.seal ?? null;
    if (seal === null) return [];
    const [why, hint] = SEALS[seal];
    return [diagnostic('A910', place, `${path} ${why}.`, { hint })];
  });
}

/** A917: PDFs whose first page cannot be drawn, however well the rest of them can be followed. */
export function undrawnPapers(journal: Journal, paths: readonly string[]): Diagnostic[] {
  const places = mentions(journal);
  return paths.map((path) => {
    const message = `The first page of ${path} cannot be drawn, so the paper is published without a picture of it.`;
    return diagnostic('A917', places.get(path)?.place ?? startOf(path), message, { hint: 'Print it into a new PDF.' });
  });
}

/** PDFs that were opened to no avail, of which nothing else tells that. */
export function neverDrawn(facts: ReadonlyMap<string, PictureFacts>): string[] {
  const opened = [...facts.values()].filter(({ kind, digest, pages }) => kind === 'pdf' && digest !== null && pages === null);
  return opened.filter(({ seal }) => seal === null || !UNREADABLE.includes(seal)).map(({ path }) => path);
}

const UNREADABLE: readonly Seal[] = ['locked', 'unpacks', 'unread'];

/** Every file that the pages of a journal show or link as a picture or paper, each once, in order of mention. */
export function picturesOf(journal: Journal): string[] {
  return [...mentions(journal).keys()];
}

interface Mention {
  readonly place: Place;
  readonly as: 'picture' | 'paper';
}

/** Where each picture and paper is first mentioned; one that no note mentions stands at itself. */
function mentions(journal: Journal): Map<string, Mention> {
  const found = new Map<string, Mention>();
  const note = (as: Mention['as'], file: string | null, place: Place | null): void => {
    if (file !== null && !found.has(file)) found.set(file, { place: place ?? startOf(file), as });
  };
  for (const session of journal.sessions) {
    for (const picture of session.pictures) note('picture', picture.file, picture.place);
    for (const bag of session.bags) note('picture', bag.picture, bag.place);
    for (const paper of papersNamedIn(session)) note('paper', paper.file, paper.place);
  }
  return found;
}

function isInFolderOf(picture: Picture, session: Session): boolean {
  const folder = posix.dirname(session.file);
  const own = posix.dirname(picture.file);
  return own === folder || (posix.basename(session.file) === 'index.md' && own.startsWith(`${folder}/`));
}
