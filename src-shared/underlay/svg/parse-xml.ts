import { UnderlayProblem } from '../drawing.ts';

/** An element of an XML document. Text stands among the children in its place. */
export interface XmlElement {
  /** Without the prefix "svg:". */
  readonly name: string;
  readonly attributes: Attributes;
  readonly children: readonly (XmlElement | string)[];
}

/** Attributes of an element in the order of the file: a flat list, since a drawing has millions of them. */
export class Attributes {
  constructor(private readonly list: readonly string[]) {}

  get(name: string): string | undefined {
    for (let i = 0; i < this.list.length; i += 2) if (this.list[i] === name) return this.list[i + 1];
    return undefined;
  }

  has(name: string): boolean {
    return this.get(name) !== undefined;
  }

  *[Symbol.iterator](): Generator<readonly [name: string, value: string]> {
    for (let i = 0; i < this.list.length; i += 2) yield [this.list[i] ?? '', this.list[i + 1] ?? ''];
  }
}

const NOTHING: (XmlElement | string)[] = [];

/** Deepest nesting and most elements of a document that is no attack. */
const DEEPEST = 200;
const MOST_ELEMENTS = 1_000_000;

const PREDEFINED: Readonly<Record<string, string>> = { lt: '<', gt: '>', amp: '&', quot: '"', apos: "'" };
const NAME = /[A-Za-z_:\u0080-\uffff][\w:.\-\u0080-\uffff]*/y;
const ENTITY = /<!ENTITY\s+(%\s+)?([^\s"'>]+)\s+("[^"]*"|'[^']*'|SYSTEM\b|PUBLIC\b)/g;

/**
 * Parses an XML document, strictly: tags must match, attributes must be quoted.
 * Nothing outside is fetched. Entities that the document defines are never replaced; one that refers to
 * another is refused, since a few of them unfold into gigabytes.
 * @param onElement called every thousand elements with the part of the text that was read, 0 … 1
 * @throws {UnderlayProblem} the document is cut, not well formed, or too deep
 */
export function parseXml(text: string, onElement: (done: number) => void): XmlElement {
  return new XmlParser(text, onElement).parse();
}

interface OpenElement extends XmlElement {
  /** As the file writes it. */
  readonly tag: string;
  readonly children: (XmlElement | string)[];
}

function isNamed(list: readonly string[], name: string): boolean {
  for (let i = 0; i < list.length; i += 2) if (list[i] === name) return true;
  return false;
}

class XmlParser {
  private at = 0;
  private elements = 0;
  private readonly open: OpenElement[] = [];
  private root: XmlElement | undefined;
  private readonly defined = new Set<string>();
  private readonly names = new Map<string, string>();

  constructor(
    private readonly text: string,
    private readonly onElement: (done: number) => void,
  ) {}

  parse(): XmlElement {
    const { text } = this;
    while (this.at < text.length) {
      const tag = text.indexOf('<', this.at);
      this.takeText(tag < 0 ? text.length : tag);
      if (tag < 0) break;
      if (text.startsWith('<!--', tag)) this.at = this.after('-->', tag + 4);
      else if (text.startsWith('<![CDATA[', tag)) {
        const end = this.after(']]>', tag + 9);
        this.open[this.open.length - 1]?.children.push(text.slice(tag + 9, end - 3));
        this.at = end;
      } else if (text.startsWith('<?', tag)) this.at = this.after('?>', tag + 2);
      else if (text.startsWith('<!DOCTYPE', tag)) this.takeDoctype(tag);
      else if (text.startsWith('</', tag)) this.takeEnd(tag);
      else this.takeStart(tag);
    }
    const unfinished = this.open[this.open.length - 1];
    if (unfinished || !this.root) throw this.cut(unfinished?.name ?? 'the first element');
    return this.root;
  }

  private get where(): string {
    let line = 1;
    for (let i = this.text.indexOf('\n'); i >= 0 && i < this.at; i = this.text.indexOf('\n', i + 1)) line += 1;
    return `line ${line}`;
  }

  private cut(name: string): UnderlayProblem {
    return new UnderlayProblem('The file ends in the middle: a part of the plan is lost.', `“${name.slice(0, 60)}” is not closed`, 'Copy or download the file again, or export it again.');
  }

  private wrong(what: string): UnderlayProblem {
    return new UnderlayProblem(`The file is damaged: ${what}.`, this.where, 'Export the plan again as SVG or PDF.');
  }

  private after(mark: string, from: number): number {
    const found = this.text.indexOf(mark, from);
    if (found < 0) throw this.cut(this.text.slice(from - 4, from + 10));
    return found + mark.length;
  }

  private takeText(end: number): void {
    if (end <= this.at) return;
    const raw = this.text.slice(this.at, end);
    const parent = this.open[this.open.length - 1];
    if (parent) {
      if (/\S/.test(raw)) parent.children.push(this.decoded(raw));
      else parent.children.push(' ');
    } else if (/[^\s\ufeff]/.test(raw)) throw this.wrong('text stands outside the drawing');
    this.at = end;
  }

  private takeDoctype(from: number): void {
    const subset = this.text.indexOf('[', from);
    const close = this.text.indexOf('>', from);
    if (close < 0) throw this.cut('DOCTYPE');
    if (subset < 0 || subset > close) {
      this.at = close + 1;
      return;
    }
    const end = this.text.indexOf(']', subset);
    if (end < 0) throw this.cut('DOCTYPE');
    for (const [, parameter, name, value] of this.text.slice(subset, end).matchAll(ENTITY)) {
      if (parameter || /[&%]/.test(value ?? '')) {
        throw new UnderlayProblem(
          'The file defines texts that unfold into each other and could grow without end.',
          `entity “${(name ?? '').slice(0, 60)}”`,
          'Export the plan again as plain SVG or as PDF.',
        );
      }
      this.defined.add(name ?? '');
    }
    this.at = this.after('>', end);
  }

  private takeEnd(from: number): void {
    const close = this.text.indexOf('>', from);
    if (close < 0) throw this.cut(this.open[this.open.length - 1]?.name ?? '');
    const name = this.text.slice(from + 2, close).trim();
    const element = this.open.pop();
    if (element?.tag !== name) throw this.wrong(`“${name.slice(0, 60)}” is closed where “${element?.tag ?? 'nothing'}” is open`);
    this.at = close + 1;
    if (this.open.length === 0) this.root = element;
  }

  private takeStart(from: number): void {
    this.at = from + 1;
    const name = this.takeName();
    const list: string[] = [];
    for (;;) {
      this.skipSpace();
      const c = this.text[this.at];
      if (c === undefined) throw this.cut(name);
      if (c === '>' || c === '/') break;
      const key = this.takeName();
      this.skipSpace();
      if (this.at >= this.text.length) throw this.cut(name);
      if (this.text[this.at] !== '=') throw this.wrong(`attribute “${key.slice(0, 60)}” has no value`);
      this.at += 1;
      this.skipSpace();
      const quote = this.text[this.at];
      if (quote !== '"' && quote !== "'") throw quote === undefined ? this.cut(name) : this.wrong(`attribute “${key.slice(0, 60)}” is not quoted`);
      const end = this.text.indexOf(quote, this.at + 1);
      if (end < 0) throw this.cut(name);
      if (isNamed(list, key)) throw this.wrong(`attribute “${key.slice(0, 60)}” stands twice`);
      list.push(this.shared(key), this.decoded(this.text.slice(this.at + 1, end)));
      this.at = end + 1;
    }
    const isEmpty = this.text[this.at] === '/';
    if (isEmpty) this.at += 1;
    if (this.text[this.at] !== '>') throw this.at >= this.text.length ? this.cut(name) : this.wrong(`“${name.slice(0, 60)}” is not closed`);
    this.at += 1;
    this.add({ tag: this.shared(name), name: this.shared(name.startsWith('svg:') ? name.slice(4) : name), attributes: new Attributes(list), children: isEmpty ? NOTHING : [] }, isEmpty);
  }

  private add(element: OpenElement, isEmpty: boolean): void {
    this.elements += 1;
    if (this.elements % 1000 === 0) this.onElement(this.at / this.text.length);
    if (this.elements > MOST_ELEMENTS) throw new UnderlayProblem('The drawing holds more than a million elements.', '', 'Export only the floor you need, and import that.');
    if (this.root) throw this.wrong('it holds more than one drawing');
    this.open[this.open.length - 1]?.children.push(element);
    if (!isEmpty) {
      if (this.open.length >= DEEPEST) throw this.wrong(`groups lie inside groups more than ${DEEPEST} deep`);
      this.open.push(element);
    } else if (this.open.length === 0) this.root = element;
  }

  private takeName(): string {
    NAME.lastIndex = this.at;
    const [name] = NAME.exec(this.text) ?? [];
    if (name === undefined) throw this.at >= this.text.length ? this.cut('') : this.wrong('a name is missing');
    this.at += name.length;
    return name;
  }

  /** The same string object for the same name: there are few names and many uses. */
  private shared(name: string): string {
    const known = this.names.get(name);
    if (known !== undefined) return known;
    this.names.set(name, name);
    return name;
  }

  private skipSpace(): void {
    for (;;) {
      const c = this.text.charCodeAt(this.at);
      if (c !== 32 && c !== 10 && c !== 13 && c !== 9) return;
      this.at += 1;
    }
  }

  private decoded(raw: string): string {
    if (!raw.includes('&')) return raw;
    return raw.replace(/&(#x[0-9A-Fa-f]{1,6}|#\d{1,7}|[^;&\s]{1,100});?/g, (whole, body: string) => {
      if (body.startsWith('#')) {
        const code = body[1] === 'x' ? Number.parseInt(body.slice(2), 16) : Number(body.slice(1));
        return code > 0 && code <= 0x10ffff ? String.fromCodePoint(code) : '';
      }
      const known = Object.hasOwn(PREDEFINED, body) ? PREDEFINED[body] : undefined;
      if (known !== undefined) return known;
      if (this.defined.has(body)) return whole;
      throw this.wrong(`“&${body.slice(0, 40)};” is not defined`);
    });
  }
}
