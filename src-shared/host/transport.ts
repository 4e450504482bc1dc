import { type Answer, type Host, type HostMethod, failed } from './contract.ts';
import { packFrame, unpackFrame } from './frame.ts';
import { HOST_METHODS } from './methods.ts';

/** Carries one request to the host and brings its answer back. It throws when the host cannot be reached. */
export type Transport = (method: HostMethod, request: unknown) => Promise<unknown>;

const isRecord = (value: unknown): value is Record<string, unknown> => typeof value === 'object' && value !== null;

const isAnswer = (value: unknown): value is Answer<unknown> =>
  isRecord(value) && (value.ok === true ? 'value' in value : value.ok === false && isRecord(value.problem));

/** A host at the other end of a transport. A lost connection is an answer too, never an exception. */
export function hostOver(transport: Transport): Host {
  const call = async (method: HostMethod, request: unknown): Promise<Answer<unknown>> => {
    try {
      const answer = await transport(method, request);
      if (isAnswer(answer)) return answer;
      return failed('failed', 'The program behind this window gave no usable answer.', '', 'Try again. If it stays, restart Nozzlewright: unsaved work is kept.');
    } catch {
      return failed(
        'failed',
        'The program behind this window does not answer.',
        '',
        'Start Nozzlewright again. Your last changes were kept aside and will be offered to you.',
      );
    }
  };
  const methods = Object.keys(HOST_METHODS).map((method) => [method, (request: unknown) => call(method as HostMethod, request)]);
  return Object.fromEntries(methods) as Host;
}

/** A request as bytes. */
export function packRequest(method: HostMethod, request: unknown): Uint8Array {
  if (!HOST_METHODS[method].bytesIn || !isRecord(request)) return packFrame({ words: request, bytes: null });
  const { bytes, ...words } = request;
  return packFrame({ words, bytes: bytes instanceof Uint8Array ? bytes : new Uint8Array() });
}

/**
 * A request from its bytes, not yet checked.
 * @throws {BadFrame} the bytes are no message
 */
export function unpackRequest(method: HostMethod, frame: Uint8Array): unknown {
  const { words, bytes } = unpackFrame(frame, HOST_METHODS[method].bytesIn);
  return bytes && isRecord(words) ? { ...words, bytes } : words;
}

/** An answer as bytes. A failed answer carries no attachment. */
export function packAnswer(method: HostMethod, answer: Answer<unknown>): Uint8Array {
  if (!HOST_METHODS[method].bytesOut || !answer.ok || !isRecord(answer.value)) return packFrame({ words: answer, bytes: null });
  const { bytes, ...value } = answer.value;
  return packFrame({ words: { ok: true, value }, bytes: bytes instanceof Uint8Array ? bytes : new Uint8Array() });
}

/**
 * An answer from its bytes.
 * @throws {BadFrame} the bytes are no message
 */
export function unpackAnswer(method: HostMethod, frame: Uint8Array): unknown {
  const { words, bytes } = unpackFrame(frame, HOST_METHODS[method].bytesOut);
  if (!bytes || !isRecord(words) || words.ok !== true || !isRecord(words.value)) return words;
  return { ok: true, value: { ...words.value, bytes } };
}

/** A transport over anything that carries bytes there and back. What is larger than its method takes is not sent. */
export const framedTransport =
  (post: (method: HostMethod, body: Uint8Array) => Promise<Uint8Array>): Transport =>
  async (method, request) => {
    const body = packRequest(method, request);
    const { limit_bytes } = HOST_METHODS[method];
    if (body.length > limit_bytes) {
      return failed('too-large', 'This is larger than Nozzlewright takes.', `${Math.ceil(body.length / 1048576)} MB of at most ${Math.ceil(limit_bytes / 1048576)} MB`, 'Use a smaller file, or split the job into several plans.');
    }
    return unpackAnswer(method, await post(method, body));
  };
