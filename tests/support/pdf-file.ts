/** A PDF written by hand: objects in order, the first is the catalogue, the second the list of pages. */
export function pdfFile(objects: readonly string[], options: { readonly trailer?: string } = {}): Uint8Array {
  let text = '%PDF-1.7\n';
  const offsets = objects.map((object, i) => {
    const at = text.length;
    text += `${i + 1} 0 obj\n${object}\nendobj\n`;
    return at;
  });
  const table = text.length;
  text += `xref\n0 ${objects.length + 1}\n0000000000 65535 f \n${offsets.map((at) => `${String(at).padStart(10, '0')} 00000 n \n`).join('')}`;
  text += `trailer\n<< /Size ${objects.length + 1} /Root 1 0 R ${options.trailer ?? ''} >>\nstartxref\n${table}\n%%EOF\n`;
  return new Uint8Array(Buffer.from(text, 'latin1'));
}

export const stream = (content: string, dictionary = ''): string => `<< /Length ${content.length} ${dictionary} >>\nstream\n${content}\nendstream`;

export interface PageParts {
  readonly content: string;
  /** Entries of the page's own dictionary. */
  readonly page?: string;
  /** Entries of its resources; objects from 5 on are `more`. */
  readonly resources?: string;
  readonly catalogue?: string;
  readonly more?: readonly string[];
}

/** A PDF of one page, 200 × 100 points unless told otherwise, with a Helvetica called /F1. */
export const pdfPage = ({ content, page = '/MediaBox [0 0 200 100]', resources = '', catalogue = '', more = [] }: PageParts): Uint8Array =>
  pdfFile([
    `<< /Type /Catalog /Pages 2 0 R ${catalogue} >>`,
    '<< /Type /Pages /Kids [3 0 R] /Count 1 >>',
    `<< /Type /Page /Parent 2 0 R ${page} /Contents 4 0 R /Resources << /Font << /F1 << /Type /Font /Subtype /Type1 /BaseFont /Helvetica >> >> ${resources} >> >>`,
    stream(content),
    ...more,
  ]);
