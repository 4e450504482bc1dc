/** A date and time as the user's system writes them; a text that is no date is given back. */
export function dateText(iso: string): string {
  const date = new Date(iso);
  return Number.isNaN(date.getTime()) ? iso : date.toLocaleString(undefined, { dateStyle: 'medium', timeStyle: 'short' });
}

/** A file size in words: "3.2 MB". */
export const sizeText = (size_bytes: number): string =>
  size_bytes < 1024 ? `${size_bytes} bytes` : size_bytes < 1024 * 1024 ? `${Math.round(size_bytes / 1024)} kB` : `${(size_bytes / 1024 / 1024).toFixed(1)} MB`;
