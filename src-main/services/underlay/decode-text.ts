import type { DecodeText } from '#shared/underlay/decode-text';

const decoders = new Map<string, TextDecoder | undefined>();

const decoderFor = (encoding: string): TextDecoder | undefined => {
  try {
    return new TextDecoder(encoding);
  } catch {
    return undefined;
  }
};

/** Decodes text in any encoding that the runtime knows. */
export const decodeText: DecodeText = (bytes, encoding) => {
  if (!decoders.has(encoding)) decoders.set(encoding, decoderFor(encoding));
  return decoders.get(encoding)?.decode(bytes);
};
