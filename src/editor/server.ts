/** The language server: LSP 3.17 over a pair of streams. What it answers stands in `answers`; this is only who asks what. */
import { dirname, relative, resolve, sep } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import {
  type Connection,
  DidChangeWatchedFilesNotification,
  type InitializeParams,
  type InitializeResult,
  LSPErrorCodes,
  MessageType,
  ResponseError,
  ShowMessageNotification,
  TextDocumentSyncKind,
  TextDocuments,
} from 'vscode-languageserver';
import { TextDocument } from 'vscode-languageserver-textdocument';
import type { Refused } from '../journal/mentions/renaming.ts';
import type { IsoDate } from '../journal/model.ts';
import { completionsAt } from './answers/completion.ts';
import { faultsByFile, repairsIn } from './answers/faults.ts';
import { hoverAt } from './answers/hover.ts';
import { definitionsAt, mentionsAt, renameAt, renamedAt } from './answers/naming.ts';
import { foldingOf, outlineOf } from './answers/outline.ts';
import type { Spot } from './answers/ranges.ts';
import { Workspace } from './workspace.ts';

export interface ServerOptions {
  /** The journal among the folders that the editor has open, given as absolute paths; null where none of them is one. */
  journalIn(folders: readonly string[]): string | null;
  today(): IsoDate;
}

/** While one types, faults are told when one pauses for so long. */
const PAUSE_MS = 20;

/** Answers on a connection until it ends. */
export function serve(connection: Connection, options: ServerOptions): void {
  const documents = new TextDocuments(TextDocument);
  const server = new Server(connection, documents);
  connection.onInitialize((params) => {
    server.begin(options.journalIn(foldersOf(params)), options, params);
    return WHAT_IT_DOES;
  });
  connection.onInitialized(() => server.watch());
  documents.onDidChangeContent(({ document }) => server.typed(document.uri, document.getText()));
  documents.onDidClose(({ document }) => server.typed(document.uri, null));
  documents.onDidSave(() => server.reload());
  connection.onDidChangeWatchedFiles(() => server.reload());
  answer(connection, server);
  documents.listen(connection);
  connection.listen();
}

const WHAT_IT_DOES: InitializeResult = {
  capabilities: {
    textDocumentSync: { openClose: true, change: TextDocumentSyncKind.Incremental, save: true },
    completionProvider: { triggerCharacters: [' ', ':', '[', '{', ',', '('] },
    hoverProvider: true,
    definitionProvider: true,
    referencesProvider: true,
    renameProvider: { prepareProvider: true },
    codeActionProvider: { codeActionKinds: ['quickfix'] },
    documentSymbolProvider: true,
    foldingRangeProvider: true,
  },
  serverInfo: { name: 'asfound' },
};

/**
 * The folders that the editor has open. `rootUri` is deprecated, and an editor that knows no workspace folders sends nothing
 * else; one that sends neither has opened files alone, and the journal is looked for above the first of them.
 */
function foldersOf({ workspaceFolders, rootUri }: InitializeParams): string[] {
  const addresses = workspaceFolders?.map(({ uri }) => uri) ?? (rootUri ? [rootUri] : []);
  return addresses.filter((uri) => uri.startsWith('file:')).map((uri) => fileURLToPath(uri));
}

type Asked = { readonly textDocument: { readonly uri: string }; readonly position: Spot['position'] };

function answer(connection: Connection, server: Server): void {
  const { addressOf } = server;
  connection.onCompletion((asked) => server.ofSpot(asked, (workspace, spot) => completionsAt(workspace.whileTyping, spot), []));
  connection.onHover((asked) => server.ofSpot(asked, ({ state }, spot) => hoverAt(state, spot), null));
  connection.onDefinition((asked) => server.ofSpot(asked, ({ state }, spot) => definitionsAt(state, spot, addressOf), []));
  connection.onReferences((asked) =>
    server.ofSpot(asked, ({ state }, spot) => mentionsAt(state, spot, asked.context.includeDeclaration, addressOf), []),
  );
  connection.onPrepareRename((asked) => server.ofSpot(asked, ({ state }, spot) => orRefuse(renamedAt(state, spot)), null));
  connection.onRenameRequest((asked) => server.ofSpot(asked, (_, spot) => server.rename(spot, asked.newName), null));
  connection.onCodeAction(({ textDocument, range }) =>
    server.ofFile(textDocument.uri, ({ state }, path) => repairsIn(state, path, range, addressOf), []),
  );
  connection.onDocumentSymbol(({ textDocument }) => server.ofFile(textDocument.uri, ({ state }, path) => outlineOf(state, path), []));
  connection.onFoldingRanges(({ textDocument }) => server.ofFile(textDocument.uri, ({ state }, path) => foldingOf(state, path), []));
}

