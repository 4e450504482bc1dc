import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { placeByPlace } from '#shared/derived/place-by-place';

const thing = (name: string) => ({ name });
type Thing = ReturnType<typeof thing>;

describe('placeByPlace', () => {
  it('makes only what stands where the item is another one', () => {
    const made: string[] = [];
    const upper = placeByPlace(({ name }: Thing, ground: object) => {
      made.push(name);
      return { name: name.toUpperCase(), ground };
    });
    const [a, b, c, ground] = [thing('a'), thing('b'), thing('c'), {}];
    const before = upper([a, b], ground);
    const now = upper([a, c], ground);
    expect(made).toEqual(['a', 'b', 'c']);
    expect(now.map(({ name }) => name)).toEqual(['A', 'C']);
    expect(now[0]).toBe(before[0]);
    expect(before.map(({ name }) => name)).toEqual(['A', 'B']);
  });

  it('gives the very same list while every thing on it is the same', () => {
    const first = placeByPlace(({ name }: Thing) => name.slice(0, 1));
    const ground = {};
    const before = first([thing('ab'), thing('cd')], ground);
    expect(first([thing('ax'), thing('cy')], ground)).toBe(before);
    expect(first([thing('ax')], ground)).toEqual(['a']);
  });

  it('makes everything anew on another ground', () => {
    const on = placeByPlace(({ name }: Thing, { by }: { by: string }) => name + by);
    const items = [thing('a')];
    expect(on(items, { by: '1' })).toEqual(['a1']);
    expect(on(items, { by: '2' })).toEqual(['a2']);
  });

  it('is a plain map of any lists that follow each other, whatever comes and goes', () => {
    const pool = ['a', 'b', 'ab', 'c', 'd'].map(thing);
    fc.assert(
      fc.property(fc.array(fc.array(fc.constantFrom(...pool), { maxLength: 6 }), { maxLength: 6 }), (lists) => {
        const of = placeByPlace(({ name }: Thing) => name.slice(0, 1));
        const ground = {};
        for (const list of lists) expect(of(list, ground)).toEqual(list.map(({ name }) => name.slice(0, 1)));
      }),
    );
  });
});
