import type { StatementDocument } from './statement-document.ts';
import { type Setting, statementSheet } from './statement-sheet.ts';
import { typeset } from './typeset.ts';

export interface PrintedStatement {
  readonly pdf: Uint8Array;
  readonly pages: number;
}

/** A client statement as a PDF on A4, set tighter where that saves a page. */
export function printedStatement(document: StatementDocument): PrintedStatement {
  const loose = inSetting(document, 'loose');
  if (loose.pages === 1) return loose;
  const tight = inSetting(document, 'tight');
  return tight.pages < loose.pages ? tight : loose;
}

function inSetting(document: StatementDocument, setting: Setting): PrintedStatement {
  const { pdf, cut } = typeset(statementSheet(document, setting));
  return { pdf, pages: Number(cut[0]) };
}
