import { strFromU8, strToU8 } from 'fflate';

/**
 * A message as bytes: length of the words as an unsigned 32-bit number, low byte first; the words as
 * JSON in UTF-8; then, when something is attached, its bytes up to the end.
 */

const HEAD_bytes = 4;

/** Words and at most one attachment. */
export interface Message {
  readonly words: unknown;
  readonly bytes: Uint8Array | null;
}

/** Thrown when bytes are no frame. */
export class BadFrame extends Error {}

/** Packs words and an attachment into one run of bytes. */
export function packFrame({ words, bytes }: Message): Uint8Array {
  const text = strToU8(JSON.stringify(words));
  const frame = new Uint8Array(HEAD_bytes + text.length + (bytes?.length ?? 0));
  new DataView(frame.buffer).setUint32(0, text.length, true);
  frame.set(text, HEAD_bytes);
  if (bytes) frame.set(bytes, HEAD_bytes + text.length);
  return frame;
}

/**
 * Takes a frame apart. The attachment is a view on the frame's own memory.
 * @param hasBytes  whether something is attached, by the method's declaration
 * @throws {BadFrame} cut short, more than it says, or words that are no JSON
 */
export function unpackFrame(frame: Uint8Array, hasBytes: boolean): Message {
  if (frame.length < HEAD_bytes) throw new BadFrame('The message is cut short.');
  const length = new DataView(frame.buffer, frame.byteOffset, frame.byteLength).getUint32(0, true);
  const end = HEAD_bytes + length;
  if (frame.length < end) throw new BadFrame('The message is cut short.');
  if (!hasBytes && frame.length > end) throw new BadFrame('The message has bytes where none belong.');
  let words: unknown;
  try {
    words = JSON.parse(strFromU8(frame.subarray(HEAD_bytes, end)));
  } catch {
    throw new BadFrame('The words of the message cannot be read.');
  }
  return { words, bytes: hasBytes ? frame.subarray(end) : null };
}
