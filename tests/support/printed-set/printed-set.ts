import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';

/** A text as the printed page holds it: start of its baseline, y up, in points. */
export interface PrintedText {
  readonly text: string;
  readonly x: number;
  readonly y: number;
  readonly size: number;
  readonly width: number;
  /** Counter-clockwise, in degrees from the paper's right. */
  readonly turn_deg: number;
}

/** Where a link of a page leads. */
export interface PrintedLink {
  /** What can be clicked [left, bottom, right, top]. */
  readonly from: readonly number[];
  /** Page counted from 0, and the part of it that is shown [left, bottom, right, top]; nothing where it shows all. */
  readonly page: number;
  readonly shown: readonly number[] | null;
}

export interface PrintedPage {
  readonly number: string;
  readonly bookmark: string;
  readonly width: number;
  readonly height: number;
  readonly texts: readonly PrintedText[];
  readonly links: readonly PrintedLink[];
}

const isSheetNumber = (text: string): boolean => /^(?:.*-)?F?\d\d\.\d+$/.test(text);
const centreIn = ({ x, y, width, size }: PrintedText, [left = 0, bottom = 0, right = 0, top = 0]: readonly number[]): boolean => x + width / 2 >= left && x + width / 2 <= right && y + size / 3 >= bottom && y + size / 3 <= top;

/** Reads a printed set with pdf.js, which knows nothing of how it was composed: texts with their places, links, bookmarks. */
export async function readPrintedSet(bytes: Uint8Array): Promise<PrintedPage[]> {
  const task = getDocument({ data: new Uint8Array(bytes), useSystemFonts: false, verbosity: 0 });
  const pdf = await task.promise;
  const indexOf = (place: unknown): Promise<number> => pdf.getPageIndex(place as Parameters<typeof pdf.getPageIndex>[0]);
  const bookmarks = new Map<number, string>();
  for (const { title, dest } of await pdf.getOutline()) {
    const place = typeof dest === 'string' ? await pdf.getDestination(dest) : dest;
    if (place) bookmarks.set(await indexOf(place[0]), title);
  }
  const pages: PrintedPage[] = [];
  for (let index = 0; index < pdf.numPages; index += 1) {
    const page = await pdf.getPage(index + 1);
    const { items } = await page.getTextContent();
    const texts = items.flatMap((item): PrintedText[] => {
      if (!('str' in item) || item.str.trim() === '') return [];
      const [a = 0, b = 0, , , x = 0, y = 0] = item.transform as number[];
      return [{ text: item.str.trim(), x, y, size: Math.hypot(a, b), width: item.width, turn_deg: (Math.atan2(b, a) * 180) / Math.PI }];
    });
    const links: PrintedLink[] = [];
    for (const { dest, rect } of await page.getAnnotations()) {
      if (!dest) continue;
      const place = typeof dest === 'string' ? await pdf.getDestination(dest) : dest;
      if (!place) throw new Error(`A link of page ${index + 1} leads nowhere.`);
      const [left, bottom, right, top] = place.slice(2) as number[];
      const isPart = (place[1] as { name: string }).name === 'FitR';
      links.push({ from: rect, page: await indexOf(place[0]), shown: isPart ? [left ?? 0, bottom ?? 0, right ?? 0, top ?? 0] : null });
    }
    const numbers = texts.filter(({ text, turn_deg }) => turn_deg === 0 && isSheetNumber(text)).sort((a, b) => a.y - b.y);
    const [, , width = 0, height = 0] = page.view;
    pages.push({ number: numbers[0]?.text ?? '', bookmark: bookmarks.get(index) ?? '', width, height, texts, links });
  }
  await task.destroy();
  return pages;
}

/** The words that a link lies on. */
export const wordsOfLink = ({ texts }: PrintedPage, { from }: PrintedLink): string => texts.filter((text) => centreIn(text, from)).map(({ text }) => text).join(' ');

/** Pages of one series: 2 for "NW-02.1". */
export const seriesOf = (pages: readonly PrintedPage[], series: number): PrintedPage[] => pages.filter(({ number }) => Number(/(\d\d)\.\d+$/.exec(number)?.[1]) === series);

/** The same set with one text of one page said otherwise, as a slip of the pen would. */
export function withSlip(pages: readonly PrintedPage[], isMeant: (text: PrintedText, page: PrintedPage, before: PrintedText | undefined) => boolean, said: (text: string) => string): PrintedPage[] {
  let isDone = false;
  const altered = pages.map((page) => {
    const at = isDone ? -1 : page.texts.findIndex((text, i) => isMeant(text, page, page.texts[i - 1]));
    if (at < 0) return page;
    isDone = true;
    return { ...page, texts: page.texts.map((text, i) => (i === at ? { ...text, text: said(text.text) } : text)) };
  });
  if (!isDone) throw new Error('The set has no such text.');
  return altered;
}
