import { PAPERS } from '#shared/paper/papers';
import type { Mark, Sheet } from '#shared/sheets/sheet';

/** A sheet of A4 with these marks on it and nothing else. */
export const oneSheet = (...marks: Mark[]): Sheet[] => [sheetWith({ marks })];

/** A sheet with nothing on it but what is given. */
export const sheetWith = (parts: Partial<Sheet>): Sheet => ({ number: '1', title: 'One', home: 'One', paper: PAPERS.A4, marks: [], views: [], dimensions: [], notes: [], placing: [], ...parts });
