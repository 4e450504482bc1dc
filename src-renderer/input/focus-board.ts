/**
 * Hands the keyboard from a field on the bench back to the board, so that letters are tools again.
 * @param from  where the keyboard is; in a dialog it stays there
 */
export function focusBoard(from: Element | null): void {
  if (from?.closest('.bench')) document.querySelector<HTMLElement>('.board')?.focus();
}
