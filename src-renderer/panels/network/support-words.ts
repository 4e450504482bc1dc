import type { Support } from '#shared/model/plan';

/** Kinds of pipe support by name. */
export const SUPPORT_NAMES = { rigid: 'Rigid', guide: 'Guide', hanger: 'Hanger', sling: 'Sling' } as const satisfies Record<Support['kind'], string>;

/** Which way a support braces the pipe against earthquakes. */
export const BRACE_WORDS = {
  none: 'Does not brace',
  lateral: 'Across the pipe',
  longitudinal: 'Along the pipe',
  'four-way': 'Across and along',
} as const satisfies Record<Support['brace'], string>;

/** Kinds of pipe support with what they do. */
export const SUPPORT_WORDS = {
  rigid: 'Rigid: holds every way',
  guide: 'Guide: pipe slides along itself',
  hanger: 'Hanger: only carries',
  sling: 'Sling: only carries, loose',
} as const satisfies Record<Support['kind'], string>;
