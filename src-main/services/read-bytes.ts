import { readFile } from 'node:fs/promises';

/** The bytes of a file as a plain array over the memory they were read into: a copy would double what a large file takes. */
export async function readBytes(path: string): Promise<Uint8Array> {
  const { buffer, byteOffset, byteLength } = await readFile(path);
  return new Uint8Array(buffer, byteOffset, byteLength);
}
