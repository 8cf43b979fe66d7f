import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import * as lsp from 'vscode-languageserver-protocol/node';
import { CONSUMABLES, JOURNAL, NOTE, note, PARTS } from '../journal/base.ts';
import { folderWith, put } from '../load/folder.ts';
import { type Client, connected, started, typed } from './client.ts';

const FIRST = note(
  `parts:
  - { part: drum, did: removed, to: shelf A1 }
  - { part: studs, did: removed, count: 2, to: bag 14 }
decisions:
  - { part: drum, verdict: repair, because: Will clean up at 9.050 in. }
bags:
  - { bag: 14, holds: [2 nuts], off: studs }
opens:
  - { id: bleed, kind: task, what: Bleed the front, before: first-start, on: brakes }`,
  '# The drum\n\n[It](part:drum) came off. Studs in [](bag:14).\n',
);
const SECOND = 'sessions/2031-03-13.md';
const DRAWING = '<svg viewBox="0 0 9 9"><path id="drum" d="M0 0h9v9z"/></svg>';

const FILES = {
  'journal.yaml': JOURNAL,
  'consumables.yaml': CONSUMABLES,
  'parts/brakes.yaml': PARTS,
  'drawings/side.svg': DRAWING,
  [NOTE]: FIRST,
  [SECOND]: 'Looked at [the drum](part:drum) again.\n',
};

const journal = (): string => folderWith(FILES);

const none = (codes: readonly string[]) => codes.length === 0;
const some =
  (...wanted: readonly string[]) =>
  (codes: readonly string[]) =>
    wanted.every((code) => codes.includes(code));

/** Where the first of a text stands in a file. */
function at(text: string, words: string): lsp.Position {
  return typed(text.replace(words, `|${words}`)).position;
}

describe('faults', () => {
  test('are told as one types, with their codes and places, and taken back', async () => {
    const client = await connected(journal());
    await client.open(NOTE);
    await client.change(NOTE, FIRST.replace('part: drum, did', 'part: drumm, did'));
    const [fault] = await client.faults(NOTE, some('A401'));
    expect(fault).toMatchObject({
      code: 'A401',
      source: 'asfound',
      severity: lsp.DiagnosticSeverity.Error,
      message: expect.stringContaining('Did you mean `drum`?'),
    });
    expect(fault?.range).toEqual({ start: at(FIRST, 'drum, did'), end: { line: 4, character: at(FIRST, 'drum, did').character + 5 } });
    await client.change(NOTE, FIRST);
    expect(await client.faults(NOTE, none)).toEqual([]);
  });

  test('in another file come of what is typed in this one, and point back', async () => {
    const client = await connected(journal());
    await client.open('parts/brakes.yaml', PARTS.replace('- id: drum\n', '- id: drum-front\n'));
    expect((await client.faults(SECOND, some('A903')))[0]?.message).toContain('There is no part `drum`');
    await client.change('parts/brakes.yaml', PARTS.replace('- id: studs', '- id: drum'));
    const [fault] = await client.faults('parts/brakes.yaml', some('A410'));
    expect(fault?.relatedInformation?.[0]?.location).toMatchObject({ uri: client.uri('parts/brakes.yaml') });
  });

  test('of a file that is closed unsaved are those of the disk again', async () => {
    const client = await connected(journal());
    await client.open(SECOND, 'Looked at [it](part:drumm).');
    await client.faults(SECOND, some('A903'));
    await client.connection.sendNotification(lsp.DidCloseTextDocumentNotification.type, { textDocument: { uri: client.uri(SECOND) } });
    expect(await client.faults(SECOND, none)).toEqual([]);
  });

  test('follow what another program writes', async () => {
    const folder = journal();
    const client = await connected(folder);
    put(folder, SECOND, 'Looked at [it](part:drumm).');
    const changes: lsp.FileEvent[] = [{ uri: client.uri(SECOND), type: lsp.FileChangeType.Changed }];
    await client.connection.sendNotification(lsp.DidChangeWatchedFilesNotification.type, { changes });
    expect(await client.faults(SECOND, some('A903'))).toHaveLength(1);
  });
});

