import { Inflate } from 'fflate';
import { type PlanFailure, planFailure } from './plan-problem.ts';

/** One file of an archive, unpacked. */
export interface ZipEntry {
  readonly name: string;
  readonly bytes: Uint8Array;
}

/** What an archive may hold at most; anything larger is refused before or while it is unpacked. */
export interface ZipLimits {
  readonly entries: number;
  readonly archive_bytes: number;
  readonly total_bytes: number;
  /** Largest size of one file, by its name. */
  readonly entry_bytes: (name: string) => number;
}

/** Unpacked bytes per packed byte, beyond which a large file is a trap: drawings as text stay well below. */
const MOST_RATIO = 200;
const RATIO_MATTERS_bytes = 4 * 1024 * 1024;
const CHUNK_bytes = 16 * 1024;

class Refused extends Error {
  constructor(
    readonly code: 'damaged' | 'too-large' | 'unsupported',
    readonly what: string,
    readonly where: string,
    readonly remedy: string,
  ) {
    super(what);
  }
}
const damaged = (what: string, where: string): Refused => new Refused('damaged', what, where, 'Open an earlier copy of the plan.');
const tooLarge = (what: string, where: string): Refused => new Refused('too-large', what, where, 'Check where the file came from; a plan is never this large.');

const CRC_TABLE = Uint32Array.from({ length: 256 }, (_, n) => {
  let c = n;
  for (let k = 0; k < 8; k += 1) c = c & 1 ? 0xedb88320 ^ (c >>> 1) : c >>> 1;
  return c;
});
const crcOf = (bytes: Uint8Array): number => {
  let crc = 0xffffffff;
  for (const byte of bytes) crc = (CRC_TABLE[(crc ^ byte) & 0xff] ?? 0) ^ (crc >>> 8);
  return (crc ^ 0xffffffff) >>> 0;
};

interface Listed {
  readonly name: string;
  readonly method: number;
  readonly crc: number;
  readonly packed_bytes: number;
  readonly size_bytes: number;
  readonly header: number;
}

const END_bytes = 22;

/** Where the end record of the list of files begins. */
function findEnd(view: DataView): number {
  const first = Math.max(0, view.byteLength - END_bytes - 0xffff);
  for (let at = view.byteLength - END_bytes; at >= first; at -= 1) {
    if (view.getUint32(at, true) === 0x06054b50 && at + END_bytes + view.getUint16(at + 20, true) === view.byteLength) return at;
  }
  throw damaged('The plan file is cut short, or is not a plan file.', 'its end');
}

/** A name that stays inside the archive: no way up, no root, no drive, plain signs only. */
const isSafeName = (name: string): boolean => /^[A-Za-z0-9][A-Za-z0-9._-]*(?:\/[A-Za-z0-9][A-Za-z0-9._-]*){0,3}$/.test(name) && name.length <= 200;

function listOf(bytes: Uint8Array, view: DataView, limits: ZipLimits): Listed[] {
  const end = findEnd(view);
  const count = view.getUint16(end + 10, true);
  const start = view.getUint32(end + 16, true);
  if (view.getUint16(end + 4, true) !== 0 || count !== view.getUint16(end + 8, true) || count === 0xffff || start === 0xffffffff) {
    throw new Refused('unsupported', 'The plan file is packed in a way that this program does not read.', 'its list of files', 'Save the plan again with this program.');
  }
  if (count > limits.entries) throw tooLarge(`The plan file holds ${count} files.`, 'its list of files');
  const listed: Listed[] = [];
  const names = new Set<string>();
  let total_bytes = 0;
  let at = start;
  for (let i = 0; i < count; i += 1) {
    if (at + 46 > end || view.getUint32(at, true) !== 0x02014b50) throw damaged('The list of files in the plan file is damaged.', 'its list of files');
    const flags = view.getUint16(at + 8, true);
    const nameLength = view.getUint16(at + 28, true);
    const next = at + 46 + nameLength + view.getUint16(at + 30, true) + view.getUint16(at + 32, true);
    if (next > end) throw damaged('The list of files in the plan file is damaged.', 'its list of files');
    const name = String.fromCharCode(...bytes.subarray(at + 46, Math.min(at + 46 + nameLength, at + 46 + 512)));
    const entry = {
      name,
      method: view.getUint16(at + 10, true),
      crc: view.getUint32(at + 16, true),
      packed_bytes: view.getUint32(at + 20, true),
      size_bytes: view.getUint32(at + 24, true),
      header: view.getUint32(at + 42, true),
    };
    at = next;
    if (/^[A-Za-z0-9._/-]*\/$/.test(name) && !name.includes('..') && entry.size_bytes === 0) continue;
    const shown = name.slice(0, 60).replace(/[^\x20-\x7e]/g, '?') || 'a file without a name';
    if (!isSafeName(name)) throw damaged('A file inside the plan file has a name that is not allowed.', shown);
    if (names.has(name)) throw damaged('Two files inside the plan file have the same name.', shown);
    names.add(name);
    if (flags & 0x41) throw new Refused('unsupported', 'The plan file is locked with a password.', shown, 'Unpack it with its password and pack it again without one.');
    if (entry.method !== 0 && entry.method !== 8) {
      throw new Refused('unsupported', 'The plan file is packed in a way that this program does not read.', shown, 'Save the plan again with this program.');
    }
    if (entry.size_bytes > limits.entry_bytes(name)) throw tooLarge('A file inside the plan file is too large.', shown);
    total_bytes += entry.size_bytes;
    if (total_bytes > limits.total_bytes) throw tooLarge('The files inside the plan file are too large together.', 'its list of files');
    listed.push(entry);
  }
  return listed;
}

