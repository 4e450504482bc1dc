import { randomBytes, timingSafeEqual } from 'node:crypto';
import type { IncomingMessage } from 'node:http';

/** Why a request is turned away, with the status that says so. */
export interface Refusal {
  readonly status: 400 | 403 | 405 | 413 | 415 | 421;
  readonly text: string;
}

/**
 * Lets in only the window that this program opened. The first address carries a token that works once and is
 * exchanged for a cookie; every request must name this very host, and come from this very origin.
 */
export interface Gate {
  /** Path and query of the first address. */
  readonly entry: string;
  /** Value for Set-Cookie when this is the first visit with the right token; the token is spent by it. */
  enter(url: URL): string | undefined;
  /** Refusal of a request, or undefined when it may pass. */
  check(request: IncomingMessage, needsCookie: boolean): Refusal | undefined;
}

const sameText = (a: string, b: string): boolean => {
  const first = Buffer.from(a);
  const second = Buffer.from(b);
  return first.length === second.length && timingSafeEqual(first, second);
};

const cookieOf = (request: IncomingMessage, name: string): string | undefined =>
  (request.headers.cookie ?? '')
    .split(';')
    .map((pair) => pair.trim())
    .find((pair) => pair.startsWith(`${name}=`))
    ?.slice(name.length + 1);

export function makeGate(port: number): Gate {
  const address = `127.0.0.1:${port}`;
  const origin = `http://${address}`;
  // Cookies do not tell ports apart: the port in the name keeps two running programs from each other.
  const cookieName = `nozzlewright-${port}`;
  const pass = randomBytes(32).toString('base64url');
  let token: string | null = randomBytes(32).toString('base64url');
  const entry = `/open?token=${token}`;

  return {
    entry,
    enter(url) {
      const given = url.searchParams.get('token') ?? '';
      if (!token || !sameText(given, token)) return undefined;
      token = null;
      return `${cookieName}=${pass}; Path=/; HttpOnly; SameSite=Strict`;
    },
    check(request, needsCookie) {
      // A page of another site whose name was made to lead here would bring its own name.
      if (request.headers.host !== address) return { status: 421, text: 'This address is not served here.' };
      const from = request.headers.origin;
      const isPost = request.method === 'POST';
      if (isPost ? from !== origin : from !== undefined && from !== origin) return { status: 403, text: 'Requests from other sites are not answered.' };
      const site = request.headers['sec-fetch-site'];
      if (needsCookie && site !== undefined && site !== 'same-origin' && site !== 'none') return { status: 403, text: 'Requests from other sites are not answered.' };
      if (needsCookie && !sameText(cookieOf(request, cookieName) ?? '', pass)) {
        return { status: 403, text: 'This window is not known. Close it and start Nozzlewright again: its address works once.' };
      }
      return undefined;
    },
  };
}