describe('repairs', () => {
  async function repaired(client: Client, path: string, written: string): Promise<string[]> {
    await client.open(path, written);
    await client.faults(path, (codes) => codes.length > 0);
    const { text } = typed(`${written}|`);
    const range = { start: { line: 0, character: 0 }, end: typed(`${text}|`).position };
    const actions =
      (await client.connection.sendRequest(lsp.CodeActionRequest.type, {
        textDocument: { uri: client.uri(path) },
        range,
        context: { diagnostics: [] },
      })) ?? [];
    return actions.map((action) => {
      const [edit] = ('edit' in action && action.edit?.changes?.[client.uri(path)]) || [];
      const lines = written.split('\n');
      const line = lines[edit?.range.start.line ?? 0] ?? '';
      return `${action.title}: ${line.slice(0, edit?.range.start.character)}${edit?.newText}${line.slice(edit?.range.end.character)}`;
    });
  }

  test.each([
    ['an unknown part', '  - { part: drumm, did: cleaned }', 'Write `drum`:   - { part: drum, did: cleaned }'],
    [
      'an unknown store',
      '  - { part: drum, did: removed, to: shelf A3 }',
      'Write `shelf A1`:   - { part: drum, did: removed, to: shelf A1 }',
    ],
    ['a word that is none', '  - { part: drum, did: [cleened] }', 'Write `cleaned`:   - { part: drum, did: [cleaned] }'],
    ['a field that is none', '  - { part: drum, did: cleaned, nte: x }', 'Write `note`:   - { part: drum, did: cleaned, note: x }'],
  ])('%s', async (_, line, expected) => {
    const client = await connected(journal());
    expect(await repaired(client, NOTE, note(`parts:\n${line}`))).toContain(expected);
  });

  test('what check --fix would write is what is preferred', async () => {
    const client = await connected(journal());
    const written = '---\ndate: 2031-03-12\ntitle: x\nhours: many\n--\nText.\n';
    expect(await repaired(client, NOTE, written)).toContain('Write `---`: ---');
  });
});

describe('what may be written', () => {
  let server: Awaited<ReturnType<typeof started>>;
  let client: Client;
  const folder = mkdtempSync(join(tmpdir(), 'asfound-test-'));
  beforeAll(async () => {
    for (const [path, text] of Object.entries(FILES)) put(folder, path, text);
    server = await started(folder);
    client = server.client;
    await client.open(TONIGHT, front(''));
  });
  afterAll(async () => {
    await server.end();
    rmSync(folder, { recursive: true, force: true });
  });
  const TONIGHT = 'sessions/2031-03-14.md';
  const front = (last: string): string => `---\ndate: 2031-03-14\ntitle: Tonight\n${last}`;

  test.each([
    ['fields of a note', 'ho|', ['hours']],
    [
      'fields of an entry',
      'parts:\n  - { part: drum, |',
      ['did: removed, fitted', 'to: a bag by its number, or a store by its name', 'condition: 0, 1, 2, 3'],
    ],
    ['fields of an entry in lines', 'parts:\n  - part: drum\n    |', ['did: removed', 'goes-back']],
    ['parts with their names', 'parts:\n  - { part: |', ['drum: Front brake drum', 'studs: Wheel studs']],
    ['parts in a list', 'pictures:\n  - { file: a.jpg, shows: [drum, |', ['studs: Wheel studs']],
    ['words', 'parts:\n  - { part: drum, did: [removed, |', ['inspected', 'cleaned']],
    ['words, quoted', 'parts:\n  - { part: drum, did: "cl|', ['cleaned']],
    ['places and bags', 'parts:\n  - part: drum\n    did: removed\n    to: sh|', ['bag 14: 2 nuts', 'shelf A1', 'shelf B2']],
    ['numbers of bags', 'emptied: [|', ['14: 2 nuts']],
    ['positions alone', 'parts:\n  - { part: drum-donor, did: fitted, at: |', ['drum: Front brake drum']],
    ['subsystems and parts', 'hours:\n  - { by: rh, on: |', ['drum: Front brake drum', 'brakes: Brakes']],
    ['people', 'hours:\n  - { by: |', ['rh: Ruth']],
    ['items', 'closes:\n  - { id: |', ['bleed: Bleed the front']],
    ['milestones', 'opens:\n  - { id: x, kind: task, what: "a, b: c", before: |', ['first-start: First start']],
    ['consumables', 'used:\n  # a comment { that opens\n  - { consumable: |', ['brake-cleaner: Brake cleaner']],
    ['names of a split', 'bought:\n  - { what: x, cost: 1, split: { |', ['drum: Front brake drum', 'brakes: Brakes']],
    ['links of the prose', '---\nSee [it](part:|', ['drum: Front brake drum']],
    ['bags of the prose', '---\nSee [it](bag:1|', ['14: 2 nuts']],
    ['what a link names', '---\nSee [it](|', ['part:', 'bag:', 'item:']],
  ])('%s', async (_, last, expected) => {
    const offered = await client.offered(TONIGHT, front(last));
    for (const one of expected)
      expect(
        offered.some((label) => label.startsWith(one)),
        `${one} in ${offered.join(' | ')}`,
      ).toBe(true);
  });

  test.each([
    ['a firm is nothing the journal names', 'parts:\n  - { part: drum, did: sent-out, to: |'],
    ['nor is prose', 'parts:\n  - { part: drum, note: |'],
    ['and fields that are there are not offered again', 'hours:\n  - { by: rh, on: brakes, time: 1h, unpaid: x, |'],
  ])('%s', async (_, last) => {
    expect(await client.offered(TONIGHT, front(last))).toEqual([]);
  });

  test('in a catalogue, and with what is written replaced', async () => {
    const { text, position } = typed(`${PARTS}- id: x\n  name: X\n  for: dr|`);
    await client.open('parts/brakes.yaml', text);
    const items = await client.connection.sendRequest(lsp.CompletionRequest.type, client.spot('parts/brakes.yaml', position));
    const [item] = (Array.isArray(items) ? items : []).filter(({ label }) => label === 'drum');
    expect(item?.textEdit).toEqual({ newText: 'drum', range: { start: { line: position.line, character: 7 }, end: position } });
    expect(item?.documentation).toBe('in stores, shelf A1');
  });
});

