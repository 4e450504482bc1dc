import type { Rule } from './rule.ts';

/** Every rule of the catalogue that the program knows. */
export const RULES: readonly Rule[] = [];
