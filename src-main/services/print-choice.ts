import { isPaperId } from '#shared/paper/papers';
import type { SheetOptions } from '#shared/sheets/sheet';
import { HostProblem } from './host-problem.ts';

/** What the user chooses for a set of sheets. */
export type PrintChoice = Omit<SheetOptions, 'printedAt' | 'rooms'>;

/** A choice from texts that came from outside. */
export function printChoiceOf(paper: string, scale: number | 'auto', set: PrintChoice['set'], takeOff: NonNullable<PrintChoice['takeOff']> | null = null): PrintChoice {
  if (paper === 'auto' || isPaperId(paper)) return { paper, scale, set, takeOff };
  throw new HostProblem('refused', 'This paper is not known.', paper, 'Choose a paper from the list, or "auto".');
}
