import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { BadFrame, packFrame, unpackFrame } from '#shared/host/frame';

describe('frame', () => {
  test('words and bytes come back as they went', () => {
    fc.assert(
      fc.property(fc.jsonValue(), fc.option(fc.uint8Array()), (words, bytes) => {
        const sent = JSON.parse(JSON.stringify(words));
        const back = unpackFrame(packFrame({ words: sent, bytes }), bytes !== null);
        expect(back.words).toEqual(sent);
        expect(back.bytes && [...back.bytes]).toEqual(bytes && [...bytes]);
      }),
    );
  });

  test('a frame inside a larger buffer is read from where it begins', () => {
    const frame = packFrame({ words: { a: 'é½≥' }, bytes: Uint8Array.of(1, 2, 3) });
    const padded = new Uint8Array(frame.length + 10);
    padded.set(frame, 7);
    expect(unpackFrame(padded.subarray(7, 7 + frame.length), true)).toEqual({ words: { a: 'é½≥' }, bytes: Uint8Array.of(1, 2, 3) });
  });

  test.each([
    ['nothing', []],
    ['half a length', [1, 0]],
    ['a length beyond the end', [200, 0, 0, 0, 123, 125]],
    ['the largest length', [255, 255, 255, 255, 123, 125]],
    ['words that are no JSON', [2, 0, 0, 0, 123, 123]],
    ['bytes where none belong', [2, 0, 0, 0, 123, 125, 9]],
  ])('%s is no frame', (_, bytes) => {
    expect(() => unpackFrame(Uint8Array.from(bytes), false)).toThrow(BadFrame);
  });

  test('a frame cut anywhere in its words is no frame', () => {
    const whole = packFrame({ words: { ref: 'plan' }, bytes: null });
    for (let length = 0; length < whole.length; length += 1) expect(() => unpackFrame(whole.subarray(0, length), false)).toThrow(BadFrame);
  });
});
