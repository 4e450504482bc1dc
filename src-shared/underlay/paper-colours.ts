/** From this brightness on a fill would hide lines in the program's own ink, or means bare paper. */
const LIGHT = 0.6;

/** Brightness of `#rrggbb`, 0 … 1, by the luma weights of ITU-R BT.709 on the stored values. */
export function brightnessOf(colour: string): number {
  const value = Number.parseInt(colour.slice(1), 16);
  return (0.2126 * ((value >> 16) & 255) + 0.7152 * ((value >> 8) & 255) + 0.0722 * (value & 255)) / 255;
}

/** Whether a fill is so light that it is left out: shown in ink it would cover what lies under it. */
export const isLightFill = (colour: string): boolean => brightnessOf(colour) >= LIGHT;

/** Whether a line is so white that on paper nobody sees it. */
export const isBarePaper = (colour: string): boolean => brightnessOf(colour) > 0.97;

/** Said once where light fills were left out. */
export const LIGHT_FILLS_REMARK = 'Light and patterned fills are shown by their outline, so that they hide no lines.';
