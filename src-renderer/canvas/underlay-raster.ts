import type { UnderlayImage } from '#shared/underlay/drawing';
import type { Pen } from './pen.ts';
import { type PlacedUnderlay, underlaySteps } from './underlay-steps.ts';
import { type Viewport, isSameView, transformBetween } from './viewport.ts';

/** What a picture of the floor plans depends on beside the view. */
export interface UnderlayWish {
  readonly items: readonly PlacedUnderlay[];
  readonly colour: string;
  readonly isDark: boolean;
  readonly pixelRatio: number;
}

interface Picture {
  readonly canvas: HTMLCanvasElement;
  readonly view: Viewport;
  readonly wish: UnderlayWish;
}

/** Drawing at once may take so long [ms]; the rest follows between frames. */
const AT_ONCE_ms = 7;
/** Longest piece of work between two frames [ms]. */
const SLICE_ms = 8;

/**
 * Keeps a picture of the floor plans: a light one is drawn at once for every view, a heavy one between frames while the
 * old picture is shifted and scaled under the pointer.
 */
export class UnderlayRaster {
  private shown: Picture | undefined;
  private making: { readonly picture: Picture; readonly steps: Generator<void> } | undefined;
  private wanted: { readonly view: Viewport; readonly wish: UnderlayWish } | undefined;
  private timer: ReturnType<typeof setTimeout> | undefined;
  private readonly pictures = new WeakMap<UnderlayImage, ImageBitmap | 'coming' | 'broken'>();
  private readonly ready: () => void;

  /** @param ready called when a sharper picture can be painted */
  constructor(ready: () => void) {
    this.ready = ready;
  }

  /** Paints the floor plans for a view as well as they are known, and sees to it that a sharp picture follows. */
  paint(pen: Pen, view: Viewport, wish: UnderlayWish): void {
    if (wish.items.length === 0) {
      this.stop();
      this.shown = undefined;
      return;
    }
    this.wanted = { view, wish };
    if (!this.shown || this.shown.wish !== wish || !isSameView(this.shown.view, view)) this.begin();
    const { shown } = this;
    if (!shown) return;
    const { scale, dx_px, dy_px } = transformBetween(shown.view, view);
    pen.drawImage(shown.canvas, dx_px, dy_px, shown.view.width * scale, shown.view.height * scale);
  }

  stop(): void {
    clearTimeout(this.timer);
    this.timer = undefined;
    this.making = undefined;
  }

  /** Starts the wanted picture, unless one for the same things is on its way: that one is finished first. */
  private begin(): void {
    const { wanted } = this;
    if (!wanted || (this.making && this.making.picture.wish === wanted.wish)) return;
    this.stop();
    const canvas = document.createElement('canvas');
    canvas.width = Math.max(1, Math.round(wanted.view.width * wanted.wish.pixelRatio));
    canvas.height = Math.max(1, Math.round(wanted.view.height * wanted.wish.pixelRatio));
    const pen = canvas.getContext('2d');
    if (!pen) return;
    pen.scale(canvas.width / wanted.view.width, canvas.height / wanted.view.height);
    const picture = { canvas, ...wanted };
    this.making = {
      picture,
      steps: underlaySteps(pen, wanted.view, wanted.wish.items, {
        colour: wanted.wish.colour,
        isDark: wanted.wish.isDark,
        pictureOf: (image) => this.pictureOf(image),
      }),
    };
    if (!this.work(AT_ONCE_ms)) this.later();
  }

  private later(): void {
    this.timer = setTimeout(() => {
      if (!this.work(SLICE_ms)) {
        this.later();
        return;
      }
      if (this.wanted && this.shown && (this.shown.wish !== this.wanted.wish || !isSameView(this.shown.view, this.wanted.view))) this.begin();
      this.ready();
    }, 0);
  }

  /** Works for a while; answers whether the picture is finished and shown. */
  private work(budget_ms: number): boolean {
    const end = performance.now() + budget_ms;
    while (this.making) {
      if (this.making.steps.next().done) {
        this.shown = this.making.picture;
        this.making = undefined;
        return true;
      }
      if (performance.now() > end) return false;
    }
    return true;
  }

  /** A picture inside a floor plan, once the browser has decoded it. */
  private pictureOf(image: UnderlayImage): ImageBitmap | undefined {
    const known = this.pictures.get(image);
    if (known === undefined) {
      this.pictures.set(image, 'coming');
      void createImageBitmap(new Blob([new Uint8Array(image.bytes)], { type: image.mime })).then(
        (bitmap) => {
          this.pictures.set(image, bitmap);
          this.shown = undefined;
          this.stop();
          this.ready();
        },
        () => this.pictures.set(image, 'broken'),
      );
      return undefined;
    }
    return known === 'coming' || known === 'broken' ? undefined : known;
  }
}
