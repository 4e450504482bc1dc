import type { FieldRooms } from './kept-rooms.ts';

/** What the printing thread tells. */
export type PrintMessage =
  | { readonly kind: 'progress'; readonly done: number; readonly doing: string }
  | { readonly kind: 'rooms'; readonly rooms: FieldRooms }
  | { readonly kind: 'done'; readonly pdf: Uint8Array }
  | { readonly kind: 'failed'; readonly message: string };
