/** A note → a session: every field resolved against the catalogues, the prose looked through for links. */
import type { Place, Session } from '../model.ts';
import type { NoteSource } from '../read/journal-source.ts';
import type { Reporter } from '../read/reporter.ts';
import type { Path } from '../read/source/tree.ts';
import { receivedOf, valuedOf } from './client-money.ts';
import type { Catalogues, Names } from './context.ts';
import { handedOverOf } from './hand-overs.ts';
import { bagsOf, closesOf, defersOf, emptiedOf, opensOf, reachedOf } from './items.ts';
import type { Linkable } from './linkable.ts';
import { clipsBeside, filmOf, papersOf, picturesOf } from './media.ts';
import { checkOtherLinks } from './other-links.ts';
import type { AssetsByFolder } from './paths.ts';
import { billsOf, boughtOf } from './purchases.ts';
import { salesOf } from './sales.ts';
import { countedOf, usesOf } from './stock.ts';
import { attributedOf, decisionsOf, hoursOf, measuredOf, methodsOf, touchedOf } from './work.ts';

/** What the parts of compiling a note share. */
export interface NoteAtHand {
  readonly id: string;
  readonly file: string;
  readonly date: string;
  readonly catalogues: Catalogues;
  readonly names: Names;
  readonly out: Reporter;
  /** Every other file of the journal. */
  readonly assets: AssetsByFolder;
  place(...path: Path): Place;
}

/** What the notes of a journal are compiled against. */
export interface Surroundings {
  readonly catalogues: Catalogues;
  readonly names: Names;
  /** Every other file of the journal. */
  readonly assets: AssetsByFolder;
  readonly linkable: Linkable;
  readonly out: Reporter;
}

/** Compiles one note. What cannot be resolved is reported and left out; the rest stands. */
export function compileSession(note: NoteSource, { catalogues, names, assets, linkable, out }: Surroundings): Session {
  const { source, tree, prose } = note;
  const context: NoteAtHand = {
    id: note.id,
    file: note.file,
    date: source.date,
    catalogues,
    names,
    out,
    assets,
    place: (...path) => tree.placeOf(path),
  };
  checkOtherLinks(prose.others, linkable, context);
  const bags = bagsOf(source.bags, context);
  const { bought, ...says } = source;
  return {
    ...says,
    id: note.id,
    file: note.file,
    datePlace: tree.placeOf(['date']),
    hours: hoursOf(source.hours, context),
    parts: touchedOf(source.parts, context),
    decisions: decisionsOf(source.decisions, context),
    attributed: attributedOf(source.attributed, context),
    methods: methodsOf(source.methods, context),
    measured: measuredOf(source.measured, context),
    bills: [...boughtOf(bought, context), ...billsOf(source.bills, context)],
    sold: salesOf(source.sold, context),
    received: receivedOf(source.received, context),
    valued: valuedOf(source.valued, context),
    used: usesOf(source.used, context),
    counted: countedOf(source.counted, context),
    bags,
    emptied: emptiedOf(source.emptied, context),
    opens: opensOf(source.opens, context),
    closes: closesOf(source.closes),
    defers: defersOf(source.defers, context),
    reached: reachedOf(source.reached, context),
    handedOver: handedOverOf(source.handedOver, context),
    pictures: picturesOf(source.pictures, prose, bags, context),
    film: filmOf(source.film, context),
    clipsBeside: clipsBeside(source.film, context),
    papers: papersOf(source.papers, context),
    correctsPlace: source.corrects === null ? null : tree.placeOf(['corrects']),
    links: prose.links,
    body: note.body,
    bodyLine: note.bodyLine,
  };
}