describe('a name', () => {
  test('tells what it is, where it is, and what was decided', async () => {
    const client = await connected(journal());
    await client.open(NOTE);
    const hover = await client.connection.sendRequest(lsp.HoverRequest.type, client.spot(NOTE, at(FIRST, 'drum) came')));
    const { value } = (hover ?? { contents: { value: '' } }).contents as lsp.MarkupContent;
    expect(value.split('\n\n')).toEqual([
      '**Front brake drum**, `drum`',
      'original',
      'in stores, shelf A1',
      'Decided 2031-03-12: repair drum. Will clean up at 9.050 in.',
    ]);
    expect(await client.connection.sendRequest(lsp.HoverRequest.type, client.spot(NOTE, { line: 1, character: 0 }))).toBeNull();
  });

  test('tells what is believed of its origin by now, and every mark that a note found', async () => {
    const client = await connected(
      folderWith({
        ...FILES,
        [SECOND]:
          '---\ndate: 2031-03-13\ntitle: Seen\nparts: [{ part: drum, did: inspected, marks: K 2 }]\nattributed: [{ part: drum, origin: donor, because: Cast in 1960 }]\n---\n',
      }),
    );
    await client.open(NOTE);
    const hover = await client.connection.sendRequest(lsp.HoverRequest.type, client.spot(NOTE, at(FIRST, 'drum) came')));
    const { value } = (hover ?? { contents: { value: '' } }).contents as lsp.MarkupContent;
    expect(value.split('\n\n').slice(1, 4)).toEqual(['donor', 'in stores, shelf A1', 'K 2']);
  });

  test('leads to where it comes from, and to all that mention it', async () => {
    const client = await connected(journal());
    await client.open(SECOND);
    const spot = client.spot(SECOND, { line: 0, character: 30 });
    const definition = await client.connection.sendRequest(lsp.DefinitionRequest.type, spot);
    expect(definition).toEqual([
      { uri: client.uri('parts/brakes.yaml'), range: { start: { line: 0, character: 6 }, end: { line: 0, character: 10 } } },
    ]);
    const all = await client.connection.sendRequest(lsp.ReferencesRequest.type, { ...spot, context: { includeDeclaration: false } });
    expect(all?.map(({ uri }) => client.relative(uri))).toEqual(['drawings/side.svg', 'parts/brakes.yaml', NOTE, NOTE, NOTE, SECOND]);
    const bag = await client.connection.sendRequest(lsp.DefinitionRequest.type, client.spot(NOTE, at(FIRST, '14 }\ndecisions')));
    expect(bag).toEqual([
      { uri: client.uri(NOTE), range: { start: at(FIRST, '14, holds'), end: { ...at(FIRST, '14, holds'), character: 13 } } },
    ]);
  });

  test('is changed in the catalogue, the notes, the prose and the drawings, unsaved text among them', async () => {
    const folder = journal();
    const client = await connected(folder);
    const unsaved = 'Unsaved: [it](part:drum), [it](part:drum).\n';
    await client.open(SECOND, unsaved);
    const spot = client.spot(SECOND, { line: 0, character: unsaved.indexOf('drum') });
    expect(await client.connection.sendRequest(lsp.PrepareRenameRequest.type, spot)).toMatchObject({ placeholder: 'drum' });
    const edit = await client.connection.sendRequest(lsp.RenameRequest.type, { ...spot, newName: 'front-drum' });
    const edited = Object.entries(edit?.changes ?? {}).map(([uri, edits]) => {
      const path = client.relative(uri);
      const text = path === SECOND ? unsaved : readFileSync(join(folder, path), 'utf8');
      return [path, applied(text, edits)];
    });
    expect(Object.fromEntries(edited)).toEqual({
      'parts/brakes.yaml': PARTS.replace('id: drum\n', 'id: front-drum\n').replace('for: drum\n', 'for: front-drum\n'),
      'drawings/side.svg': DRAWING.replace('"drum"', '"front-drum"'),
      [NOTE]: FIRST.replaceAll('part: drum,', 'part: front-drum,').replace('part:drum', 'part:front-drum'),
      [SECOND]: unsaved.replaceAll('part:drum', 'part:front-drum'),
    });
    await expect(client.connection.sendRequest(lsp.RenameRequest.type, { ...spot, newName: 'studs' })).rejects.toThrow(
      'There is a part `studs` already',
    );
  });

  test('of a subsystem moves its catalogue where the editor can, and is refused where not', async () => {
    const spotOf = (client: Client) => client.spot('journal.yaml', at(JOURNAL, 'brakes:'));
    const able = await connected(journal(), { workspace: { workspaceEdit: { documentChanges: true, resourceOperations: ['rename'] } } });
    const edit = await able.connection.sendRequest(lsp.RenameRequest.type, { ...spotOf(able), newName: 'braking' });
    expect(edit?.documentChanges?.at(-1)).toEqual({
      kind: 'rename',
      oldUri: able.uri('parts/brakes.yaml'),
      newUri: able.uri('parts/braking.yaml'),
    });
    const plain = await connected(journal());
    await expect(plain.connection.sendRequest(lsp.RenameRequest.type, { ...spotOf(plain), newName: 'braking' })).rejects.toThrow(
      'moves no files',
    );
  });
});

