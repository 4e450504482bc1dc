import { describe, expect, test } from 'vitest';
import { ringArea } from '#shared/underlay/line-work';
import { readSvg } from '#shared/underlay/svg/read-svg';
import { pngFile } from '../../../support/picture-file.ts';
import { decode, hasPiece, layerNamed, piecesOf, placesOf, problemOf, quiet, readSvgText, textsOf } from '../../../support/underlay.ts';

const svg = (body: string, attributes = 'viewBox="0 0 100 50"') => readSvgText(`<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" ${attributes}>${body}</svg>`);
const stroked = 'fill="none" stroke="black"';

describe('shapes, y up from the page’s lower left', () => {
  test('lines, rectangles, polygons', () => {
    const drawing = svg(`<g ${stroked}><line x1="0" y1="0" x2="10" y2="0"/><rect x="20" y="10" width="30" height="20"/><polyline points="0,50 5,45 9,50"/><polygon points="60 0 70 0 70 10"/></g>`);
    expect(hasPiece(drawing, 0, 50, 10, 50)).toBe(true);
    expect(hasPiece(drawing, 20, 40, 50, 40)).toBe(true);
    expect(hasPiece(drawing, 20, 20, 50, 20)).toBe(true);
    expect(hasPiece(drawing, 5, 5, 9, 0)).toBe(true);
    expect(hasPiece(drawing, 70, 40, 60, 50)).toBe(true);
    expect(drawing.layers[0]?.closed).toHaveLength(2);
  });

  test('round ones', () => {
    const circle = svg(`<circle cx="50" cy="25" r="10" ${stroked}/>`);
    for (const [x, y] of placesOf(circle)) expect(Math.hypot(x - 50, y - 25)).toBeCloseTo(10, 9);
    const oval = svg(`<ellipse cx="50" cy="25" rx="20" ry="5" ${stroked}/>`);
    for (const [x, y] of placesOf(oval)) expect(((x - 50) / 20) ** 2 + ((y - 25) / 5) ** 2).toBeCloseTo(1, 9);
    const rounded = svg(`<rect x="0" y="0" width="40" height="20" rx="5" ${stroked}/>`);
    expect(Math.abs(ringArea(rounded.layers[0]?.closed[0] ?? []))).toBeCloseTo(800 - (4 - Math.PI) * 25, 0);
  });

  test('transforms nest', () => {
    expect(hasPiece(svg(`<g transform="translate(10,0)"><g transform="scale(2)"><path d="M0 0h5" ${stroked}/></g></g>`), 10, 50, 20, 50)).toBe(true);
  });

  test('a view box that does not begin at 0', () => {
    expect(hasPiece(svg(`<path d="M100 200h10" ${stroked}/>`, 'viewBox="100 200 50 50"'), 0, 50, 10, 50)).toBe(true);
  });

  test('no view box: the size is the page', () => {
    expect(hasPiece(svg(`<path d="M0 0h10" ${stroked}/>`, 'width="10mm" height="10mm"'), 0, 10 * (96 / 25.4), 10, 10 * (96 / 25.4))).toBe(true);
  });
});

describe('what shows', () => {
  test('nothing without paint, hidden, or defined only', () => {
    const shown = `<path d="M0 0h1" ${stroked}/>`;
    const hidden = ['<path d="M0 0h9" fill="none"/>', `<g display="none">${shown}</g>`, `<path d="M0 0h9" visibility="hidden" ${stroked}/>`, `<defs>${shown}</defs>`, `<path d="M0 0h9" stroke="white" fill="none"/>`, `<path d="M0 0h9" style="opacity:0" ${stroked}/>`, `<path d="M0 0h9" stroke-width="0" ${stroked}/>`];
    expect(piecesOf(svg(shown + hidden.join('')))).toHaveLength(1);
  });

  test('dark fills are filled, with holes by the rule of the path; light ones are outlines only', () => {
    const two = 'M0 0h10v10h-10z M2 2h6v6h-6z';
    expect(svg(`<path d="${two}"/>`).layers[0]?.fills.map((ring) => Math.abs(ringArea(ring)))).toEqual([100]);
    expect(svg(`<path d="${two}" fill-rule="evenodd"/>`).layers[0]?.fills.map((ring) => Math.abs(ringArea(ring)))).toEqual([64]);
    const light = svg(`<rect width="9" height="9" fill="#eee" stroke="black"/><rect width="50" height="50" fill="white"/>`);
    expect(light.layers[0]?.fills).toEqual([]);
    expect(piecesOf(light)).toHaveLength(4);
    expect(light.warnings.join()).toMatch(/Light and patterned fills/);
  });

  test('a style sheet in the file', () => {
    const drawing = svg('<style>.w{fill:none;stroke:#ff0000}</style><path class="w" d="M0 0h5"/>');
    expect(drawing.layers[0]).toMatchObject({ colour: '#ff0000' });
  });

  test('layers, one of them hidden', () => {
    const drawing = svg(`<g id="Walls" ${stroked}><path d="M0 0h5"/></g><g id="Old" style="display:none" ${stroked}><path d="M0 0h5"/></g><path d="M0 1h5" ${stroked}/>`);
    expect(drawing.layers.map(({ name, visible }) => [name, visible])).toEqual([['Walls', true], ['Old', false], ['0', true]]);
  });
});

