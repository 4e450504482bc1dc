/** What the document says of one layer (optional content group). */
export interface PageLayer {
  readonly name: string;
  readonly isVisible: boolean;
}

/** Name of what lies on no layer. */
export const NO_LAYER = '0';

/** The layers that the walk through a page is inside of. */
export class LayerStack {
  private readonly stack: (PageLayer | undefined)[] = [];

  /** Enters marked content, of a layer or of none. */
  enter(layer: PageLayer | undefined): void {
    this.stack.push(layer);
  }

  leave(): void {
    this.stack.pop();
  }

  /** Where things painted now belong: the outermost hidden layer, else the innermost. */
  get current(): string {
    const inside = this.stack.filter((layer) => layer !== undefined);
    return (inside.find((layer) => !layer.isVisible) ?? inside[inside.length - 1])?.name ?? NO_LAYER;
  }
}
