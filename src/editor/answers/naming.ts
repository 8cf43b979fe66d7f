/** Where a thing comes from, wherever it is mentioned, and giving it another name. */
import type { Location, Range, TextDocumentEdit, TextEdit, WorkspaceEdit } from 'vscode-languageserver';
import type { Mention } from '../../journal/mentions/mentions.ts';
import { RENAMED_SORTS, type Refused, type RenamedSort, renaming } from '../../journal/mentions/renaming.ts';
import type { State } from '../workspace.ts';
import type { AddressOf } from './faults.ts';
import { mentionAt, rangeOf, type Spot } from './ranges.ts';

/** The entry of its catalogue, or the notes that bring it; of a session the beginning of its note. */
export function definitionsAt(state: State, spot: Spot, addressOf: AddressOf): Location[] {
  const mention = mentionAt(state, spot);
  if (mention === null) return [];
  if (mention.sort === 'session') {
    const file = state.record?.journal.sessions.find(({ id }) => id === mention.name)?.file;
    return file === undefined ? [] : [{ uri: addressOf(file), range: START }];
  }
  return ofSame(state, mention)
    .filter(({ brings }) => brings)
    .map((one) => locationOf(one, addressOf));
}

const START: Range = { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } };

/** @param withEntry whether the entry that brings it is among them */
export function mentionsAt(state: State, spot: Spot, withEntry: boolean, addressOf: AddressOf): Location[] {
  const mention = mentionAt(state, spot);
  if (mention === null) return [];
  return ofSame(state, mention)
    .filter(({ brings }) => withEntry || !brings)
    .map((one) => locationOf(one, addressOf));
}

/** What would be given another name, and what it is now; or why nothing can. */
export function renamedAt(state: State, spot: Spot): { readonly range: Range; readonly placeholder: string } | Refused {
  const mention = mentionAt(state, spot);
  if (mention === null) return { problem: 'Nothing is named here.', hint: null };
  if (!isRenamed(mention)) return { problem: `A ${mention.sort} is named by its file.`, hint: 'Rename that, with its pictures.' };
  if (mention.either.length > 0) return undecided(mention);
  return { range: rangeOf(mention.place), placeholder: mention.name };
}

/** @returns every edit, and the move of a catalogue that is named for the thing */
export function renameAt(state: State, spot: Spot, to: string, addressOf: AddressOf): WorkspaceEdit | Refused {
  const mention = mentionAt(state, spot);
  if (mention === null || !isRenamed(mention)) return { problem: 'Nothing that can be renamed is named here.', hint: null };
  if (mention.either.length > 0) return undecided(mention);
  const paths = state.sources.files.map(({ path }) => path);
  const result = renaming(state.mentions, paths, mention.sort, mention.name, to);
  if ('problem' in result) return result;
  const byFile = Map.groupBy(result.edits, ({ place }) => place.file);
  const edits = [...byFile].map(([path, found]): [string, TextEdit[]] => [
    addressOf(path),
    found.map(({ place, text }) => ({ range: rangeOf(place), newText: text })),
  ]);
  if (result.moved === null) return { changes: Object.fromEntries(edits) };
  const documents = edits.map(([uri, changes]): TextDocumentEdit => ({ textDocument: { uri, version: null }, edits: changes }));
  const { from, to: target } = result.moved;
  return { documentChanges: [...documents, { kind: 'rename', oldUri: addressOf(from), newUri: addressOf(target) }] };
}

function undecided({ name, either }: Mention): Refused {
  const hint = 'Rename the one that is meant where its entry stands.';
  return { problem: `\`${name}\` may be a ${either.join(' or a ')} here.`, hint };
}

function isRenamed(mention: Mention): mention is Mention & { readonly sort: RenamedSort } {
  return (RENAMED_SORTS as readonly string[]).includes(mention.sort);
}

const ofSame = ({ mentions }: State, { sort, name }: Mention): readonly Mention[] =>
  mentions.all.filter((one) => one.sort === sort && one.name === name);

const locationOf = ({ place }: Mention, addressOf: AddressOf): Location => ({ uri: addressOf(place.file), range: rangeOf(place) });