describe('symbols', () => {
  test('placed, stretched into their rectangle, and in symbols', () => {
    const drawing = svg(
      `<defs><path id="arm" d="M0 0h4"/><g id="two"><use href="#arm"/><use xlink:href="#arm" y="2"/></g></defs><symbol id="s" viewBox="0 0 10 10"><path d="M0 0h10"/></symbol>
       <g ${stroked}><use href="#two" x="10" y="10" transform="scale(2)"/><use href="#s" x="50" y="0" width="20" height="20"/></g>`,
    );
    expect(hasPiece(drawing, 20, 30, 28, 30)).toBe(true);
    expect(hasPiece(drawing, 20, 26, 28, 26)).toBe(true);
    expect(hasPiece(drawing, 50, 50, 70, 50)).toBe(true);
  });

  test('one that contains itself, and ones that double without end', () => {
    expect(problemOf(() => svg('<g id="a"><use href="#a"/><path d="M0 0h1"/></g>')).what).toMatch(/contains itself/);
    const doubling = Array.from({ length: 28 }, (_, i) => `<g id="d${i}"><use href="#d${i + 1}"/><use href="#d${i + 1}"/></g>`).join('');
    expect(problemOf(() => svg(`<defs>${doubling}<path id="d28" d="M0 0h1"/></defs><use href="#d0"/>`)).what).toMatch(/without end/);
  });
});

describe('texts', () => {
  test('place, capitals 0.7 of the size, turned', () => {
    const [text] = svg('<text x="10" y="40" font-size="10" transform="rotate(-90 10 40)">Room <tspan font-weight="bold">12</tspan></text>').layers[0]?.texts ?? [];
    expect(text).toMatchObject({ x: expect.closeTo(10), y: expect.closeTo(10), height: expect.closeTo(7), text: 'Room 12' });
    expect(text?.rotation_rad).toBeCloseTo(Math.PI / 2);
  });
  test('rows', () => {
    const texts = svg('<text x="10" y="20" font-size="5"><tspan x="10">one</tspan><tspan x="10" dy="6">two</tspan></text>').layers[0]?.texts ?? [];
    expect(texts.map(({ text, x, y }) => [text, x, y])).toEqual([['one', 10, 30], ['two', 10, 24]]);
  });
  test('anchored in the middle it lies on both sides', () => {
    const [text] = svg('<text x="50" y="20" font-size="5" text-anchor="middle">ABCD</text>').layers[0]?.texts ?? [];
    expect(text?.x).toBeLessThan(50);
  });
});

describe('pictures', () => {
  const data = `data:image/png;base64,${Buffer.from(pngFile(40, 20)).toString('base64')}`;
  test('one in the file is fitted into its rectangle', () => {
    const drawing = svg(`<image x="10" y="10" width="40" height="40" href="${data}"/>`);
    expect(drawing.images[0]).toMatchObject({ width: 40, height: 20, matrix: [40, 0, 0, 20, 10, 10] });
  });
  test('one elsewhere is never fetched', () => {
    const drawing = svg(`<path d="M0 0h5" ${stroked}/><image width="40" height="40" href="http://example.invalid/a.png"/><image width="4" height="4" href="file:///etc/passwd"/>`);
    expect(drawing.images).toEqual([]);
    expect(drawing.warnings.join()).toMatch(/other files/);
  });
});

describe('what must not act', () => {
  test('scripts, web pages inside, parts of other files', () => {
    const drawing = svg(`<script>throw 1</script><foreignObject><body xmlns="http://www.w3.org/1999/xhtml">x</body></foreignObject><use href="other.svg#a"/><path d="M0 0h5" ${stroked} onclick="x()"/>`);
    expect(piecesOf(drawing)).toHaveLength(1);
    expect(drawing.warnings).toEqual(['The file holds a script; it was not run.', 'The file holds an embedded web page; it was left out.', 'Parts that lie in other files were not fetched.']);
  });
  test('other XML, and nothing at all', () => {
    expect(problemOf(() => readSvgText('<html><svg/></html>')).what).toMatch(/no SVG/);
    expect(problemOf(() => svg('')).what).toMatch(/nothing that can be drawn/);
  });
  test('numbers that are none draw nothing, and huge ones are refused', () => {
    expect(problemOf(() => svg(`<path d="MNaN 0L5 5" ${stroked}/>`)).what).toMatch(/nothing/);
    expect(problemOf(() => svg(`<path d="M0 0L1e300 1e300" ${stroked}/>`)).what).toMatch(/larger than anything/);
  });
});

test('text in UTF-16 and in an older encoding', () => {
  const text = '<svg viewBox="0 0 9 9"><text y="5">Tür</text></svg>';
  expect(textsOf(readSvg(new Uint8Array(Buffer.from(`\ufeff${text}`, 'utf16le')), decode, quiet))).toEqual(['Tür']);
  expect(textsOf(readSvg(new Uint8Array(Buffer.from(`<?xml version="1.0" encoding="ISO-8859-1"?>${text}`, 'latin1')), decode, quiet))).toEqual(['Tür']);
});

test('a prefixed document', () => {
  const drawing = readSvgText('<svg:svg xmlns:svg="http://www.w3.org/2000/svg" viewBox="0 0 9 9"><svg:g id="W"><svg:path d="M0 0h5" stroke="red" fill="none"/></svg:g></svg:svg>');
  expect(layerNamed(drawing, 'W').segments).toHaveLength(4);
});
