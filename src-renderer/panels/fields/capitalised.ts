/** Words as they begin an option of a choice. */
export const capitalised = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);
