import { type Answer, type Host, type HostMethod, failed } from './contract.ts';
import { isHostMethod } from './methods.ts';
import { REQUESTS } from './requests.ts';

/**
 * Carries out one request that came from outside: a name that is no method or a request of another
 * shape is refused, a host that throws answers `failed`. Never throws.
 */
export async function serve(host: Host, method: string, request: unknown): Promise<Answer<unknown>> {
  if (!isHostMethod(method)) {
    return failed('refused', 'The window asked for something that this version cannot do.', method.slice(0, 80), 'Close all windows of Nozzlewright and start it again.');
  }
  const parsed = REQUESTS[method].safeParse(request);
  if (!parsed.success) {
    const issue = parsed.error.issues[0];
    const where = [method, ...(issue?.path ?? [])].map(String).join(' › ');
    return failed('refused', `The request is not complete: ${issue?.message ?? 'it has another shape'}.`, where, 'Undo the last change and try again.');
  }
  try {
    // The parser of this method has just answered the request of this method.
    const carryOut = host[method] as (checked: unknown) => ReturnType<Host[HostMethod]>;
    return await carryOut.call(host, parsed.data);
  } catch (error) {
    return failed('failed', 'Something went wrong that should not have.', error instanceof Error ? error.message : '', 'Try again. If it stays, save under another name and restart Nozzlewright.');
  }
}
