/** A group of sums: worked out, or not, because something that it rests on is missing. Missing data is never guessed. */
export type Worked<T> = { readonly isKnown: true; readonly sums: T } | { readonly isKnown: false; readonly because: string };

/** Sums that could be worked out. */
export const worked = <T>(sums: T): Worked<T> => ({ isKnown: true, sums });

/** Sums that could not: a sentence in lower case for "Not worked out: …". */
export const notWorked = (because: string): { readonly isKnown: false; readonly because: string } => ({ isKnown: false, because });
