/** What is wrong, and what may be done about it. */
import { type CodeAction, CodeActionKind, DiagnosticSeverity, type Range, type Diagnostic as Shown } from 'vscode-languageserver';
import type { Diagnostic } from '../../journal/diagnostics/diagnostic.ts';
import { likeliest } from '../../journal/diagnostics/nearest.ts';
import type { Place } from '../../journal/diagnostics/place.ts';
import type { Repair } from '../../journal/diagnostics/repair.ts';
import { factsAt, fieldsAt } from '../../journal/read/schema-at.ts';
import type { SourceText } from '../../journal/read/source/text.ts';
import type { State } from '../workspace.ts';
import { type PlacedField, placedIn } from './fields.ts';
import { rangeOf, textAt } from './ranges.ts';

/** Finds the address of a file by its path in the journal. */
export type AddressOf = (path: string) => string;

/** Every fault, by file, as `check` tells it. */
export function faultsByFile({ diagnostics }: State, addressOf: AddressOf): ReadonlyMap<string, Shown[]> {
  const byFile = Map.groupBy(diagnostics, ({ place }) => place.file);
  return new Map([...byFile].map(([path, found]) => [path, found.map((one) => shown(one, addressOf))]));
}

function shown({ code, severity, message, hint, place, related }: Diagnostic, addressOf: AddressOf): Shown {
  return {
    range: rangeOf(place),
    severity: severity === 'error' ? DiagnosticSeverity.Error : DiagnosticSeverity.Warning,
    code,
    source: 'asfound',
    message: hint === null ? message : `${message}\n${hint}`,
    relatedInformation: related.map((other) => ({
      location: { uri: addressOf(other.place.file), range: rangeOf(other.place) },
      message: other.message,
    })),
  };
}

/** What may be written in a range of a file: what can be meant in one way only, and the name or word that was most likely meant. */
export function repairsIn(state: State, path: string, asked: Range, addressOf: AddressOf): CodeAction[] {
  const here = ({ place }: { readonly place: Place }) => place.file === path && touches(rangeOf(place), asked);
  const sure = state.repairs
    .filter(here)
    .map((repair) => ({ repair, fault: state.diagnostics.find((one) => sameStart(one.place, repair.place)), sure: true }));
  const likely = state.diagnostics.filter(here).flatMap((fault) => {
    const repair = likelyRepair(state, fault);
    return repair === null || sure.some((one) => sameStart(one.repair.place, repair.place)) ? [] : [{ repair, fault, sure: false }];
  });
  return [...sure, ...likely].map(({ repair, fault, sure: isPreferred }) => ({
    title: `Write \`${repair.text}\``,
    kind: CodeActionKind.QuickFix,
    isPreferred,
    diagnostics: fault ? [shown(fault, addressOf)] : [],
    edit: { changes: { [addressOf(path)]: [{ range: rangeOf(repair.place), newText: repair.text }] } },
  }));
}

const sameStart = (a: Place, b: Place): boolean => a.file === b.file && a.line === b.line && a.column === b.column;

function touches(a: Range, b: Range): boolean {
  const before = (one: Range, other: Range) =>
    one.end.line < other.start.line || (one.end.line === other.start.line && one.end.character < other.start.character);
  return !before(a, b) && !before(b, a);
}

/** A name that is not known, a field or a word that is not one: what is nearest to it. */
function likelyRepair(state: State, { code, place, unknown }: Diagnostic): Repair | null {
  const text = state.textOf(place.file);
  if (text === null) return null;
  if (unknown !== null) return unknown.nearest === null ? null : instead(text, place, unknown.name, unknown.nearest);
  if (code !== 'A301' && code !== 'A304') return null;
  const written = textAt(text, place);
  const at = placedIn(text, (field) => sameStart(code === 'A301' ? field.keyPlace : field.place, place));
  const meant = at === null ? null : likeliest(written, code === 'A301' ? fieldsAt(at.schema, at.path.slice(0, -1)) : wordsAt(at));
  return meant === null ? null : { place, text: meant };
}

const wordsAt = ({ schema, path }: PlacedField): readonly string[] =>
  factsAt(schema, path).words ?? factsAt(schema, [...path, 0]).words ?? [];

/** The one spot in a place where a name stands, with another name; null where it stands in none or in several. */
function instead(text: SourceText, place: Place, name: string, put: string): Repair | null {
  const written = textAt(text, place);
  const at = written.indexOf(name);
  if (at === -1 || written.indexOf(name, at + 1) !== -1) return null;
  const start = text.offset(place.line, place.column) + at;
  return { place: text.place(start, start + name.length), text: put };
}