/** A text after edits, from the last one on. */
function applied(text: string, edits: readonly lsp.TextEdit[]): string {
  const lines = text.split('\n');
  const offset = ({ line, character }: lsp.Position): number => lines.slice(0, line).join('\n').length + (line > 0 ? 1 : 0) + character;
  return edits
    .toSorted((a, b) => offset(b.range.start) - offset(a.range.start))
    .reduce((now, { range, newText }) => now.slice(0, offset(range.start)) + newText + now.slice(offset(range.end)), text);
}

describe('a file', () => {
  test('has its fields, entries and headings in its outline, and folds', async () => {
    const client = await connected(journal());
    await client.open(NOTE);
    const textDocument = { uri: client.uri(NOTE) };
    const symbols = (await client.connection.sendRequest(lsp.DocumentSymbolRequest.type, { textDocument })) as lsp.DocumentSymbol[];
    expect(symbols.map(({ name, children = [] }) => [name, ...children.map((one) => one.name)].join(' '))).toEqual([
      'date',
      'title',
      'parts drum studs',
      'decisions drum',
      'bags 14',
      'opens bleed',
      'The drum',
    ]);
    const folds = await client.connection.sendRequest(lsp.FoldingRangeRequest.type, { textDocument });
    expect(folds?.map(({ startLine, endLine }) => [startLine, endLine])).toEqual([
      [0, 12],
      [3, 5],
      [6, 7],
      [8, 9],
      [10, 11],
      [13, 15],
    ]);
  });
});

test('a folder without a journal is told, and nothing else', async () => {
  const client = await connected(folderWith({ 'a.md': 'x' }));
  await client.open('a.md', 'x');
  expect(await client.connection.sendRequest(lsp.HoverRequest.type, client.spot('a.md', { line: 0, character: 0 }))).toBeNull();
});
