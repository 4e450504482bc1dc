import PDFDocument from 'pdfkit';

/** A file as the file field gets it. */
export interface GivenFile {
  readonly name: string;
  readonly mimeType: string;
  readonly buffer: Buffer;
}

const given = (name: string, buffer: Buffer, mimeType = 'application/octet-stream'): GivenFile => ({ name, mimeType, buffer });

/** A floor plan in a PDF that opens with a password only. */
export async function lockedPdf(): Promise<GivenFile> {
  const document = new PDFDocument({ userPassword: 'weir', ownerPassword: 'lock', pdfVersion: '1.7' });
  const parts: Buffer[] = [];
  document.on('data', (part: Buffer) => parts.push(part));
  const ended = new Promise<void>((done) => document.on('end', done));
  document.rect(50, 50, 300, 200).stroke();
  document.end();
  await ended;
  return given('locked.pdf', Buffer.concat(parts), 'application/pdf');
}

/** The first bytes of a drawing in a closed binary form, as they stand in such files. */
export const dwgFile = (): GivenFile => given('plan.dwg', Buffer.concat([Buffer.from('AC1032', 'latin1'), Buffer.alloc(122)]));

/** A DXF in its binary form: its sentinel and the beginning of a section. */
export const binaryDxf = (): GivenFile => given('plan.dxf', Buffer.concat([Buffer.from('........ Binary DXF\r\n\x1a\0', 'latin1'), Buffer.from([0, 0]), Buffer.from('SECTION\0', 'latin1')]));

/** An SVG that tries to run a script when it is looked at, in two ways. */
export const scriptedSvg = (): GivenFile =>
  given(
    'scripted.svg',
    Buffer.from(
      `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 600 400" onload="document.title='taken over'"><script>document.title='taken over'</script><path d="M10 10H590V390H10Z" fill="none" stroke="#000"/></svg>`,
    ),
    'image/svg+xml',
  );

/** A file without a byte. */
export const emptyFile = (): GivenFile => given('empty.dxf', Buffer.alloc(0));

/** A plan file that was cut off half way, as by a broken copy. */
export const cutOff = (whole: Buffer): GivenFile => given('cut off.nzw', whole.subarray(0, whole.length >> 1), 'application/zip');
