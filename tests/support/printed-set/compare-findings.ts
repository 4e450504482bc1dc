import type { Comparison } from './printed-figure.ts';
import { type PrintedLink, type PrintedPage, wordsOfLink } from './printed-set.ts';

/** A link shows its end in the middle to within this, unless the paper ends sooner [pt]. */
const OFF_pt = 14;

interface Led {
  readonly number: string;
  readonly page: PrintedPage;
  readonly link: PrintedLink;
}

/** The number that stands at the end of a link: in the middle of what it shows, or as near as the edges of the paper let it. */
function isAtEnd({ number, link: { page, shown } }: Led, pages: readonly PrintedPage[]): boolean {
  const there = pages[page];
  if (!there || !shown) return false;
  const [left = 0, bottom = 0, right = 0, top = 0] = shown;
  const middle = (least: number, greatest: number, paper: number, at: number): boolean =>
    at >= least && at <= greatest && (least < 1 || greatest > paper - 1 || Math.abs(at - (least + greatest) / 2) <= OFF_pt);
  return there.texts.some(({ text, x, y, width, size }) => text === number && middle(left, right, there.width, x + width / 2) && middle(bottom, top, there.height, y + size / 3));
}

/** Every mark of a finding ends at that finding's number in the table, and every number of the table at that mark. */
export function compareFindings(pages: readonly PrintedPage[], all: Comparison): void {
  const led = pages.flatMap((page) => page.links.map((link): Led => ({ number: wordsOfLink(page, link), page, link })).filter(({ number, link }) => /^\d+$/.test(number) && link.shown !== null));
  for (const each of led) {
    const there = pages[each.link.page];
    all.figures(`Link of finding ${each.number} on ${each.page.number} to its number on ${there?.number}`, isAtEnd(each, pages) ? 1 : 0, 1, 0);
    all.figures(`Way back of finding ${each.number} from ${there?.number} to ${each.page.number}`, led.some(({ number, page, link }) => number === each.number && page === there && pages[link.page] === each.page) ? 1 : 0, 1, 0);
  }
}
