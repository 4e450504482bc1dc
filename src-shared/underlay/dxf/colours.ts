const GREYS = [0x333333, 0x505050, 0x696969, 0x828282, 0xbebebe, 0xffffff];
const NAMED = [0x000000, 0xff0000, 0xffff00, 0x00ff00, 0x00ffff, 0x0000ff, 0xff00ff, 0x000000, 0x414141, 0x808080];
/** Brightness of the five pairs of each hue, 0 … 1. */
const BRIGHTNESS = [1, 0.8, 0.6, 0.5, 0.3];

/** Red, green or blue part of a pure hue, 0 … 1, at an angle given in steps of 60°. */
const hueLevel = (steps: number): number => Math.min(1, Math.max(0, Math.abs(((steps + 6) % 6) - 3) - 1));

/**
 * Colour of an entry of the indexed palette as 0xRRGGBB. 1–9 are named, 10–249 are 24 hues in five
 * brightnesses, pure and half pale, 250–255 greys. 7 is "the colour against the paper": black here.
 */
export function indexedColour(index: number): number {
  if (index < 10) return NAMED[Math.max(0, index)] ?? 0;
  if (index >= 250) return GREYS[Math.min(255, index) - 250] ?? 0;
  const hue = Math.floor((index - 10) / 10) / 4;
  const brightness = BRIGHTNESS[Math.floor((index % 10) / 2)] ?? 1;
  const isPale = index % 2 === 1;
  const channel = (level: number): number => Math.floor(255 * brightness * (isPale ? (level + 1) / 2 : level));
  return (channel(hueLevel(hue)) << 16) | (channel(hueLevel(hue - 2)) << 8) | channel(hueLevel(hue - 4));
}

/** `#rrggbb` of 0xRRGGBB. */
export const hexColour = (rgb: number): string => `#${(rgb & 0xffffff).toString(16).padStart(6, '0')}`;
