import { readFileSync } from 'node:fs';
import { systemCodeOf } from './host-problem.ts';

/** Whether a process of this machine is running; one that belongs to somebody else counts. */
export function isProcessAlive(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return systemCodeOf(error) === 'EPERM';
  }
}

/**
 * When a process began, in the system's own words, so that a number given out again is not taken for the
 * old process. Empty where the system does not tell it in a file.
 */
export function beginningOf(pid: number): string {
  try {
    const line = readFileSync(`/proc/${pid}/stat`, 'utf8');
    // Field 22, counted after the name in brackets, which may itself hold blanks: see proc(5).
    return line.slice(line.lastIndexOf(')') + 2).split(' ')[19] ?? '';
  } catch {
    return '';
  }
}
