import type { Comparison } from './printed-figure.ts';
import { type PrintedPage, wordsOfLink } from './printed-set.ts';

const labelled = ({ texts }: PrintedPage, label: string): string => {
  const head = texts.find(({ text }) => text === label);
  return texts
    .filter(({ x, y, turn_deg }) => head !== undefined && turn_deg === 0 && Math.abs(x - head.x) < 1 && y < head.y && y > head.y - 3.5 * head.size)
    .sort((a, b) => b.y - a.y)
    .map(({ text }) => text)[0] ?? '';
};

/** Index, bookmarks, links and what each sheet says of itself. */
export function compareIndex(pages: readonly PrintedPage[], all: Comparison): void {
  const numbers = pages.map(({ number }) => number);
  all.figures('Sheets with a number of their own', new Set(numbers).size, pages.length, 0);
  const toSheets = pages.filter(({ texts }) => texts.some(({ text }) => /^Index of sheets/.test(text))).flatMap((page) => page.links.map((link) => ({ page: link.page, words: wordsOfLink(page, link) }))).filter(({ words }) => /\d\d\.\d+$/.test(words) && !words.includes(' '));
  all.sets('Sheets of the index and of the set', toSheets.map(({ words }) => words), numbers);
  for (const { words, page } of toSheets) all.words(`Link of the index to ${words}`, words, numbers[page]);
  pages.forEach((page, i) => {
    all.words(`Bookmark of page ${i + 1}`, page.bookmark.split(/\s/)[0], page.number);
    all.figures(`Place of ${page.number} in the set`, page.texts.some(({ text }) => text === `${i + 1} of ${pages.length}`) ? 1 : 0, 1, 0);
    const title = labelled(page, 'Sheet title');
    all.figures(`Title of ${page.number} and its bookmark`, title !== '' && page.bookmark.includes(title) ? 1 : 0, 1, 0);
    for (const label of ['Printed', 'Date of issue']) {
      all.words(`“${label}” of ${page.number} and of the cover`, `is ${labelled(page, label)}`, `is ${labelled(pages[0] ?? page, label)}`);
    }
  });
  compareLinks(pages, all);
  compareEdges(pages, all);
}

/** A finding leads to its mark, and a mark to its finding: both say the same number. */
function compareLinks(pages: readonly PrintedPage[], all: Comparison): void {
  for (const page of pages) {
    for (const link of page.links) {
      const { page: to, shown } = link;
      const words = wordsOfLink(page, link);
      const there = pages[to];
      all.figures(`Link “${words}” of ${page.number} and the set`, there ? 1 : 0, 1, 0);
      if (!there || !shown) continue;
      const [left = 0, bottom = 0, right = 0, top = 0] = shown;
      const seen = there.texts.filter(({ x, y }) => x >= left - 1 && x <= right + 1 && y >= bottom - 1 && y <= top + 1);
      all.figures(`Link “${words}” of ${page.number} to ${there.number} and a text at its end`, seen.length > 0 ? 1 : 0, 1, 0);
    }
  }
}

/** Nothing is printed off the paper. */
function compareEdges(pages: readonly PrintedPage[], all: Comparison): void {
  for (const { number, width, height, texts } of pages) {
    for (const { text, x, y, width: long, size, turn_deg } of texts) {
      const turn = (turn_deg * Math.PI) / 180;
      const [endX, endY] = [x + long * Math.cos(turn), y + long * Math.sin(turn)];
      const isInside = Math.min(x, endX) >= 0 && Math.min(y, endY) >= 0 && Math.max(x, endX) <= width && Math.max(y, endY) + (turn === 0 ? size * 0.75 : 0) <= height;
      all.figures(`“${text}” inside ${number}`, isInside ? 1 : 0, 1, 0);
    }
  }
}
