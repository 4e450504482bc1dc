import type { DialogId, ToolId } from '../store/state.ts';
import type { ToolLook } from '../tools/tool-runner.ts';
import type { ToolEvent } from '../tools/tool.ts';

/** What a key press on the board is for. */
export type KeyMeaning = { readonly kind: 'tool'; readonly event: ToolEvent } | { readonly kind: 'type'; readonly text: string } | null;

/** Whether a key press goes into a field, a list or a dialog, or presses a button. */
export function isForControl(target: EventTarget | null, key: string): boolean {
  if (!(target instanceof HTMLElement)) return false;
  if (target.isContentEditable || target.closest('input, textarea, select, dialog, [role="dialog"], [role="menu"], [role="listbox"]')) return true;
  return (key === 'Enter' || key === ' ') && target.closest('button, summary, a[href]') !== null;
}

/** What begins a typed length, angle or height. */
const BEGINS_FIGURE = /^[\d.,'"+-]$/;

/**
 * What a key means to the tool at work, or null when it is for the window's shortcuts.
 * Escape, Enter and Backspace step the tool; a digit opens the field at the pointer while the tool takes figures. So
 * does Tab, with nothing in it yet, while something is half drawn or the tool takes words: what does not begin with a
 * digit can be typed too.
 */
export function meaningOf(
  press: { readonly key: string; readonly ctrlKey: boolean; readonly metaKey: boolean; readonly altKey: boolean; readonly shiftKey?: boolean },
  state: { readonly tool: ToolId; readonly dialog: DialogId; readonly isDragging: boolean },
  look: Pick<ToolLook, 'sketch' | 'asks'>,
): KeyMeaning {
  if (state.dialog !== null || press.ctrlKey || press.metaKey || press.altKey) return null;
  const isHalfDrawn = (look.sketch.lines?.length ?? 0) > 0;
  const isAtWork = state.isDragging || isHalfDrawn || look.asks.length > 0;
  if (press.key === 'Escape') return { kind: 'tool', event: { kind: 'cancel' } };
  if (press.key === 'Enter') return state.tool !== 'select' || isAtWork ? { kind: 'tool', event: { kind: 'enter' } } : null;
  if (press.key === 'Backspace') return state.tool !== 'select' && isAtWork ? { kind: 'tool', event: { kind: 'back' } } : null;
  if (look.asks.length > 0 && BEGINS_FIGURE.test(press.key)) return { kind: 'type', text: press.key };
  if (press.key === 'Tab' && !press.shiftKey && look.asks.length > 0 && (isHalfDrawn || look.asks.includes('words'))) return { kind: 'type', text: '' };
  return null;
}
