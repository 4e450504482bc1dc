import type { Ink } from '../ink.ts';

/** Writes the colours of a ground into an element's custom properties: `--paper`, `--verdict-stop`, … */
export function setInk(element: HTMLElement, ink: Ink): void {
  const { verdict, ...plain } = ink;
  for (const [name, colour] of Object.entries(plain)) element.style.setProperty(`--${name}`, colour);
  for (const [name, colour] of Object.entries(verdict)) element.style.setProperty(`--verdict-${name}`, colour);
  const isDark = Number.parseInt(ink.paper.slice(1, 3), 16) < 0x80;
  element.style.setProperty('color-scheme', isDark ? 'dark' : 'light');
}
