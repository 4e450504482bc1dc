import type { ImportReport } from '#shared/host/contract';

/** What the reading thread tells. */
export type ImportMessage =
  | { readonly kind: 'progress'; readonly done: number; readonly doing: string }
  | { readonly kind: 'done'; readonly report: ImportReport; readonly packed: Uint8Array }
  | { readonly kind: 'problem'; readonly what: string; readonly where: string; readonly remedy: string };
