/** What a part has to do with others and with what was believed and written of it: each a name and its lines. */
import type { Part } from '../../../journal/model.ts';
import { type Inside, insideAt } from '../../../journal/registers/assemblies.ts';
import { waysBackOf } from '../../../journal/registers/goes-back.ts';
import { makingOf } from '../../../journal/registers/making.ts';
import { opinionsOf } from '../../../journal/registers/origins.ts';
import { inARow } from '../../../journal/replay/words.ts';
import { html, joined, type Markup } from '../page/html.ts';
import { linked, partLink, partLinks, positionLink, sessionDay } from '../page/links.ts';
import type { RecordSheet, Sheet } from '../page/sheet.ts';
import { capital, ORIGIN_WORDS, sentence } from '../page/words.ts';
import { paperFacts } from '../papers/papers.ts';

export interface Relation {
  readonly name: string;
  readonly lines: readonly Markup[];
}

/** What there is to say, in the order in which the page says it; nothing where there is nothing. */
export function relationsOf(sheet: RecordSheet, part: Part): readonly Relation[] {
  const making = makingOf(sheet.record, part.id);
  const parts = (name: string, ids: readonly string[]): Relation => ({ name, lines: ids.length === 0 ? [] : [partLinks(sheet, ids)] });
  return [
    { name: 'Origin as believed in turn', lines: opinionLines(sheet, part) },
    { name: 'A place in', lines: part.inside === null ? [] : [positionLink(sheet, part.inside)] },
    { name: 'Told apart', lines: part.numbered === null ? [] : [html`${capital(part.numbered)}`] },
    { name: 'In it now', lines: insideAt(sheet.record, part.id, null).map((inner) => insideLine(sheet, inner)) },
    { name: 'How it goes back', lines: wayLines(sheet, part) },
    parts('Made from', making.from),
    parts('Made after', making.pattern === null ? [] : [making.pattern]),
    parts('Made into', making.into),
    parts('Pattern of', making.patternOf),
  ].filter(({ lines }) => lines.length > 0);
}

function insideLine(sheet: Sheet, { part, count, holds }: Inside): Markup {
  const many = count > 1 ? `${count} of ` : '';
  const inner = holds.map((one) => insideLine(sheet, one));
  return html`${many}${partLink(sheet, part)}${inner.length > 0 && html`, with ${joined(inner, ', ')}`}`;
}

/** Every opinion, where there is more than the catalogue's: what was believed, since when, who said so and why. */
function opinionLines(sheet: RecordSheet, part: Part): readonly Markup[] {
  const opinions = opinionsOf(sheet.record, part.id);
  if (opinions.length === 1) return [];
  return opinions.map(({ origin, because, attribution }) => {
    const words = capital(origin === null ? 'not known' : ORIGIN_WORDS[origin]);
    if (attribution === null) return html`${words}, as the record began. ${sentence(because)}`;
    const by = attribution.by === null ? '' : `, ${sheet.personName(attribution.by)}`;
    const paper = attribution.paper === null ? null : paperFacts(sheet, attribution.paper);
    const since = sessionDay(sheet, attribution.session, attribution.date);
    return html`${words}, since ${since}${by}. ${sentence(because)}${paper !== null && html` ${linked('The paper', paper.href)}.`}`;
  });
}

/** How a part goes back, as it was written down: a line each, with the bag and the day. */
export function wayLines(sheet: RecordSheet, part: Part): readonly Markup[] {
  return waysBackOf(sheet.record, part.id, null).map(({ at, bag, goesBack, stack, some }) => {
    const order = stack.length === 0 ? '' : `${goesBack === null ? '' : ' '}In this order: ${inARow(stack)}.`;
    const where = bag === null ? null : html` (${linked(`bag ${bag}`, sheet.toBag(bag))})`;
    return html`${sentence(goesBack)}${order}${some !== '' && ` (${some})`}${where} ${sessionDay(sheet, at.session, at.date)}`;
  });
}
