import { describe, expect, it } from 'vitest';
import { placesThatDiffer } from '#shared/derived/places-that-differ';

describe('where two lists differ', () => {
  const [a, b, c] = [{}, {}, {}];

  it('tells the places of other things, by identity', () => {
    expect(placesThatDiffer([a, b], [a, c])).toEqual([1]);
    expect(placesThatDiffer([a, {}], [a, {}])).toEqual([1]);
  });

  it('tells none for the same things', () => {
    expect(placesThatDiffer([a, b, c], [a, b, c])).toEqual([]);
    expect(placesThatDiffer([], [])).toEqual([]);
  });
});
