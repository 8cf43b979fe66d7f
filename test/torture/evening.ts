/** An evening at the page to write on, as a phone sends it: a draft, two pictures and a paper, the note, and a correction of another one. */
import { onePagePdf } from '../photos/one-page-pdf.ts';
import { pictureAt, type Started, start } from './stand.ts';

/** The same at each start, so that what was sent before is sent again. */
const [KEY, FIX, WRITER] = ['00000000000000aa', '00000000000000bb', '00000000000000cc'];
const FIXED = 'sessions/2031-03-02-drum.md';
/** Stands in the note that is corrected when it has been. */
export const CORRECTION = 'Off it came, with two pulls.';

/** Serves the page, sends the evening, and stops it as one does with Ctrl-C; whatever happens to either meanwhile. */
export function writingAnEvening(cwd: string, env: NodeJS.ProcessEnv = {}, node: readonly string[] = []): Started {
  const started = start(['write', '--content', 'van', '--port', '0'], cwd, env, node);
  const sent = addressOf(started)
    .then(sendAll)
    .catch(() => undefined)
    .finally(() => started.child.kill('SIGINT'));
  const ended = Promise.all([started.ended, sent]).then(([how]) => how);
  return { child: started.child, ended };
}

function addressOf({ child, ended }: Started): Promise<URL> {
  return new Promise((resolve, reject) => {
    let said = '';
    child.stderr?.on('data', (text) => {
      said += String(text);
      const address = /Write at (http:\S+)\n/.exec(said)?.[1];
      if (address !== undefined) resolve(new URL(address));
    });
    void ended.then(() => reject(new Error('it ended')));
  });
}

async function sendAll(address: URL): Promise<void> {
  const ask = async (method: string, path: string, body?: string | Uint8Array<ArrayBuffer>): Promise<string> => {
    const headers = { Authorization: `Bearer ${address.hash.slice(1)}`, Origin: address.origin };
    const response = await fetch(new URL(`/api/${path}`, address), { method, headers, ...(body === undefined ? {} : { body }) });
    return response.text();
  };
  const draft = { key: KEY, revision: 0, writer: WRITER, corrects: null, became: null, prose: 'Written by thumb.' };
  const fields = { date: '2031-03-12', title: 'By thumb', pictures: [{ file: 'drum.jpg', caption: 'The drum' }] };
  await ask('GET', 'journal');
  await ask('PUT', `drafts/${KEY}`, JSON.stringify({ ...draft, fields }));
  await ask('PUT', `drafts/${KEY}/picture?name=drum.jpg`, new Uint8Array(await pictureAt('2031:03:12 20:00:00', 300)));
  await ask('PUT', `drafts/${KEY}/picture?name=hub.jpg`, new Uint8Array(await pictureAt('2031:03:12 20:05:00', 310)));
  await ask('PUT', `drafts/${KEY}/paper?name=seller.pdf`, new Uint8Array(onePagePdf('A seller')));
  await ask(
    'PUT',
    `drafts/${KEY}`,
    JSON.stringify({ ...draft, fields: { ...fields, papers: [{ paper: 'seller.pdf', kind: 'receipt' }] } }),
  );
  await ask('POST', `drafts/${KEY}/note`);
  const { digest, says } = JSON.parse(await ask('GET', `note?path=${FIXED}`));
  const fix = { ...draft, key: FIX, corrects: { path: FIXED, digest }, fields: says.fields, prose: CORRECTION };
  await ask('PUT', `drafts/${FIX}`, JSON.stringify(fix));
  await ask('POST', `drafts/${FIX}/note`);
  await ask('DELETE', `drafts/${FIX}`);
}
