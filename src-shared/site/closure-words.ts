import type { RoomClosure } from './room-closure.ts';

const LETTER_PART = /,.*$/;
/** "the wall from corner A to corner B" */
export const lengthName = ({ dimension: { kind, from, to } }: Pick<RoomClosure['lengths'][number], 'dimension'>): string => `the ${kind} from ${from} to ${to.replace(LETTER_PART, '')}`;

/** What the closure of a room comes to, and what to do: a sentence or two for the fitter. */
export function closureWords({ name, answer, lengths, missing, doubtful }: Omit<RoomClosure, 'words'>, lengthText: (length_m: number) => string): string {
  const unchecked = lengths.filter(({ isChecked }) => !isChecked).length;
  const missed = missing.length === 0 ? '' : ` Not measured: ${missing.map(({ name: each }) => each).join(', ')}; there the drawing stands.`;
  switch (answer) {
    case 'not-measured':
      return `${name} is not measured: it stays as drawn.`;
    case 'not-fitted':
      return `${name} could not be fitted to its measured lengths: it stays as drawn. Look for a mistyped length.`;
    case 'not-proven':
      return `${name}: no measured length checks another, so a wrong one would not show. Measure the diagonals too.${missed}`;
    case 'closes':
      return `${name} closes within the site tolerance.${unchecked > 0 ? ` Nothing checks ${unchecked} of its lengths.` : ''}${missed}`;
    default: {
      if (!doubtful) return `${name} does not close: its measured lengths belong to no room. Measure again.`;
      const { length, othersSay_m, isCertain } = doubtful;
      const said = `by the other lengths ${lengthName(length)} would be ${lengthText(othersSay_m)}, and ${lengthText(length.measured_m)} was measured.`;
      return isCertain ? `${name} does not close: ${said} Measure it again first.` : `${name} does not close: ${said} It is the most doubtful, but any other may be the wrong one: measure walls and diagonals again, this one first.`;
    }
  }
}
