/** The state of each position in a line, for texts that name it, as a classic script: a script loads from a disk where a fetch does not. */
import { RECORD_SCRIPTS } from '../../site/addresses.ts';
import { sheetAt } from '../../site/views/page/sheet.ts';
import { stateLines } from '../../site/views/register/state-words.ts';

export async function GET(): Promise<Response> {
  const states = Object.fromEntries(stateLines(await sheetAt(RECORD_SCRIPTS.states)));
  const script = `globalThis.asfoundStates = ${JSON.stringify(states)};\n`;
  return new Response(script, { headers: { 'content-type': 'text/javascript; charset=utf-8' } });
}
