/** Papers that a sheet can be printed on, by name. */
export const PAPER_IDS = ['A4', 'A3', 'A2', 'A1', 'ANSI-A', 'ANSI-B', 'ANSI-C', 'ANSI-D', 'ARCH-C', 'ARCH-D'] as const;
export type PaperId = (typeof PAPER_IDS)[number];
