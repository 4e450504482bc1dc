/** What the printing thread tells. */
export type PrintMessage =
  | { readonly kind: 'progress'; readonly done: number; readonly doing: string }
  | { readonly kind: 'done'; readonly pdf: Uint8Array }
  | { readonly kind: 'failed'; readonly message: string };
