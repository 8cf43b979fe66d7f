import { deflateSync } from 'node:zlib';

/**
 * A PDF of these objects, numbered from 1, the first of which is its catalogue (ISO 32000-1, 7.5).
 *
 * @param trailer more of its trailer
 */
export function pdfOf(objects: readonly (string | Buffer)[], trailer = ''): Buffer {
  const pieces = [Buffer.from('%PDF-1.4\n')];
  let at = 9;
  const offsets = objects.map((body, index) => {
    const piece = Buffer.concat([Buffer.from(`${index + 1} 0 obj\n`), Buffer.from(body as string, 'latin1'), Buffer.from('\nendobj\n')]);
    pieces.push(piece);
    at += piece.length;
    return at - piece.length;
  });
  const table = offsets.map((offset) => `${String(offset).padStart(10, '0')} 00000 n \n`).join('');
  const size = objects.length + 1;
  const end = `trailer\n<< /Size ${size} /Root 1 0 R ${trailer}>>\nstartxref\n${at}\n%%EOF\n`;
  return Buffer.concat([...pieces, Buffer.from(`xref\n0 ${size}\n0000000000 65535 f \n${table}${end}`)]);
}

export function streamOf(bytes: Buffer, dictionary = ''): Buffer {
  return Buffer.concat([Buffer.from(`<< ${dictionary}/Length ${bytes.length} >>\nstream\n`), bytes, Buffer.from('\nendstream')]);
}

/** @param size of its page in points, `width height` */
export function pageDrawnBy(drawing: Buffer, size = '200 100'): string[] {
  return [
    '<< /Type /Catalog /Pages 2 0 R >>',
    '<< /Type /Pages /Kids [3 0 R] /Count 1 >>',
    `<< /Type /Page /Parent 2 0 R /MediaBox [0 0 ${size}] /Contents 4 0 R >>`,
    drawing.toString('latin1'),
  ];
}

/**
 * A PDF of one page: its left half red, its right half blue.
 *
 * @param size of its page in points, `width height`; a low one is drawn sooner
 */
export function onePagePdf(author = 'Nobody', size = '200 100'): Buffer {
  const drawing = Buffer.from('1 0 0 rg 0 0 100 100 re f 0 0 1 rg 100 0 100 100 re f');
  return pdfOf([...pageDrawnBy(streamOf(drawing), size), `<< /Author (${author}) >>`], '/Info 5 0 R ');
}

/** One whose page is drawn by so many megabytes, the same again and again, packed into a thousandth of that. */
export function packedPdf(megabytes: number, drawing = '1 0 0 rg 0 0 200 100 re f '): Buffer {
  const packed = deflateSync(Buffer.alloc(megabytes * 1024 * 1024, drawing), { level: 9 });
  return pdfOf(pageDrawnBy(streamOf(packed, '/Filter /FlateDecode ')));
}
