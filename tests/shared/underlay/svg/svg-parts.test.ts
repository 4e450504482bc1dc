import { describe, expect, test } from 'vitest';
import { multiply, scaleBy, shiftBy, transformed } from '#shared/underlay/matrix';
import { base64Bytes } from '#shared/underlay/svg/base64';
import { paintOf } from '#shared/underlay/svg/colours';
import { findLayers } from '#shared/underlay/svg/find-layers';
import { lengthOf, lengthParts } from '#shared/underlay/svg/length';
import { parseXml } from '#shared/underlay/svg/parse-xml';
import { StyleSheet, styleOf } from '#shared/underlay/svg/style';
import { transformOf } from '#shared/underlay/svg/transform-list';
import { fitViewBox, viewBoxOf } from '#shared/underlay/svg/view-box';

const element = (text: string) => parseXml(text, () => undefined);

describe('paints', () => {
  test.each([
    ['#123', '#112233'],
    ['#AbCdEf', '#abcdef'],
    ['#11223344', '#112233'],
    ['rgb(255, 0, 10)', '#ff000a'],
    ['rgb(100%,0%,0%)', '#ff0000'],
    ['rgba(1,2,3,0)', 'none'],
    ['DarkSlateGray', '#2f4f4f'],
    ['rebeccapurple', '#663399'],
    ['none', 'none'],
    ['url(#g)', 'pattern'],
    ['no such colour', '#000000'],
  ])('%s is %s', (text, paint) => expect(paintOf(text)).toBe(paint));
});

describe('lengths, by CSS: an inch is 96 px, 2.54 cm, 72 pt, 6 pc', () => {
  test.each([['5', 5], ['1in', 96], ['25.4mm', 96], ['72pt', 96], ['6pc', 96], ['101.6Q', 96], ['50%', 100], ['2em', 20], ['1ex', 5], ['x', -1], ['3furlong', -1]])('%s', (text, value) => {
    expect(lengthOf(text, -1, 200, 10)).toBeCloseTo(value, 9);
  });
  test('taken apart', () => expect(lengthParts('785.813mm')).toEqual({ value: 785.813, unit: 'mm' }));
});

describe('transforms', () => {
  test('lists are done from right to left', () => {
    expect(transformOf('translate(10,20) scale(2)')).toEqual(multiply(shiftBy(10, 20), scaleBy(2, 2)));
    expect([...transformed(transformOf('rotate(90 10 0)'), [20, 0])]).toEqual([expect.closeTo(10), expect.closeTo(10)]);
    expect(transformOf('matrix(1 2 3 4 5 6)')).toEqual([1, 2, 3, 4, 5, 6]);
    expect(transformOf('skewX(45)')[2]).toBeCloseTo(1);
    expect(transformOf('nonsense(3) matrix(1,2)')).toEqual([1, 0, 0, 1, 0, 0]);
  });
});

describe('view boxes', () => {
  const into = { x: 10, y: 0, width: 200, height: 100 };
  test('whole and centred unless told otherwise', () => {
    expect(fitViewBox({ x: 0, y: 0, width: 100, height: 100 }, into, undefined)).toEqual([1, 0, 0, 1, 60, 0]);
    expect(fitViewBox({ x: 0, y: 0, width: 100, height: 100 }, into, 'xMinYMin meet')).toEqual([1, 0, 0, 1, 10, 0]);
    expect(fitViewBox({ x: 0, y: 0, width: 100, height: 100 }, into, 'xMidYMax slice')).toEqual([2, 0, 0, 2, 10, -100]);
    expect(fitViewBox({ x: 5, y: 0, width: 100, height: 50 }, into, 'none')).toEqual([2, 0, 0, 2, 0, 0]);
  });
  test('an empty one is none', () => {
    expect(viewBoxOf('0 0 0 10')).toBeUndefined();
    expect(viewBoxOf('-1,2 3 4')).toEqual({ x: -1, y: 2, width: 3, height: 4 });
  });
});

describe('styles', () => {
  const sheet = new StyleSheet();
  sheet.add('@import url(x.css);/* c */ path{stroke:red} .thin,.thick{stroke:blue;fill:none} #one{stroke:green !important} g path{stroke:black} @media print{.thin{stroke:pink}}');
  const style = (text: string, parent = {}) => styleOf(element(text), parent, sheet);

  test('an attribute gives way to the sheet, that to the style; id before class before tag', () => {
    expect(style('<path stroke="grey"/>').stroke).toBe('red');
    expect(style('<path class="thin"/>').stroke).toBe('blue');
    expect(style('<path class="x thick"/>')).toMatchObject({ stroke: 'blue', fill: 'none' });
    expect(style('<path id="one" class="thick"/>').stroke).toBe('green');
    expect(style('<path id="one" style="stroke: #fff"/>').stroke).toBe('#fff');
  });
  test('children take over paints, not display', () => {
    expect(style('<rect/>', { fill: 'red', display: 'none' })).toMatchObject({ fill: 'red' });
    expect(style('<rect/>', { fill: 'red', display: 'none' }).display).toBeUndefined();
    expect(style('<rect fill="inherit"/>', { fill: 'red' }).fill).toBe('red');
  });
});

describe('layers', () => {
  const names = (text: string) => [...findLayers(element(text)).values()];
  test.each([
    ['<svg><g id="Walls"/><g id="Doors"/><path/></svg>', ['Walls', 'Doors']],
    ['<svg><defs/><g id="g12" x:label="Walls"/></svg>', ['Walls']],
    ['<svg><g id="page"><g id="Walls"/><g id="Doors"/></g></svg>', ['Walls', 'Doors']],
    ['<svg><g id="page"><g/><path/></g></svg>', ['page']],
    ['<svg><g/><path/></svg>', []],
  ])('%s', (text, expected) => expect(names(text)).toEqual(expected));
});

describe('base64, by the examples of RFC 4648 § 10', () => {
  test.each([['', ''], ['Zg==', 'f'], ['Zm8=', 'fo'], ['Zm9v', 'foo'], ['Zm9vYg==', 'foob'], ['Zm9v\n YmFy', 'foobar']])('%j', (text, plain) => {
    expect(new TextDecoder().decode(base64Bytes(text))).toBe(plain);
  });
  test('other letters are none', () => expect(base64Bytes('Zm9%')).toBeUndefined());
});
