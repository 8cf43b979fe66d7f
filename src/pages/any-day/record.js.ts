/** The journal for the page of any day, as a classic script: a script loads from a disk where a fetch does not. */
import { theRecord } from '../../site/record.ts';
import { carriedJournal } from '../../site/views/any-day/carried-journal.ts';

export async function GET(): Promise<Response> {
  const script = `globalThis.asfoundJournal = ${JSON.stringify(carriedJournal(await theRecord()))};\n`;
  return new Response(script, { headers: { 'content-type': 'text/javascript; charset=utf-8' } });
}
