import type { Problem } from '#shared/host/contract';
import type { FieldRecord } from '#shared/site/field-entries';

/** What the thread that reads a field record tells, once. */
export type FieldMessage = { readonly kind: 'done'; readonly record: FieldRecord } | { readonly kind: 'problem'; readonly problem: Problem };
