/** The lists that may grow long enough to need several pages. */
import type { Bill, IsoDate, Picture, Session } from '../../../journal/model.ts';
import type { SiteRecord } from '../../record.ts';

export const SESSIONS_A_PAGE = 500;
export const PICTURES_A_PAGE = 120;
export const BILLS_A_PAGE = 400;

export const dateOfBill = ({ date }: Bill): IsoDate => date;

export const dateOfSession = ({ date }: Session): IsoDate => date;

export interface PictureOfSession {
  readonly picture: Picture;
  readonly session: Session;
}

/** Every picture that can be shown, in order of session and, within it, in the order taken. */
export function allPictures({ journal, pictures }: SiteRecord): readonly PictureOfSession[] {
  return journal.sessions.flatMap((session) => {
    const byFile = new Map(session.pictures.map((picture) => [picture.file, picture]));
    const files = pictures.inOrderTaken([...byFile.keys()]).filter((file) => pictures.rendition(file) !== null);
    return files.flatMap((file) => {
      const picture = byFile.get(file);
      return picture ? [{ picture, session }] : [];
    });
  });
}
