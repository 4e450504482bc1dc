import { describe, expect, test } from 'vitest';
import { noHeader } from '#shared/underlay/dxf/header';
import { doubtOf, unitsOf } from '#shared/underlay/dxf/units';

const header = (unitCode: number | undefined, showsFeetInches = false) => ({ ...noHeader(), unitCode, showsFeetInches });

describe('units', () => {
  test.each([
    // International inch and foot of 1959; US survey foot 1200/3937 m.
    [1, 0.0254],
    [2, 0.3048],
    [4, 0.001],
    [5, 0.01],
    [6, 1],
    [14, 0.1],
    [21, 1200 / 3937],
  ])('code %i is %d m', (code, metres) => expect(unitsOf(header(code)).metresPerUnit).toBeCloseTo(metres, 15));

  test.each([undefined, 0, 99])('code %s says nothing', (code) => expect(unitsOf(header(code))).toMatchObject({ metresPerUnit: null, unitsText: 'no units given' }));

  test('feet and inches on display hint at inches, no more', () => {
    expect(unitsOf(header(0, true))).toMatchObject({ metresPerUnit: null, unitsText: expect.stringMatching(/likely an inch/) });
  });
});

describe('doubt', () => {
  test.each([
    ['a 25 m house in millimetres', 4, 25_000],
    ['a 60 ft shop in inches', 1, 720],
    ['a 40 m hall in metres', 6, 40],
    ['a 1 km site in metres', 6, 1000],
  ])('none about %s', (_, code, longer) => expect(doubtOf(header(code), longer)).toBeNull());

  test('a plan of 962 “millimetres” is doubtful and reads like inches', () => {
    expect(doubtOf(header(4), 962)).toMatch(/millimetres.*0\.96 m.*inches it would be 24 m.*known length/);
  });

  test('a plan of 25 000 “metres” is doubtful and reads like millimetres', () => {
    expect(doubtOf(header(6), 25_000)).toMatch(/metres.*millimetres it would be 25 m/);
  });

  test('millimetres shown as feet and inches contradict themselves', () => {
    expect(doubtOf(header(4, true), 25_000)).toMatch(/feet and inches/);
  });

  test('without a unit there is nothing to doubt', () => expect(doubtOf(header(undefined), 5)).toBeNull());
});
