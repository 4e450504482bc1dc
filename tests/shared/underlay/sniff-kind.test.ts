import { describe, expect, test } from 'vitest';
import { sniffKind } from '#shared/underlay/sniff-kind';
import { problemOf } from '../../support/underlay.ts';

const bytes = (text: string): Uint8Array => new Uint8Array(Buffer.from(text, 'latin1'));

describe('kinds that are read, whatever the name', () => {
  test.each([
    ['dxf', '  0\r\nSECTION\r\n  2\r\nHEADER\r\n'],
    ['dxf', '999\nmade by hand\n0\nSECTION\n2\nENTITIES\n'],
    ['dxf', '\xef\xbb\xbf0\nSECTION\n'],
    ['pdf', '%PDF-1.7\n'],
    ['pdf', 'junk before\n%PDF-1.4\n'],
    ['svg', '<?xml version="1.0"?>\n<!-- x -->\n<svg xmlns="http://www.w3.org/2000/svg"/>'],
    ['svg', '\xef\xbb\xbf<svg:svg xmlns:svg="http://www.w3.org/2000/svg"/>'],
    ['svg', '\xff\xfe<\0s\0v\0g\0 \0/\0>\0'],
    ['png', '\x89PNG\r\n\x1a\n....'],
    ['jpeg', '\xff\xd8\xff\xe0....'],
  ])('%s', (kind, text) => expect(sniffKind(bytes(text), 'plan.txt')).toBe(kind));
});

describe('kinds that are not read: what it is and what to do', () => {
  test.each([
    ['AC1032\0\0\0\0', /DWG/, /Save it as ASCII DXF/],
    ['........ Binary DXF\r\n\x1a\0', /binary DXF/, /ASCII DXF/],
    ['II*\0....', /TIFF/, /PNG or JPEG/],
    ['MM\0*....', /TIFF/, /PNG or JPEG/],
    ['\0\0\0\x18ftypheic', /HEIC/, /PNG or JPEG/],
    ['GIF89a', /GIF/, /PNG/],
    ['RIFF\0\0\0\0WEBP', /WebP/, /PNG/],
    ['BM\x36\0\0\0\0\0\0\0', /BMP/, /PNG/],
    ['PK\x03\x04', /ZIP/, /Unpack/],
    ['\x1f\x8b\x08', /gzip/, /Unpack/],
    ['%!PS-3.0', /PostScript/, /PDF/],
    ['ISO-10303-21;', /building model/, /DXF, PDF or SVG/],
    ['<!DOCTYPE html><html>', /web page/, /Download/],
    ['hello', /not a floor plan/, /DXF/],
    ['', /empty/, /another file/],
  ])('%j', (text, what, remedy) => {
    const problem = problemOf(() => sniffKind(bytes(text), 'plan.dxf'));
    expect(problem.what).toMatch(what);
    expect(problem.remedy).toMatch(remedy);
    expect(problem.where).toBe('plan.dxf');
  });
});