/** The packed bytes of a file, found by its own header; the header must agree with the list. */
function packedOf(bytes: Uint8Array, view: DataView, entry: Listed): Uint8Array {
  const { header, name, packed_bytes } = entry;
  const isThere = header + 30 <= bytes.length && view.getUint32(header, true) === 0x04034b50;
  const start = isThere ? header + 30 + view.getUint16(header + 26, true) + view.getUint16(header + 28, true) : Number.POSITIVE_INFINITY;
  if (start + packed_bytes > bytes.length) throw damaged('The plan file is cut short or damaged.', name);
  return bytes.subarray(start, start + packed_bytes);
}

/** Unpacks piece by piece and stops as soon as more comes out than was announced, or far more than went in. */
function inflate(packed: Uint8Array, { name, size_bytes }: Listed): Uint8Array {
  const out = new Uint8Array(Math.min(size_bytes, Math.max(RATIO_MATTERS_bytes, packed.length * MOST_RATIO)));
  let done = 0;
  let read = 0;
  const stream = new Inflate((piece) => {
    if (done + piece.length > size_bytes) throw damaged('A file inside the plan file is larger than the plan file says.', name);
    if (done + piece.length > out.length) throw tooLarge('A file inside the plan file unpacks to far more than a plan can hold.', name);
    out.set(piece, done);
    done += piece.length;
  });
  try {
    do {
      const last = read + CHUNK_bytes >= packed.length;
      stream.push(packed.subarray(read, read + CHUNK_bytes), last);
      read += CHUNK_bytes;
    } while (read < packed.length);
  } catch (problem) {
    if (problem instanceof Refused) throw problem;
    throw damaged('A file inside the plan file is damaged.', name);
  }
  if (done !== size_bytes) throw damaged('A file inside the plan file is shorter than the plan file says.', name);
  return out.length === done ? out : out.slice(0, done);
}

/**
 * Unpacks a ZIP archive that nobody vouches for: names, number, sizes and checksums are checked, and unpacking
 * stops as soon as a limit is passed. Files may not share packed bytes; those that are stored unpacked are
 * views of the archive's own bytes.
 */
export function readZip(bytes: Uint8Array, limits: ZipLimits): { readonly ok: true; readonly entries: ZipEntry[] } | PlanFailure {
  try {
    if (bytes.length > limits.archive_bytes) throw tooLarge('The plan file is too large.', `${Math.round(bytes.length / 1048576)} MB`);
    if (bytes.length < END_bytes) throw damaged('The plan file is cut short, or is not a plan file.', 'its end');
    const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
    const listed = listOf(bytes, view, limits);
    const byPlace = [...listed].sort((a, b) => a.header - b.header);
    byPlace.forEach((entry, i) => {
      const next = byPlace[i + 1];
      const packed = packedOf(bytes, view, entry);
      if (next && packed.byteOffset - bytes.byteOffset + packed.length > next.header) throw damaged('Two files inside the plan file lie over each other.', entry.name);
    });
    const entries = listed.map((entry) => {
      const packed = packedOf(bytes, view, entry);
      if (entry.method === 0 && entry.packed_bytes !== entry.size_bytes) throw damaged('A file inside the plan file is damaged.', entry.name);
      const unpacked = entry.method === 0 ? packed : inflate(packed, entry);
      if (crcOf(unpacked) !== entry.crc) throw damaged('A file inside the plan file is damaged: its checksum is wrong.', entry.name);
      return { name: entry.name, bytes: unpacked };
    });
    return { ok: true, entries };
  } catch (problem) {
    if (problem instanceof Refused) return planFailure(problem.code, problem.what, problem.where, problem.remedy);
    throw problem;
  }
}
