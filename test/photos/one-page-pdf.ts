/** A PDF of one page, 200 by 100 points: its left half red, its right half blue (ISO 32000-1, 7.5). */
export function onePagePdf(author = 'Nobody'): Buffer {
  const drawing = '1 0 0 rg 0 0 100 100 re f 0 0 1 rg 100 0 100 100 re f';
  const objects = [
    '<< /Type /Catalog /Pages 2 0 R >>',
    '<< /Type /Pages /Kids [3 0 R] /Count 1 >>',
    '<< /Type /Page /Parent 2 0 R /MediaBox [0 0 200 100] /Contents 4 0 R >>',
    `<< /Length ${drawing.length} >>\nstream\n${drawing}\nendstream`,
    `<< /Author (${author}) >>`,
  ];
  let text = '%PDF-1.4\n';
  const offsets = objects.map((body, index) => {
    const at = text.length;
    text += `${index + 1} 0 obj\n${body}\nendobj\n`;
    return at;
  });
  const table = offsets.map((at) => `${String(at).padStart(10, '0')} 00000 n \n`).join('');
  const size = objects.length + 1;
  const trailer = `trailer\n<< /Size ${size} /Root 1 0 R /Info 5 0 R >>\nstartxref\n${text.length}\n%%EOF\n`;
  return Buffer.from(`${text}xref\n0 ${size}\n0000000000 65535 f \n${table}${trailer}`, 'latin1');
}
