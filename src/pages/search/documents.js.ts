/** What the search page searches, as a classic script: a script loads from a disk where a fetch does not. */
import { PAGES } from '../../site/addresses.ts';
import { sheetAt } from '../../site/views/page/sheet.ts';
import { searchDocuments } from '../../site/views/search/search-documents.ts';

export async function GET(): Promise<Response> {
  const documents = searchDocuments(await sheetAt(PAGES.search));
  const script = `globalThis.asfoundDocuments = ${JSON.stringify(documents)};\n`;
  return new Response(script, { headers: { 'content-type': 'text/javascript; charset=utf-8' } });
}
