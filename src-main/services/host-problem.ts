import { type Answer, type Problem, answered } from '#shared/host/contract';
import { UnderlayProblem } from '#shared/underlay/drawing';

/** Expected trouble on its way to an answer: what is wrong, where, and what to do. */
export class HostProblem extends Error {
  readonly problem: Problem;

  constructor(code: Problem['code'], what: string, where: string, remedy: string) {
    super(what);
    this.problem = { code, what, where, remedy };
  }
}

/** Error code of the operating system, e.g. "ENOENT", or undefined. */
export const systemCodeOf = (error: unknown): string | undefined =>
  error instanceof Error && 'code' in error && typeof error.code === 'string' ? error.code : undefined;

/** What a failed file operation means to the user. */
const FILE_TROUBLE: Readonly<Record<string, readonly [code: Problem['code'], what: string, remedy: string]>> = {
  ENOENT: ['not-found', 'The file or its folder is not there.', 'It may have been moved or renamed: look for it and open it from where it is.'],
  ENOTDIR: ['not-found', 'A folder on the way to the file is not a folder.', 'Choose another place.'],
  EEXIST: ['refused', 'There is a file where a folder has to be.', 'Choose another place.'],
  EISDIR: ['unreadable', 'This is a folder, not a file.', 'Choose a file.'],
  EACCES: ['refused', 'You are not allowed to use this file.', 'Ask for the right to it, or save under another name in a folder of your own.'],
  EPERM: ['refused', 'The system does not allow this with the file.', 'Close other programs that use it, or save under another name.'],
  EROFS: ['refused', 'This place can be read but not written.', 'Save under another name in a folder of your own.'],
  EBUSY: ['refused', 'Another program is using the file.', 'Close it there and try again.'],
  ENOSPC: ['no-space', 'There is no room left on the disk.', 'Free some room and save again, or save to another disk. Nothing that was saved before has changed.'],
  EDQUOT: ['no-space', 'Your share of the disk is used up.', 'Free some room and save again, or save to another disk. Nothing that was saved before has changed.'],
  EFBIG: ['too-large', 'The file is too large for this disk.', 'Save to another disk.'],
  ENAMETOOLONG: ['refused', 'The name is too long.', 'Choose a shorter name.'],
  EINVAL: ['refused', 'The system does not accept this name.', 'Choose a name of letters, digits and dashes.'],
  ELOOP: ['unreadable', 'The links to this file lead in a circle.', 'Open the file itself.'],
  EIO: ['failed', 'The disk reports a fault.', 'Save to another disk, and have this one looked at.'],
  EMFILE: ['failed', 'Too many files are open at once.', 'Close some programs and try again.'],
};

/** Turns whatever was thrown into what is wrong, where, and what to do. */
export function problemOf(error: unknown, where: string): Problem {
  if (error instanceof HostProblem) return error.problem;
  if (error instanceof UnderlayProblem) {
    const place = error.where.includes(where) ? error.where : [where, error.where].filter(Boolean).join(': ');
    return { code: 'unreadable', what: error.what, where: place, remedy: error.remedy };
  }
  const known = FILE_TROUBLE[systemCodeOf(error) ?? ''];
  if (known) return { code: known[0], what: known[1], where, remedy: known[2] };
  return {
    code: 'failed',
    what: 'Something went wrong that should not have.',
    where: [where, error instanceof Error ? error.message : ''].filter(Boolean).join(': '),
    remedy: 'Try again. If it stays, save under another name and restart Nozzlewright.',
  };
}

/** The same as an error, to be thrown on. */
export function asHostProblem(error: unknown, where: string): HostProblem {
  const { code, what, where: place, remedy } = problemOf(error, where);
  return new HostProblem(code, what, place, remedy);
}

/** Runs a piece of work and answers its value, or its trouble as a value. */
export async function answering<T>(where: string, work: () => Promise<T> | T): Promise<Answer<T>> {
  try {
    return answered(await work());
  } catch (error) {
    return { ok: false, problem: problemOf(error, where) };
  }
}