function orRefuse<T extends object>(result: T | Refused): T {
  if (!('problem' in result)) return result;
  throw new ResponseError(LSPErrorCodes.RequestFailed, [result.problem, result.hint].filter(Boolean).join(' '));
}

/** The journal that an editor has open, and what has been told of it. */
class Server {
  readonly #connection: Connection;
  readonly #documents: TextDocuments<TextDocument>;
  #workspace: Workspace | null = null;
  #options: ServerOptions | null = null;
  #mayMove = false;
  #mayWatch = false;
  #pause: NodeJS.Timeout | null = null;
  #told = new Map<string, string>();

  constructor(connection: Connection, documents: TextDocuments<TextDocument>) {
    this.#connection = connection;
    this.#documents = documents;
  }

  begin(folder: string | null, options: ServerOptions, { capabilities }: InitializeParams): void {
    this.#options = options;
    this.#mayMove = capabilities.workspace?.workspaceEdit?.resourceOperations?.includes('rename') === true;
    this.#mayWatch = capabilities.workspace?.didChangeWatchedFiles?.dynamicRegistration === true;
    if (folder === null) return;
    this.#workspace = new Workspace(folder, options.today);
    this.#later();
  }

  /** The journal above a file that was opened, for editors that open no folder. */
  #beginAbove(uri: string): void {
    if (this.#options === null || !uri.startsWith('file:')) return;
    const above: string[] = [];
    for (let at = dirname(fileURLToPath(uri)); at !== above.at(-1); at = dirname(at)) above.push(at);
    const folder = this.#options.journalIn(above);
    if (folder === null) return;
    this.#workspace = new Workspace(folder, this.#options.today);
    this.watch();
  }

  /** Other programs write notes too; an editor that can says so. */
  watch(): void {
    if (this.#workspace === null) {
      const message =
        'No folder with a journal.yaml is open. Open the folder of the journal, or a file of it, or start the server with `--content DIR`.';
      void this.#connection.sendNotification(ShowMessageNotification.type, { type: MessageType.Warning, message });
    } else if (this.#mayWatch) {
      const watchers = [{ globPattern: '**/*' }];
      // An editor that refuses after all is told of what it saves itself.
      this.#connection.client.register(DidChangeWatchedFilesNotification.type, { watchers }).catch(() => undefined);
    }
  }

  typed(uri: string, text: string | null): void {
    if (this.#workspace === null && text !== null) this.#beginAbove(uri);
    const path = this.#pathOf(uri);
    if (path === null) return;
    this.#workspace?.typed(path, text);
    this.#later();
  }

  reload(): void {
    this.#workspace?.reload();
    this.#later();
  }

  ofFile<T>(uri: string, answered: (workspace: Workspace, path: string) => T, nothing: T): T {
    const path = this.#pathOf(uri);
    return this.#workspace === null || path === null ? nothing : answered(this.#workspace, path);
  }

  ofSpot<T>({ textDocument, position }: Asked, answered: (workspace: Workspace, spot: Spot) => T, nothing: T): T {
    return this.ofFile(textDocument.uri, (workspace, path) => answered(workspace, { path, position }), nothing);
  }

  rename(spot: Spot, to: string) {
    const workspace = this.#workspace;
    if (workspace === null) return null;
    const edit = orRefuse(renameAt(workspace.state, spot, to, this.addressOf));
    if (edit.documentChanges !== undefined && !this.#mayMove) {
      throw new ResponseError(
        LSPErrorCodes.RequestFailed,
        'Its catalogue is a file of that name, and this editor moves no files: `asfound rename` does.',
      );
    }
    return edit;
  }

  readonly addressOf = (path: string): string => pathToFileURL(resolve(this.#workspace?.folder ?? '', path)).href;

  #pathOf(uri: string): string | null {
    if (this.#workspace === null || !uri.startsWith('file:')) return null;
    const path = relative(this.#workspace.folder, fileURLToPath(uri)).split(sep).join('/');
    return path === '' || path.startsWith('../') ? null : path;
  }

  /** Tells the faults when no more is typed for a moment. */
  #later(): void {
    if (this.#pause !== null) clearTimeout(this.#pause);
    this.#pause = setTimeout(() => this.#tell(), PAUSE_MS);
  }

  /** Of files whose faults are the same as before nothing is told again. */
  #tell(): void {
    if (this.#workspace === null) return;
    const found = new Map([...faultsByFile(this.#workspace.state, this.addressOf)].map(([path, faults]) => [this.addressOf(path), faults]));
    for (const uri of new Set([...this.#told.keys(), ...found.keys()])) {
      const diagnostics = found.get(uri) ?? [];
      const now = JSON.stringify(diagnostics);
      if (now === (this.#told.get(uri) ?? '[]')) continue;
      this.#told.set(uri, now);
      const version = this.#documents.get(uri)?.version;
      void this.#connection.sendDiagnostics({ uri, diagnostics, ...(version !== undefined && { version }) });
    }
  }
}
