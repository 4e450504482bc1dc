/** A group of sums: worked out, or not, because something that it rests on is missing. Missing data is never guessed. */
export type Worked<T> = { readonly isKnown: true; readonly sums: T } | NotWorked;

/** Why sums could not be worked out: a sentence without its first capital, for "Not worked out: …". */
export interface NotWorked {
  readonly isKnown: false;
  readonly because: string;
}

/** Sums that could be worked out. */
export const worked = <T>(sums: T): Worked<T> => ({ isKnown: true, sums });

/** Sums that could not. */
export const notWorked = (because: string): NotWorked => ({ isKnown: false, because });

/** Works sums out with formulas that refuse what is out of their range; such a refusal is the reason why not. */
export function workOut<T>(sums: () => Worked<T>): Worked<T> {
  try {
    return sums();
  } catch (error) {
    if (error instanceof RangeError) return notWorked(`the formula does not hold here. ${error.message}`);
    throw error;
  }
}
