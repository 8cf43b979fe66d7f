/** Serving a journal: compile, watch, and show every change or what is wrong with it. */

import { join, resolve, sep } from 'node:path';
import type { AstroIntegration } from 'astro';
import type { Diagnostic } from '../journal/diagnostics/diagnostic.ts';
import { formatDiagnostics, PLAIN } from '../journal/diagnostics/format.ts';
import { type MadeBefore, nothingMade } from '../journal/pipeline.ts';
import type { JournalRecord } from '../journal/record.ts';
import type { LoadedSources } from '../load/load.ts';
import { openNoteStore } from '../markdown/note-store.ts';
import { picturesAsKnown } from '../photos/pictures.ts';
import { NO_PICTURES, type PicturePlan } from '../photos/plan.ts';
import { type OnDemand, renderOnDemand } from '../photos/render-on-demand.ts';
import { serveWithAstro } from '../site/astro.ts';
import { cacheFolder } from '../site/cache-folder.ts';
import { hasErrors } from '../site/check-journal.ts';
import { writeScripts } from '../site/client-scripts.ts';
import { editionStore } from '../site/edition-store.ts';
import { setRecord } from '../site/record.ts';
import { servedRecord } from '../site/site-record.ts';
import { PROGRAM } from '../site/tool-digest.ts';
import { openWorkshop } from '../site/workshop.ts';
import { afterChanges } from './after-changes.ts';
import type { Effects } from './effects.ts';
import { reportProblems } from './report.ts';
import { answer, refuseMalformed } from './serve-files.ts';
import { checkLoaded, loadFolder, type OpenedJournal, shownFrom } from './the-journal.ts';

export interface Serve {
  readonly folder: string;
  readonly port: number;
  readonly host: string;
}

export interface Served {
  readonly folder: string;
  readonly cache: string;
  /** Scripts, served from here. */
  readonly files: string;
  /** Pictures are rendered when a page asks for them. */
  readonly pictures: OnDemand;
  plan: PicturePlan;
  /** Rendered notes by what they were made from. */
  readonly kept: Map<string, string>;
  sources: LoadedSources | null;
  readonly made: MadeBefore;
  record: JournalRecord | null;
  problems: readonly Diagnostic[];
}

/** Serves until the process is stopped. */
export async function serveJournal({ folder, port, host }: Serve, effects: Effects): Promise<void> {
  const cache = cacheFolder(effects.env);
  const workshop = openWorkshop(cache);
  const files = join(workshop.folder, 'served');
  // The server may end the process by itself when that is told to end.
  process.once('exit', () => workshop.close());
  const pictures = renderOnDemand(folder, cache);
  const served: Served = {
    folder,
    cache,
    files,
    pictures,
    plan: NO_PICTURES,
    kept: new Map(openNoteStore(cache, folder).kept),
    sources: null,
    made: nothingMade(),
    record: null,
    problems: [],
  };
  const first = await refresh(served, effects);
  await writeScripts(join(files, 'scripts'), editionStore(cache));
  const server = await serveWithAstro(workshop, { server: { port, host }, integrations: [watcher(served, effects)] });
  effects.err(`The journal is at http://${host}:${server.address.port}/${first ? '' : ' as soon as its errors are mended'}\n`);
  await new Promise<void>((stop) => {
    for (const signal of ['SIGINT', 'SIGTERM'] as const) process.once(signal, () => stop());
  });
  openNoteStore(cache, folder).save(served.kept);
  await served.pictures.close();
  await server.stop();
}

/** Compiles what is on disk now. @returns whether the pages now show it */
async function refresh(served: Served, effects: Effects): Promise<boolean> {
  const opened = await checkLoaded(loadFolder(served.folder, served.sources), effects, null, served.made);
  served.sources = opened.sources;
  served.problems = opened.diagnostics.filter((each) => each.severity === 'error');
  reportProblems(opened, effects);
  if (opened.record === null || hasErrors(opened.diagnostics)) {
    if (served.record === null && opened.record !== null) await show(served, opened, opened.record);
    return false;
  }
  await show(served, opened, opened.record);
  return true;
}

async function show(served: Served, opened: OpenedJournal, record: JournalRecord): Promise<void> {
  const places = { root: served.folder, cache: served.cache };
  const plan = await picturesAsKnown(record.journal, places);
  served.record = record;
  served.plan = plan;
  setRecord(servedRecord(record, plan, opened.diagnostics, served.kept));
}

function watcher(served: Served, effects: Effects): AstroIntegration {
  let first: () => void = () => undefined;
  return {
    name: 'journal',
    hooks: {
      'astro:server:start': () => first(),
      'astro:server:setup': ({ server }) => {
        const client = server.environments.client.hot;
        const overlay = () => client.send({ type: 'error', err: overlayOf(served, effects) });
        client.on('vite:client:connect', () => {
          if (served.problems.length > 0) overlay();
        });
        const follow = afterChanges(() => refreshAndShow(served, effects, server, overlay), QUIET);
        // First of all when the rest stands, since Astro reads addresses before us and shows its code where one is badly encoded.
        first = () => server.middlewares.stack.unshift({ route: '', handle: refuseMalformed });
        server.middlewares.use((request, response, next) => {
          // A page that is asked for right after a change waits for it: it may be told of it before it can listen.
          void follow
            .settled()
            .then(() => answer(served, request, response))
            .then((asked) => {
              if (asked === null) return;
              request.url = asked;
              next();
            })
            .catch(next);
        });
        server.watcher.add(served.folder);
        for (const event of ['add', 'change', 'unlink'] as const) {
          server.watcher.on(event, (path) => {
            if (resolve(path).startsWith(served.folder + sep)) follow.touch();
          });
        }
      },
    },
  };
}

/** Editors write a file in several steps; this long after the last of them it is read. */
const QUIET = 20;

async function refreshAndShow(served: Served, effects: Effects, server: Server, overlay: () => void): Promise<void> {
  try {
    const shown = await refresh(served, effects);
    forgetRoutes(server);
    if (shown) server.environments.client.hot.send({ type: 'full-reload', path: '*' });
    else overlay();
  } catch (error) {
    effects.err(`asfound: ${(error as Error).message}\n`);
  }
}

type Server = Parameters<NonNullable<AstroIntegration['hooks']['astro:server:setup']>>[0]['server'];

/** The pages' modules are read again, so that the list of addresses they make is made again. */
function forgetRoutes(server: Server): void {
  for (const environment of Object.values(server.environments)) {
    for (const [file, modules] of environment.moduleGraph.fileToModulesMap) {
      if (!file.startsWith(join(PROGRAM, 'src/pages'))) continue;
      for (const module of modules) environment.moduleGraph.invalidateModule(module);
    }
  }
}

function overlayOf(served: Served, effects: Effects) {
  const [first] = served.problems;
  const bytes = new Map(served.sources?.files.map((file) => [file.path, file.bytes]));
  const decoder = new TextDecoder();
  const message = formatDiagnostics(served.problems, {
    paint: PLAIN,
    sourceOf: (file) => (bytes.has(file) ? decoder.decode(bytes.get(file)) : null),
    pathOf: shownFrom(effects.cwd, served.folder),
  });
  const loc = first ? { file: join(served.folder, first.place.file), line: first.place.line, column: first.place.column } : undefined;
  return { message, stack: '', ...(loc ? { loc } : {}) };
}
